/** The numbered tag of a cut, of the same form as on the stage: round a bud, square a removal, pointed a tip. */
import type { CutKind } from '../../../plan/cut.ts';

const outlines: Readonly<Record<CutKind, string>> = {
  'rub off bud': 'M13 2 h4 a11 11 0 0 1 0 22 h-4 a11 11 0 0 1 0 -22 z',
  remove: 'M3 2 h24 v22 h-24 z',
  tip: 'M15 1 L27 8 V24 H3 V8 z',
};

export function CutTag({ kind, n }: { readonly kind: CutKind; readonly n: number }) {
  return (
    <svg className="cut-tag" viewBox="0 0 30 32" aria-hidden="true">
      <path d={`${outlines[kind]} M10 24 L15 31 L20 24 z`} />
      <text x="15" y={kind === 'tip' ? 21 : 18.5} textAnchor="middle">
        {n}
      </text>
    </svg>
  );
}
