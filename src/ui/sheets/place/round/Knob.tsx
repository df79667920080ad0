/** A round knob that is dragged, or moved by keys, to another spot. */
import { useGrip } from '../../../fields/useGrip.ts';
import { metresOf, pixelOf } from './frame.ts';
import { type PlanFrame, stepM } from './planFrame.ts';
import type { Spot } from './shapes.ts';

const plus = ([e, n]: Readonly<Spot>, [de, dn]: Spot): Spot => [e + de, n + dn];

interface KnobProps extends PlanFrame {
  readonly label: string;
  /** Where it was when it was taken hold of. */
  readonly from: Readonly<Spot>;
  readonly at: Readonly<Spot>;
  readonly onMove: (spot: Spot) => void;
}

export function Knob(props: KnobProps) {
  const { draft, ringM, units, label, from, at, onMove } = props;
  const step = stepM(units);
  const grip = useGrip({
    drag: (dx, dy) => onMove(plus(from, metresOf(dx, dy, ringM, step))),
    step: (right, down) => onMove(plus(from, [right * step, -down * step])),
    done: draft.done,
    drop: draft.drop,
  });
  const [x, y] = pixelOf(at, ringM);
  return (
    <g {...grip} role="button" tabIndex={0} aria-label={label} className="plan-knob">
      <circle className="plan-touch" cx={x} cy={y} r={22} />
      <circle className="plan-shape" cx={x} cy={y} r={6} />
    </g>
  );
}
