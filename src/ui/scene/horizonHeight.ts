/** How high the skyline and the rising ground stand together, as they are drawn. */
import type { TreeFile } from '../../document/treeFile.ts';
import { deg, rad } from '../../geometry/world.ts';
import { skylineHeightDeg } from '../../light/sky/horizon.ts';

/** Height above the level at a bearing, degrees, 0 or more; null where the sky is open all round. */
export function horizonHeight({
  skyline,
  slope,
}: Pick<TreeFile['site'], 'skyline' | 'slope'>): ((bearingDeg: number) => number) | null {
  const points = (skyline?.points ?? []).toSorted((a, b) => a.bearingDeg - b.bearingDeg);
  const { slopeDeg, fallsToDeg } = slope ?? { slopeDeg: 0, fallsToDeg: 0 };
  if (slopeDeg === 0 && points.every(({ heightDeg }) => heightDeg === 0)) return null;
  return (bearing) => {
    const ground = deg(Math.atan(-Math.tan(rad(slopeDeg)) * Math.cos(rad(bearing - fallsToDeg))));
    return Math.max(0, ground, skylineHeightDeg(points, bearing));
  };
}
