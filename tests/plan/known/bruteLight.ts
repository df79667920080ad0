/**
 * Light in a canopy by definition, written anew: every ray against every leaf and every stretch of wood, with what it passes kept by
 * owner. Nothing of the tracers is used; the directions and the light of the sky are those of the plan (equations 4.1, 4.2, 5.2).
 */
import { dot, scale, sub, type Vec3 } from '../../../src/geometry/vec.ts';
import type { Canopy, LeafBlade, WoodStretch } from '../../../src/growth/canopy.ts';
import type { CellLight, Direction } from '../../../src/light/directions.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';

/** What a ray along this direction brings where nothing stands, and the owners it passes: what each lets through. */
export interface Ray {
  readonly brings: number;
  readonly passes: ReadonlyMap<number, number>;
}

interface Thing {
  readonly owner: number;
  readonly lets: number;
  readonly middle: Vec3;
  readonly reachM: number;
  meets(from: Vec3, toSky: Vec3): boolean;
}

const lengthOf = (a: Vec3): number => Math.sqrt(dot(a, a));
const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Even-odd rule, after a look at the box round the outline. */
function insideOf(outline: Canopy['outline']): (u: number, v: number) => boolean {
  const us = Float64Array.from(outline, ([u]) => u);
  const vs = Float64Array.from(outline, ([, v]) => v);
  const [low, high] = [Math.min(...us), Math.max(...us)];
  const [left, right] = [Math.min(...vs), Math.max(...vs)];
  return (u, v) => {
    if (u < low || u > high || v < left || v > right) return false;
    let inside = false;
    for (let i = 0, j = us.length - 1; i < us.length; j = i++) {
      const [u1, v1, u2, v2] = [us[i] as number, vs[i] as number, us[j] as number, vs[j] as number];
      if (v1 > v !== v2 > v && u < u1 + ((v - v1) / (v2 - v1)) * (u2 - u1)) inside = !inside;
    }
    return inside;
  };
}

function leafThing(leaf: LeafBlade, inside: ReturnType<typeof insideOf>, lets: number): Thing {
  const normal = times(leaf.along, leaf.across);
  const middle = plus(leaf.bladeFrom, scale(leaf.along, leaf.midribM / 2));
  return {
    owner: leaf.owner,
    lets,
    middle,
    reachM: 1.2 * Math.max(leaf.midribM, leaf.acrossScaleM),
    meets: (from, toSky) => {
      const t = dot(sub(leaf.bladeFrom, from), normal) / dot(toSky, normal);
      if (!(t > 0)) return false;
      const at = sub(plus(from, scale(toSky, t)), leaf.bladeFrom);
      return inside(dot(at, leaf.along) / leaf.midribM, dot(at, leaf.across) / leaf.acrossScaleM);
    },
  };
}

/** The least of (distance of the half-line from a point of the axis) - (radius there): both are convex along the axis. */
function woodThing(wood: WoodStretch): Thing {
  const along = sub(wood.to, wood.from);
  const room = (s: number, from: Vec3, toSky: Vec3): number => {
    const centre = sub(plus(wood.from, scale(along, s)), from);
    const t = Math.max(0, dot(centre, toSky));
    return (
      lengthOf(sub(centre, scale(toSky, t))) - (wood.fromRadiusM + s * (wood.toRadiusM - wood.fromRadiusM))
    );
  };
  return {
    owner: wood.owner,
    lets: 0,
    middle: plus(wood.from, scale(along, 0.5)),
    reachM: lengthOf(along) / 2 + Math.max(wood.fromRadiusM, wood.toRadiusM),
    meets: (from, toSky) => {
      let [low, high] = [0, 1];
      for (let i = 0; i < 60; i++) {
        const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
        if (room(a, from, toSky) < room(b, from, toSky)) high = b;
        else low = a;
      }
      return room((low + high) / 2, from, toSky) < 0;
    },
  };
}

/** Those things that a ray from here along a direction may meet: the ball round them lies on its way. */
function onTheWay(things: readonly Thing[], [x, y, z]: Vec3): (toSky: Vec3) => Thing[] {
  const at = Float64Array.from(things.flatMap(({ middle }) => [middle[0] - x, middle[1] - y, middle[2] - z]));
  return ([dx, dy, dz]) =>
    things.filter(({ reachM }, i) => {
      const [ax, ay, az] = [at[3 * i] as number, at[3 * i + 1] as number, at[3 * i + 2] as number];
      const ahead = ax * dx + ay * dy + az * dz;
      const away2 = ax * ax + ay * ay + az * az - Math.max(0, ahead) ** 2;
      return away2 <= reachM * reachM;
    });
}

export interface LightAsked {
  readonly canopy: Canopy;
  /** Share that a leaf among leaves lets through, equation 4.5. */
  readonly leafLets: number;
  readonly light: CellLight;
  /** Directions without light in it are not looked along at all. */
  readonly seenIn: CellLight;
  readonly latitudeDeg: number;
  readonly seed: number;
  readonly waves: number;
}

/** Per node of the canopy, the rays of all waves; a level sensor at the foot of the node's own leaf, which does not shade it. */
export function raysOfNodes(asked: LightAsked): Ray[][] {
  const { canopy, leafLets, light, seenIn, latitudeDeg, seed, waves } = asked;
  const inside = insideOf(canopy.outline);
  const leaves = canopy.leaves.map((leaf) => leafThing(leaf, inside, leafLets));
  const things = [...leaves, ...canopy.wood.map(woodThing)];
  const all = Array.from({ length: waves }, (_, wave) =>
    weighed(everyThird(waveDirections({ latitudeDeg, seed, wave }), seenIn, wave), light),
  );
  return canopy.nodes.map(({ point }, node) => {
    const near = onTheWay(things, point);
    return all.flat().map(({ toSky, brings }): Ray => {
      const passes = new Map<number, number>();
      for (const thing of near(toSky)) {
        if (thing === leaves[node] || !thing.meets(point, toSky)) continue;
        passes.set(thing.owner, (passes.get(thing.owner) ?? 1) * thing.lets);
      }
      return { brings: brings / waves, passes };
    });
  });
}

/** A wave looks along one in three of the directions of sky and sun that bring light, the next wave along others. */
function everyThird(directions: readonly Direction[], seenIn: CellLight, wave: number): readonly Direction[] {
  const lit = directions.filter(({ kind, cell }) => kind !== 'ground' && (seenIn[kind][cell] ?? 0) > 0);
  return lit.filter((_, d) => d % 3 === wave % 3);
}

/** Sky and beam scaled apart, so that an open level sensor gets the closed sums of both from each wave. */
function weighed(directions: readonly Direction[], light: CellLight): { toSky: Vec3; brings: number }[] {
  return (['sky', 'beam'] as const).flatMap((kind) => {
    const closed = kind === 'sky' ? light.openDiffuseParMolM2Day : light.openBeamParMolM2Day;
    const level = directions
      .filter((one) => one.kind === kind && (light[kind][one.cell] ?? 0) > 0)
      .map(({ toSky, cell }) => ({ toSky, level: (light[kind][cell] ?? 0) * toSky[1] }));
    const open = level.reduce((sum, one) => sum + one.level, 0);
    return level.map((one) => ({
      toSky: one.toSky,
      brings: (one.level / open) * (closed / light.openSkyParMolM2Day),
    }));
  });
}
