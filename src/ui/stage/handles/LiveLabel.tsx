/** The figures of the selected branch beside it: they follow the hand, can be typed into and locked. */
import type { ReactNode } from 'react';
import type { Edit, TreeAxis } from '../../../editor/edit.ts';
import { describe } from '../../../editor/edits/describe.ts';
import { reshape } from '../../../editor/edits/reshape.ts';
import { branchFigures } from '../../../editor/figures.ts';
import type { HandlePlaces } from '../../../editor/pull/handlePlaces.ts';
import type { HeldName } from '../../../editor/pull/held.ts';
import { thicknessByRuleM } from '../../../editor/pull/thicknessByRule.ts';
import { formatLength } from '../../../geometry/measure.ts';
import { wind } from '../../../geometry/world.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import type { StageEye } from '../../scene/stageModel.ts';
import { heldOf } from '../../state/pullWork.ts';
import { useUnits, useView, useWorkbench } from '../../state/workbench.ts';
import { narrowPx, type Room, roomIn } from './handleLayout.ts';
import { labelPlace } from './labelPlace.ts';
import { handleWords as words } from './words.ts';

type Xy = readonly [x: number, y: number];

interface LiveLabelProps {
  readonly axis: TreeAxis;
  readonly places: HandlePlaces;
  readonly eye: StageEye;
  /** Where fingers take hold of it. */
  readonly holds: readonly Xy[];
  /** What lies over the picture. */
  readonly tools: readonly Room[];
}

/** Sizes of the label closed and open, pixels: as in its sheet of style. */
const closedPx = { width: 150, height: 48 };
const openPx = { width: 260, height: 196 };

export function LiveLabel({ axis, places, eye, holds, tools }: LiveLabelProps) {
  const { view } = useWorkbench();
  const { isLabelOpen } = useView();
  const [base, tip] = [eye.project(places.base), eye.project(places.tip)];
  if (base === null || tip === null) return null;
  const isAcross = isLabelOpen && eye.size.width < narrowPx;
  const label = isLabelOpen ? openPx : closedPx;
  const [left, top] = labelPlace([base[0], base[1]], [tip[0], tip[1]], label, roomIn(eye.size), holds, tools);
  return (
    <div
      className={isAcross ? 'live-label is-across' : 'live-label'}
      role="group"
      aria-label={words.figures(axis.name)}
      style={isAcross ? {} : { left, top }}
    >
      {isLabelOpen ? (
        <OpenLabel axis={axis} onClose={() => view.setState({ isLabelOpen: false })} />
      ) : (
        <ClosedLabel axis={axis} onOpen={() => view.setState({ isLabelOpen: true })} />
      )}
    </div>
  );
}

/** The figures in two lines. */
function ClosedLabel({ axis, onOpen }: { readonly axis: TreeAxis; readonly onOpen: () => void }) {
  const units = useUnits();
  const { bearingDeg, fromUprightDeg, lengthM } = branchFigures(axis);
  const side = `${Math.round(bearingDeg) % 360}° ${shortWind(bearingDeg)}`;
  const [length, thick] = [formatLength(lengthM, units), formatLength(axis.baseDiameterM, units)];
  const way = `${side} · ${Math.round(fromUprightDeg)}°`;
  const size = `${length} · ⌀ ${thick}`;
  return (
    <button
      type="button"
      className="button live-figures"
      aria-label={words.open(axis.name, `${way} · ${size}`)}
      onClick={onOpen}
    >
      <span>{way}</span>
      <span>{size}</span>
    </button>
  );
}

const shortWind = (bearingDeg: number): string =>
  wind(bearingDeg)
    .split('-')
    .map((word) => word.charAt(0).toUpperCase())
    .join('');

function OpenLabel({ axis, onClose }: { readonly axis: TreeAxis; readonly onClose: () => void }) {
  const { editor } = useWorkbench();
  const make = (edit: Edit) => void editor.make(edit);
  const { bearingDeg, fromUprightDeg, lengthM } = branchFigures(axis);
  const thicken =
    (thickM: number): Edit =>
    (file) =>
      describe(file, axis.id, { baseDiameterM: thickM, tipDiameterM: Math.min(axis.tipDiameterM, thickM) });
  const common = { id: axis.id };
  return (
    <>
      <div className="live-head">
        <span className="live-name">{axis.name}</span>
        <button
          type="button"
          className="button is-small live-rule"
          title={words.byRuleTitle}
          onClick={() => make((file) => thicken(thicknessByRuleM(file, axis))(file))}
        >
          {words.byRule}
        </button>
        <button type="button" className="button is-small" onClick={onClose}>
          {words.close}
        </button>
      </div>
      <Figure {...common} name="side">
        <NumberField
          label={words.fields.side}
          value={bearingDeg}
          quantity={quantities.exactBearing}
          onCommit={(v) => make((file) => reshape(file, axis.id, { bearingDeg: v }))}
        />
      </Figure>
      <Figure {...common} name="upright">
        <NumberField
          label={words.fields.upright}
          value={fromUprightDeg}
          quantity={quantities.exactAngle}
          onCommit={(v) => make((file) => reshape(file, axis.id, { fromUprightDeg: v }))}
        />
      </Figure>
      <Figure {...common} name="length">
        <NumberField
          label={words.fields.length}
          value={lengthM}
          quantity={quantities.wood}
          onCommit={(v) => make((file) => reshape(file, axis.id, { lengthM: v }))}
        />
      </Figure>
      <Figure {...common} name="thickness">
        <NumberField
          label={words.fields.thickness}
          value={axis.baseDiameterM}
          quantity={quantities.thickness}
          onCommit={(v) => make(thicken(v))}
        />
      </Figure>
    </>
  );
}

interface FigureProps {
  readonly id: string;
  readonly name: HeldName;
  readonly children: ReactNode;
}

/** A figure and its lock. */
function Figure({ id, name, children }: FigureProps) {
  const { view } = useWorkbench();
  const names = heldOf(useView().held, id);
  const isHeld = names.has(name);
  const toggle = () => {
    const next = new Set(names);
    if (!next.delete(name)) next.add(name);
    view.setState({ held: { id, names: next } });
  };
  return (
    <div className="live-figure is-inline">
      {children}
      <button
        type="button"
        className="button lock"
        aria-pressed={isHeld}
        aria-label={words.lock[name]}
        title={words.lockTitle(isHeld)}
        onClick={toggle}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={isHeld ? 'M6 9V6a4 4 0 0 1 8 0v3' : 'M6 9V5a4 4 0 0 1 7.6-1.6'} />
          <rect x="4" y="9" width="12" height="8" rx="1" />
        </svg>
      </button>
    </div>
  );
}
