/** An invented potted fig for the tests: a trunk, four scaffolds, laterals on each, buds on all wood but the trunk. */
import type { Axis, Bud, Tree } from '../../src/geometry/tree.ts';
import { scale } from '../../src/geometry/vec.ts';
import { direction } from '../../src/geometry/world.ts';

const budsOn = (id: string, count: number, lengthM: number): Bud[] =>
  Array.from({ length: count }, (_, i) => ({
    id: `${id}-b${i + 1}`,
    atM: (lengthM * (i + 1)) / count,
    aroundDeg: (137.5 * i + 20) % 360,
    pin: null,
  }));

interface Wood {
  id: string;
  kind: Axis['kind'];
  parentId: string | null;
  atM: number;
  bearing: number;
  elevation: number;
  lengthM: number;
  baseM: number;
  tipM: number;
  buds: number;
}

export const axis = (wood: Wood, more: Partial<Axis> = {}): Axis => ({
  id: wood.id,
  name: wood.id.replaceAll('-', ' '),
  kind: wood.kind,
  parentId: wood.parentId,
  atM: wood.atM,
  path: [[0, 0, 0], scale(direction(wood.bearing, wood.elevation), wood.lengthM)],
  baseDiameterM: wood.baseM,
  tipDiameterM: wood.tipM,
  grownIn: 2024,
  condition: 'live',
  buds: budsOn(wood.id, wood.buds, wood.lengthM),
  foliage: null,
  pin: null,
  ...more,
});

/** 4 scaffolds, 12 laterals, 52 buds. */
export function pottedFig(): Tree {
  const axes: Axis[] = [
    axis({
      id: 'trunk',
      kind: 'trunk',
      parentId: null,
      atM: 0,
      bearing: 0,
      elevation: 90,
      lengthM: 0.45,
      baseM: 0.048,
      tipM: 0.04,
      buds: 0,
    }),
  ];
  [17, 104, 195, 283].forEach((bearing, i) => {
    const id = `limb-${i + 1}`;
    axes.push(
      axis({
        id,
        kind: 'scaffold',
        parentId: 'trunk',
        atM: 0.45 - 0.05 * i,
        bearing,
        elevation: 42,
        lengthM: 0.42,
        baseM: 0.024,
        tipM: 0.014,
        buds: 4,
      }),
    );
    [-50, 5, 48].forEach((turn, j) => {
      axes.push(
        axis({
          id: `${id}-lateral-${j + 1}`,
          kind: 'lateral',
          parentId: id,
          atM: 0.16 + 0.12 * j,
          bearing: bearing + turn,
          elevation: 48,
          lengthM: 0.23,
          baseM: 0.012,
          tipM: 0.008,
          buds: 3,
        }),
      );
    });
  });
  return { axes };
}
