/** Wood as tapered tubes, all of it in one geometry with a colour per corner. */
import { BufferGeometry, Float32BufferAttribute } from 'three';
import { random01 } from '../../geometry/random.ts';
import {
  add,
  anyPerpendicular,
  cross,
  distance,
  dot,
  normalize,
  scale,
  sub,
  type Vec3,
} from '../../geometry/vec.ts';
import type { WoodStretch } from '../../growth/canopy.ts';
import type { LinearRgb } from '../theme/srgb.ts';

export interface WoodLook {
  /** Corners round the wood, 3 or more. */
  readonly sides: number;
  /** Added to every radius, metres: for outlines drawn as a larger tube behind. */
  readonly extraRadiusM: number;
  /** Uneven bark: share by which radius and colour vary. */
  readonly roughness: number;
  colourOf(owner: number): LinearRgb;
}

interface Ring {
  readonly centre: Vec3;
  readonly along: Vec3;
  readonly radiusM: number;
}

interface Chain {
  readonly owner: number;
  readonly rings: Ring[];
}

const direction = (stretch: WoodStretch): Vec3 => normalize(sub(stretch.to, stretch.from));

/** Stretches of one owner that follow each other end to end make one tube. */
function chainsOf(wood: readonly WoodStretch[]): Chain[] {
  const chains: Chain[] = [];
  let end: Vec3 | null = null;
  for (const stretch of wood) {
    if (distance(stretch.from, stretch.to) === 0) continue;
    const along = direction(stretch);
    let chain = chains[chains.length - 1];
    const follows =
      chain !== undefined &&
      end !== null &&
      chain.owner === stretch.owner &&
      distance(end, stretch.from) < 1e-6;
    if (chain === undefined || !follows) {
      chain = {
        owner: stretch.owner,
        rings: [{ centre: stretch.from, along, radiusM: stretch.fromRadiusM }],
      };
      chains.push(chain);
    } else {
      const last = chain.rings.pop() as Ring;
      const between = add(last.along, along);
      chain.rings.push({ ...last, along: dot(between, between) > 1e-9 ? normalize(between) : along });
    }
    chain.rings.push({ centre: stretch.to, along, radiusM: stretch.toRadiusM });
    end = stretch.to;
  }
  return chains;
}

interface Build {
  readonly positions: number[];
  readonly normals: number[];
  readonly colours: number[];
  readonly index: number[];
}

function addRing(build: Build, ring: Ring, across: Vec3, owner: number, n: number, look: WoodLook): void {
  const beside = cross(ring.along, across);
  const colour = look.colourOf(owner);
  for (let i = 0; i < look.sides; i++) {
    const a = (2 * Math.PI * i) / look.sides;
    const out = add(scale(across, Math.cos(a)), scale(beside, Math.sin(a)));
    const unevenness = look.roughness * (2 * random01(1, owner, n, i) - 1);
    const radiusM = ring.radiusM * (1 + unevenness / 2) + look.extraRadiusM;
    build.positions.push(...add(ring.centre, scale(out, radiusM)));
    build.normals.push(...out);
    for (const channel of colour) build.colours.push(channel * (1 + 1.6 * unevenness));
  }
}

function addChain(build: Build, chain: Chain, look: WoodLook): void {
  const { owner, rings } = chain;
  const { sides } = look;
  const first = build.positions.length / 3;
  let across = anyPerpendicular((rings[0] as Ring).along);
  rings.forEach((ring, n) => {
    const square = sub(across, scale(ring.along, dot(across, ring.along)));
    across = dot(square, square) > 1e-9 ? normalize(square) : anyPerpendicular(ring.along);
    addRing(build, ring, across, owner, n, look);
    if (n === 0) return;
    for (let i = 0; i < sides; i++) {
      const next = (i + 1) % sides;
      const [a, b] = [first + (n - 1) * sides + i, first + (n - 1) * sides + next];
      build.index.push(a, b, a + sides, b, b + sides, a + sides);
    }
  });
  const tip = rings[rings.length - 1] as Ring;
  const lastRing = first + (rings.length - 1) * sides;
  const top = build.positions.length / 3;
  build.positions.push(...add(tip.centre, scale(tip.along, tip.radiusM + look.extraRadiusM)));
  build.normals.push(...tip.along);
  build.colours.push(...look.colourOf(owner));
  for (let i = 0; i < sides; i++) build.index.push(lastRing + i, lastRing + ((i + 1) % sides), top);
}

/** Tubes for these stretches; attributes position, normal, color (linear). */
export function makeWoodGeometry(wood: readonly WoodStretch[], look: WoodLook): BufferGeometry {
  const build: Build = { positions: [], normals: [], colours: [], index: [] };
  for (const chain of chainsOf(wood)) addChain(build, chain, look);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(build.positions, 3));
  geometry.setAttribute('normal', new Float32BufferAttribute(build.normals, 3));
  geometry.setAttribute('color', new Float32BufferAttribute(build.colours, 3));
  geometry.setIndex(build.index);
  return geometry;
}
