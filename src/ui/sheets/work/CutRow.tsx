/** One cut: what, where, why, what it brings and by when; opened, all that is known of it. */
import { useEffect, useRef } from 'react';
import { briefPiece, briefReason } from '../../../plan/briefWords.ts';
import type { Cut } from '../../../plan/cut.ts';
import { shortDay } from '../../fields/dates.ts';
import { useUnits, useWorkbench } from '../../state/workbench.ts';
import { CutDetail } from './CutDetail.tsx';
import { CutTag } from './CutTag.tsx';
import { cutWords as words } from './cutWords.ts';

interface CutRowProps {
  readonly cut: Cut;
  readonly n: number;
  readonly isTicked: boolean;
  /** Open is what is selected: here, on the stage, in the other sheets. */
  readonly isOpen: boolean;
  readonly isStale: boolean;
  /** Where the cuts of a step are not all due at the same time. */
  readonly isDateShown: boolean;
}

/** "19 Apr to 30 May" */
export const whenOf = ({ when }: Pick<Cut, 'when'>): string =>
  words.when(shortDay(when.from), shortDay(when.to));

export function CutRow({ cut, n, isTicked, isOpen, isStale, isDateShown }: CutRowProps) {
  const { plan: work } = useWorkbench();
  const units = useUnits();
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isOpen) row.current?.scrollIntoView({ block: 'nearest' });
  }, [isOpen]);
  const piece = briefPiece(cut, units);
  return (
    <li
      ref={row}
      className={`cut${isTicked ? '' : ' is-unticked'}${isOpen ? ' is-selected' : ''}`}
      data-id={cut.id}
    >
      <label className="tick">
        <input
          type="checkbox"
          checked={isTicked}
          disabled={isStale}
          onChange={(event) => work.tick([cut.id], event.target.checked)}
        />
        <CutTag kind={cut.kind} n={n} />
        <span className="unseen">{words.make(n, piece)}</span>
      </label>
      <RowButton cut={cut} n={n} piece={piece} isOpen={isOpen} isDateShown={isDateShown} />
      {isOpen ? <CutDetail cut={cut} /> : null}
    </li>
  );
}

interface RowButtonProps extends Pick<CutRowProps, 'cut' | 'n' | 'isOpen' | 'isDateShown'> {
  readonly piece: string;
}

function RowButton({ cut, n, piece, isOpen, isDateShown }: RowButtonProps) {
  const { editor } = useWorkbench();
  const units = useUnits();
  const [reason] = cut.reasons;
  const foot = [
    ...(cut.standsIn === null ? [] : [words.sure(cut.standsIn)]),
    ...(isDateShown ? [whenOf(cut)] : []),
  ];
  return (
    <button
      type="button"
      className="cut-open"
      aria-expanded={isOpen}
      onClick={() => editor.select(isOpen ? null : cut.target)}
    >
      <span className="cut-top">
        <span className="cut-what">
          <span className="unseen">{n}. </span>
          {piece}
        </span>
        <span className="cut-gain">{words.gainInShort(cut.gain.figs)}</span>
      </span>
      {reason === undefined ? null : <span className="cut-why">{briefReason(reason, units)}</span>}
      {foot.length === 0 ? null : <span className="cut-foot">{foot.join(' · ')}</span>}
    </button>
  );
}
