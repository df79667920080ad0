/** The place from above, north up: the tree, what stands round it and the sun's ways. Things are picked and dragged. */
import { useMemo } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { quantities } from '../../../fields/quantities.ts';
import { extentOf } from '../../../scene/extent.ts';
import { drawnCanopy } from '../../../stage/drawnCanopy.ts';
import { useFile, useUnits } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { useDraft } from './draft.ts';
import { ringRadiusM, widthPx } from './frame.ts';
import { PlanThing } from './PlanThing.tsx';
import type { Picked, PlanFrame } from './planFrame.ts';
import { SkyRing } from './SkyRing.tsx';
import { areaM2, outline, type Spot } from './shapes.ts';
import { ThingGrips } from './ThingGrips.tsx';
import { TreeSpot } from './TreeSpot.tsx';
import { TurnGrip } from './TurnGrip.tsx';

const words = placeWords.plan;

function spotsIn({ site, standing }: TreeFile, reachM: number): Spot[] {
  const [e, n] = standing.at;
  return [[e + reachM, n + reachM], [e - reachM, n - reachM], ...site.surroundings.flatMap(outline)];
}

export function PlanView({
  picked,
  onPick,
}: {
  readonly picked: Picked;
  readonly onPick: (picked: Picked) => void;
}) {
  const file = useFile();
  const units = useUnits();
  const draft = useDraft();
  const reachM = useMemo(() => extentOf(drawnCanopy(file, 'in full leaf'), file).reachM, [file]);
  const ringM = ringRadiusM(spotsIn(file, reachM), units);
  const frame: PlanFrame = { file, draft, ringM, units, picked, onPick };
  const drawn = draft.shown.site.surroundings
    .map((thing, index) => ({ thing, index }))
    .toSorted((a, b) => areaOf(file, b.index) - areaOf(file, a.index));
  return (
    <svg className="plan" viewBox={`0 0 ${widthPx} ${widthPx}`} role="group" aria-label={words.picture}>
      <text className="plan-scale" x={widthPx - 4} y={widthPx - 6}>
        {words.scale(`${quantities.site.write(ringM, units)} ${quantities.site.unit(units)}`)}
      </text>
      {drawn.map(({ thing, index }) => (
        <PlanThing key={index} {...frame} thing={thing} index={index} />
      ))}
      <TreeSpot {...frame} reachM={reachM} />
      <SkyRing file={draft.shown} />
      {typeof picked === 'number' ? <ThingGrips {...frame} index={picked} /> : null}
      {picked === 'tree' ? <TurnGrip {...frame} /> : null}
    </svg>
  );
}

const areaOf = (file: TreeFile, index: number): number => {
  const thing = file.site.surroundings[index];
  return thing === undefined ? 0 : areaM2(outline(thing));
};
