/** The mark on the pot that stood north when the tree was sketched. Arrow keys turn it by a degree. */
import { changeStanding } from '../../../../editor/edits/place.ts';
import { wrapDeg } from '../../../../geometry/world.ts';
import { useGrip } from '../../../fields/useGrip.ts';
import { placeWords } from '../words.ts';
import { pixelOf, ringPx, skyAt, widthPx } from './frame.ts';
import { type PlanFrame, turnRoom } from './planFrame.ts';

export function TurnGrip({ file, draft, ringM }: PlanFrame) {
  const { at, turnedDeg } = file.standing;
  const off = turnRoom * ringPx * 2;
  const [x, y] = pixelOf(at, ringM);
  const markAt = (bearing: number): readonly [number, number] => {
    const a = (bearing * Math.PI) / 180;
    return [x + off * Math.sin(a), y - off * Math.cos(a)];
  };
  const turn = (bearing: number) =>
    draft.show((old) => changeStanding(old, { turnedDeg: Math.round(wrapDeg(bearing)) }));
  const [fromX, fromY] = markAt(turnedDeg);
  const grip = useGrip({
    drag: (dx, dy) => {
      const [toX, toY] = [fromX + dx - x + widthPx / 2, fromY + dy - y + widthPx / 2];
      turn(skyAt(toX, toY).bearingDeg);
    },
    step: (right, down) => turn(turnedDeg + right + down),
    done: draft.done,
    drop: draft.drop,
  });
  const [markX, markY] = markAt(draft.shown.standing.turnedDeg);
  return (
    <g
      {...grip}
      role="button"
      tabIndex={0}
      aria-label={placeWords.plan.turnTree(turnedDeg)}
      className="plan-knob"
    >
      <line x1={x} y1={y} x2={markX} y2={markY} />
      <circle className="plan-touch" cx={markX} cy={markY} r={22} />
      <circle className="plan-shape" cx={markX} cy={markY} r={6} />
    </g>
  );
}
