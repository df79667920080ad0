/** A wall, fence, hedge, block or neighbour seen from above. */
import type { Surrounding } from '../../../../document/treeFile.ts';
import { changeSurrounding } from '../../../../editor/edits/place.ts';
import { useGrip } from '../../../fields/useGrip.ts';
import { useWorkbench } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { metresOf, pixelOf, points } from './frame.ts';
import { Pickable } from './Pickable.tsx';
import { type PlanFrame, stepM } from './planFrame.ts';
import { movedBy, outline, type Spot, whereFrom } from './shapes.ts';

export function PlanThing({
  thing,
  index,
  ...frame
}: PlanFrame & { readonly thing: Surrounding; readonly index: number }) {
  const { editor } = useWorkbench();
  const { file, draft, ringM, units, picked, onPick } = frame;
  const before = file.site.surroundings[index] ?? thing;
  const isPicked = picked === index;
  const move = (by: Spot) => draft.show((old) => changeSurrounding(old, index, movedBy(before, by)));
  const step = stepM(units);
  const grip = useGrip({
    isFixed: !isPicked,
    drag: (dx, dy) => move(metresOf(dx, dy, ringM, step)),
    step: (right, down) => move([right * step, -down * step]),
    done: draft.done,
    drop: draft.drop,
  });
  const corners = points(outline(thing).map((spot) => pixelOf(spot, ringM)));
  const kind = placeWords.kinds[thing.kind];
  return (
    <Pickable
      label={placeWords.plan.thing(thing.name, kind, whereFrom(thing, file.standing.at, units))}
      className={`plan-thing is-${thing.kind}`}
      isPicked={isPicked}
      onPick={() => onPick(index)}
      onTakeAway={() => {
        onPick(null);
        editor.make((old) => changeSurrounding(old, index, null));
      }}
      grip={grip}
    >
      <polygon className="plan-touch" points={corners} />
      <polygon className="plan-shape" points={corners} />
    </Pickable>
  );
}
