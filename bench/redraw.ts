/** What the stage works out after a new answer: the share and the colour of every leaf. */
import { random01 } from '../src/geometry/random.ts';
import type { Canopy, LeafBlade } from '../src/growth/canopy.ts';
import { faintLeaves, leafColours } from '../src/ui/scene/leafColours.ts';
import { ownersIn } from '../src/ui/scene/owner.ts';
import { stageColours } from '../src/ui/scene/stageColours.ts';
import { leafShares } from '../src/ui/stage/leafShares.ts';
import { makeLightScale } from '../src/ui/theme/lightScale.ts';
import { median, timeMs } from './clock.ts';
import { vaseTree } from './vaseTree.ts';

const [leafCount, rounds] = [1000, 41];

/** The leaves of the bench's tree, as the stage knows them. */
function canopyOf(): Canopy {
  const { surfaces, group, shootCount } = vaseTree(leafCount, 5);
  const seen = new Map<number, number>();
  const leaves = surfaces.flatMap((surface, i): LeafBlade[] => {
    if (surface.shape !== 'blade') return [];
    const shoot = group[i] as number;
    const node = (seen.get(shoot) ?? 0) + 1;
    seen.set(shoot, node);
    const { owner, origin, along, across } = surface;
    const size = { midribM: 0.15, acrossScaleM: 0.15, areaM2: 0.01 };
    return [{ owner, node, petioleFrom: origin, bladeFrom: origin, along, across, ...size }];
  });
  const owners = Array.from({ length: shootCount + 1 }, (_, i) =>
    i === 0 ? null : { id: `shoot-${i}`, kind: 'axis' as const, parent: 0, leafy: true },
  );
  return { owners, leaves, wood: [], nodes: [], shoots: [], outline: [] };
}

/** An answer as uneven as light is, another at every round. */
function lightAt(canopy: Canopy, round: number) {
  const ids = canopy.owners.flatMap((owner) => (owner === null ? [] : [owner.id]));
  const nodes = canopy.leaves.map(({ owner, node }, i) => ({
    shootId: canopy.owners[owner]?.id ?? '',
    node,
    share: random01(9, round, i),
  }));
  return {
    shoots: new Map(ids.map((id, i) => [id, random01(11, round, i)])),
    nodes,
    leaves: nodes,
  };
}

/** Markdown: milliseconds for the first answer and for those after it. */
export function measureRedraw(): string {
  const canopy = canopyOf();
  const { plant, paper, lit, shade } = stageColours.paper;
  const scale = makeLightScale({ deepShade: 0.135, fruitingLight: 0.27, saturation: 0.45 });
  const spotlit = ownersIn(canopy, new Set(['shoot-3', 'shoot-7']));
  const look = {
    kind: 'open sky',
    stale: false,
    scale,
    selected: 4,
    hovered: 0,
    spotlit,
    fadeFrom: null,
  } as const;
  const times = Array.from({ length: rounds }, (_, round) => {
    const light = lightAt(canopy, round);
    return timeMs(() => {
      const shares = leafShares(canopy, light, 'node');
      leafColours(canopy, { ...look, shares, plant, paper, lit, shade });
      faintLeaves(canopy, { ...look, shares });
    });
  });
  const [first = Number.NaN, ...after] = times;
  return `A new answer made colours of ${canopy.leaves.length} leaves: **${median(after).toFixed(2)} ms** in the median, ${first.toFixed(1)} ms the first time, cold. Goal: 16 ms for all that the stage does.`;
}
