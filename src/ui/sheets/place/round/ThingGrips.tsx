/** The knobs by which the picked thing is stretched and turned. */
import { changeSurrounding } from '../../../../editor/edits/place.ts';
import { placeWords } from '../words.ts';
import { Knob } from './Knob.tsx';
import { type PlanFrame, turnRoom } from './planFrame.ts';
import { gripsOf } from './shapes.ts';

export function ThingGrips({ index, ...frame }: PlanFrame & { readonly index: number }) {
  const { file, draft, ringM } = frame;
  const [before, now] = [file.site.surroundings[index], draft.shown.site.surroundings[index]];
  if (before === undefined || now === undefined) return null;
  const roomM = turnRoom * ringM;
  const shown = gripsOf(now, roomM);
  return gripsOf(before, roomM).map((grip, i) => (
    <Knob
      key={grip.id}
      {...frame}
      label={placeWords.plan.grips[grip.id](now.name)}
      from={grip.at}
      at={shown[i]?.at ?? grip.at}
      onMove={(spot) => draft.show((old) => changeSurrounding(old, index, grip.to(spot)))}
    />
  ));
}
