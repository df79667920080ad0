/** How much room the tree and its pot take up. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { dormantBuds } from './dormantBuds.ts';
import { worldFromOutline } from './leafFrame.ts';
import { ownerOf } from './owner.ts';

/** Corners of a leaf that stand for its outline. */
const leafCorners = [
  [0, 0],
  [1, 0],
  [0.5, 0.5],
  [0.5, -0.5],
] as const;

/** Points of one owner, or of all when `owner` is 0. */
export function canopyPoints(canopy: Canopy, owner = 0): Vec3[] {
  const points: Vec3[] = [];
  for (const leaf of canopy.leaves) {
    if (owner > 0 && leaf.owner !== owner) continue;
    for (const corner of leafCorners) points.push(worldFromOutline(leaf, corner));
  }
  for (const stretch of canopy.wood) {
    if (owner === 0 || stretch.owner === owner) points.push(stretch.from, stretch.to);
  }
  return points;
}

/** Points on the rim and foot of the pot; for a tree in the ground a small patch of soil. */
export function footPoints(file: TreeFile): Vec3[] {
  const { foot } = stanceOf(file);
  const { pot } = file.standing;
  const rings =
    pot === null
      ? [[0.2, 0] as const]
      : [[pot.topDiameterM / 2, pot.heightM] as const, [pot.baseDiameterM / 2, 0] as const];
  return rings.flatMap(([radiusM, heightM]) =>
    [0, 90, 180, 270].map((bearing): Vec3 => {
      const out = direction(bearing, 0);
      return [foot[0] + out[0] * radiusM, heightM, foot[2] + out[2] * radiusM];
    }),
  );
}

export interface Extent {
  /** On the ground below the trunk. */
  readonly centre: Vec3;
  /** Farthest level distance of the tree from there, and its height above the ground, metres. */
  readonly reachM: number;
  readonly heightM: number;
}

export function extentOf(canopy: Canopy, file: TreeFile): Extent {
  const { foot } = stanceOf(file);
  let [reachM, heightM] = [0.3, 0.5];
  for (const point of [...canopyPoints(canopy), ...footPoints(file)]) {
    reachM = Math.max(reachM, Math.hypot(point[0] - foot[0], point[2] - foot[2]));
    heightM = Math.max(heightM, point[1]);
  }
  return { centre: [foot[0], 0, foot[2]], reachM, heightM };
}

/** Radius of the compass on the ground: under the canopy, so that the tree stays large in the picture. */
export const compassRadiusM = (extent: Extent): number => 0.66 * extent.reachM;

/** Points on the compass, its letters included. */
export const compassPoints = (extent: Extent): Vec3[] =>
  Array.from({ length: 8 }, (_, i): Vec3 => {
    const out = direction(45 * i, 0);
    const radiusM = 1.12 * compassRadiusM(extent);
    return [extent.centre[0] + out[0] * radiusM, 0, extent.centre[2] + out[2] * radiusM];
  });

/** All that must be seen when the whole tree is looked at. */
export const pointsInPicture = (canopy: Canopy, file: TreeFile): Vec3[] => [
  ...canopyPoints(canopy),
  ...footPoints(file),
  ...compassPoints(extentOf(canopy, file)),
];

/** Points of a shoot, branch or bud; of a bud that has grown where it sat, to be found before it grows. None for an unknown id. */
export function pointsOf(canopy: Canopy, file: TreeFile, id: string): Vec3[] {
  const owner = ownerOf(canopy, id);
  if (canopy.owners[owner]?.kind === 'bud') {
    const base = canopy.wood.find((stretch) => stretch.owner === owner);
    if (base !== undefined) return [base.from];
  }
  const points = owner > 0 ? canopyPoints(canopy, owner) : [];
  if (points.length > 0) return points;
  return dormantBuds(file, canopy).flatMap((bud) => (bud.id === id ? [bud.point] : []));
}
