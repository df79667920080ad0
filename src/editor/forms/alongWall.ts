/** The wall that a flat tree would be trained along. */
import type { TreeFile } from '../../document/treeFile.ts';
import { distance } from '../../geometry/vec.ts';
import { bearingDeg } from '../../geometry/world.ts';

/** Further off, a wall is not what the tree is trained to: our choice. */
const nearM = 2.5;

type Spot = readonly [eastM: number, northM: number];

/** Bearing, 0 to 180, along the nearest wall or fence within reach of the tree; null when there is none. */
export function alongWallDeg({ site, standing }: TreeFile): number | null {
  const near = site.surroundings
    .flatMap((thing) => (thing.kind === 'wall' || thing.kind === 'fence' ? [thing] : []))
    .map(({ from, to }) => ({ from, to, offM: offM(standing.at, from, to) }))
    .filter((wall) => wall.offM <= nearM)
    .toSorted((a, b) => a.offM - b.offM)[0];
  if (near === undefined) return null;
  const { from, to } = near;
  return bearingDeg([to[0] - from[0], 0, from[1] - to[1]]) % 180;
}

/** From a spot to the nearest point of a straight stretch. */
function offM([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [dx, dy] = [bx - ax, by - ay];
  const longM2 = dx * dx + dy * dy;
  const t = longM2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / longM2));
  return distance([x, y, 0], [ax + t * dx, ay + t * dy, 0]);
}
