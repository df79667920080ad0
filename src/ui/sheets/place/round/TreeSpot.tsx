/** The tree seen from above: its crown in full leaf and its foot or pot. */
import { changeStanding } from '../../../../editor/edits/place.ts';
import { useGrip } from '../../../fields/useGrip.ts';
import { placeWords } from '../words.ts';
import { metresOf, pixelOf, ringPx } from './frame.ts';
import { Pickable } from './Pickable.tsx';
import { type PlanFrame, stepM } from './planFrame.ts';
import type { Spot } from './shapes.ts';

const round = (m: number): number => Math.round(m * 1000) / 1000;

export function TreeSpot({ reachM, ...frame }: PlanFrame & { readonly reachM: number }) {
  const { file, draft, ringM, units, picked, onPick } = frame;
  const [e, n] = file.standing.at;
  const move = (by: Spot) =>
    draft.show((old) => changeStanding(old, { at: [round(e + by[0]), round(n + by[1])] }));
  const step = stepM(units);
  const grip = useGrip({
    isFixed: picked !== 'tree',
    drag: (dx, dy) => move(metresOf(dx, dy, ringM, step)),
    step: (right, down) => move([right * step, -down * step]),
    done: draft.done,
    drop: draft.drop,
  });
  const { at, pot } = draft.shown.standing;
  const [x, y] = pixelOf(at, ringM);
  const perM = ringPx / ringM;
  return (
    <Pickable
      label={placeWords.plan.tree(file.name)}
      className="plan-thing is-tree"
      isPicked={picked === 'tree'}
      onPick={() => onPick('tree')}
      grip={grip}
    >
      <circle className="plan-touch" cx={x} cy={y} r={Math.max(16, reachM * perM)} />
      <circle className="plan-shape" cx={x} cy={y} r={reachM * perM} />
      <circle className="plan-foot" cx={x} cy={y} r={Math.max(3, ((pot?.topDiameterM ?? 0.1) / 2) * perM)} />
    </Pickable>
  );
}
