/** Synthetic vase-shaped trees, seeded: limbs that lean outwards, shoots on them, about twelve leaves a shoot. */
import { random01 } from '../src/geometry/random.ts';
import { opaque, type Surface } from '../src/geometry/surface.ts';
import {
  add,
  anyPerpendicular,
  cross,
  lerp,
  normalize,
  rotate,
  scale,
  type Vec3,
} from '../src/geometry/vec.ts';
import { figLeafOutline } from '../src/species/fig/leafOutline.ts';

export interface VaseTree {
  /** Blades first, shoot by shoot, then wood. */
  readonly surfaces: readonly Surface[];
  /** Shoot of each surface, -1 for wood. */
  readonly group: Int32Array;
  readonly shootCount: number;
  /** Owner 0 is fixed, shoot s is owner s + 1. */
  readonly ownerCount: number;
  readonly leafCount: number;
}

const leavesAShoot = 12;
const midribM = 0.15;
const leafOptics = { transmittance: 0.083, reflectance: 0.09 };

/** A stream of numbers in [0, 1). */
function stream(seed: number): () => number {
  let asked = 0;
  return () => random01(seed, asked++);
}

function anyDirection(draw: () => number): Vec3 {
  const y = 2 * draw() - 1;
  const turn = 2 * Math.PI * draw();
  const level = Math.sqrt(1 - y * y);
  return [level * Math.cos(turn), y, level * Math.sin(turn)];
}

function bladeAt(point: Vec3, outwards: Vec3, owner: number, draw: () => number): Surface {
  const along = normalize(add(outwards, scale(anyDirection(draw), 0.6)));
  const across = rotate(anyPerpendicular(along), along, (draw() - 0.5) * 1.6);
  return {
    shape: 'blade',
    owner,
    optics: leafOptics,
    origin: add(point, scale(along, 0.06)),
    along: scale(along, midribM),
    across: scale(across, midribM),
    outline: figLeafOutline,
  };
}

interface Parts {
  readonly blades: Surface[];
  readonly wood: Surface[];
  readonly group: number[];
}

function growShoot(base: Vec3, toward: Vec3, shoot: number, leaves: number, into: Parts, draw: () => number) {
  const lengthM = 0.035 * leaves + 0.1;
  const tip = add(base, scale(toward, lengthM));
  const owner = shoot + 1;
  for (let n = 0; n < leaves; n++) {
    const point = lerp(base, tip, (n + 1) / leaves);
    const side = rotate(anyPerpendicular(toward), toward, 2.4 * n + shoot);
    into.blades.push(bladeAt(point, add(scale(toward, 0.4), side), owner, draw));
    into.group.push(shoot);
  }
  const pieces = 4;
  for (let k = 0; k < pieces; k++) {
    const [from, to] = [lerp(base, tip, k / pieces), lerp(base, tip, (k + 1) / pieces)];
    const radius = (share: number): number => 0.006 * (1 - 0.6 * share);
    into.wood.push({
      shape: 'stem',
      owner,
      optics: opaque,
      from,
      to,
      fromRadiusM: radius(k / pieces),
      toRadiusM: radius((k + 1) / pieces),
    });
  }
}

/**
 * A tree of about so many leaves. Its crown grows with the cube root of their number, so that trees of any size are about
 * as dense.
 */
export function vaseTree(leafCount: number, seed: number): VaseTree {
  const draw = stream(seed);
  const into: Parts = { blades: [], wood: [], group: [] };
  const shootCount = Math.max(1, Math.round(leafCount / leavesAShoot));
  const limbs = Math.max(3, Math.round(shootCount ** (2 / 3) / 3));
  const reachM = 0.155 * leafCount ** (1 / 3);
  for (let limb = 0; limb < limbs; limb++) {
    const turn = 2 * Math.PI * (limb / limbs + 0.1 * draw());
    const lean = 0.15 + 0.75 * Math.sqrt(draw());
    const toward: Vec3 = [Math.sin(lean) * Math.cos(turn), Math.cos(lean), Math.sin(lean) * Math.sin(turn)];
    const [from, to]: [Vec3, Vec3] = [[0, 0.4, 0], add([0, 0.4, 0], scale(toward, reachM))];
    into.wood.push({
      shape: 'stem',
      owner: 0,
      optics: opaque,
      from,
      to,
      fromRadiusM: 0.03,
      toRadiusM: 0.01,
    });
    const first = Math.round((limb * shootCount) / limbs);
    const last = Math.round(((limb + 1) * shootCount) / limbs);
    for (let shoot = first; shoot < last; shoot++) {
      const base = lerp(from, to, 0.25 + 0.75 * draw());
      const side = normalize(add(cross(toward, anyDirection(draw)), scale(toward, 0.3)));
      const leaves =
        Math.round(((shoot + 1) * leafCount) / shootCount) - Math.round((shoot * leafCount) / shootCount);
      growShoot(base, normalize(add(side, [0, 0.5, 0])), shoot, leaves, into, draw);
    }
  }
  return {
    surfaces: [...into.blades, ...into.wood],
    group: Int32Array.from([...into.group, ...into.wood.map(() => -1)]),
    shootCount,
    ownerCount: shootCount + 1,
    leafCount: into.blades.length,
  };
}
