/** A small picture of the wood from another side, live while a branch is pulled; a tap makes it the large one. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { commandOf } from '../../editor/commands.ts';
import { branchOf } from '../../editor/selection.ts';
import { useHost } from '../frame/host.ts';
import { isNarrow } from '../frame/narrow.ts';
import type { FlatSide } from '../scene/framing.ts';
import { useFile, useSelected, useShownFile, useView, useWorkbench } from '../state/workbench.ts';
import { type SecondPicture, secondFrame, secondPicture, secondSide, sizePx } from './secondPicture.ts';
import { viewWords as words } from './viewWords.ts';

export function SecondView() {
  const { eye, view } = useWorkbench();
  const { isSecondOpen, draftFrame } = useView();
  const side = useStore(eye, ({ now, lastSide }) => (now === null ? null : secondSide(now, lastSide)));
  if (side === null || draftFrame !== null) return null;
  // On a phone, where it would lie over the tree, the picture is folded away until it is asked for.
  const isOpen = isSecondOpen ?? !isNarrow();
  return (
    <div className="second-view">
      <button
        type="button"
        className="button second-fold"
        aria-expanded={isOpen}
        aria-label={words.second}
        title={isOpen ? words.foldSecond : words.unfoldSecond}
        onClick={() => view.setState({ isSecondOpen: !isOpen })}
      >
        <span aria-hidden="true">{isOpen ? '−' : '+'}</span>
      </button>
      {isOpen ? <Picture side={side} /> : null}
    </div>
  );
}

function Picture({ side }: { readonly side: FlatSide }) {
  const { editor } = useWorkbench();
  const host = useHost();
  const [open, shown] = [useFile(), useShownFile()];
  const selected = branchOf(shown, useSelected());
  const frame = useMemo(() => secondFrame(open, side), [open, side]);
  const picture = useMemo(() => secondPicture(shown, frame), [shown, frame]);
  return (
    <button
      type="button"
      className="second-picture"
      aria-label={words.secondFrom(side)}
      title={words.makeLarge}
      onClick={() => commandOf(`from-${side}`).run(editor, host)}
    >
      <svg viewBox={`0 0 ${sizePx} ${sizePx}`} aria-hidden="true">
        <Lines picture={picture} selected={selected} />
      </svg>
      <span className="second-words">{words.secondShort(side)}</span>
    </button>
  );
}

function Lines({ picture, selected }: { readonly picture: SecondPicture; readonly selected: string | null }) {
  const { lines, letters } = picture;
  return (
    <>
      {lines.map(({ id, d, widthPx }) => (
        <path key={id} className={id === selected ? 'is-selected' : ''} d={d} strokeWidth={widthPx} />
      ))}
      <text x={3} y={sizePx / 2 + 3}>
        {letters.left}
      </text>
      <text x={sizePx - 3} y={sizePx / 2 + 3} textAnchor="end">
        {letters.right}
      </text>
      <text x={sizePx / 2} y={9} textAnchor="middle">
        {letters.top}
      </text>
    </>
  );
}
