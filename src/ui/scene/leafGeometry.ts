/** One leaf of midrib 1 for all instances: x along the midrib, y out of the upper side, z to the right. */
import { BufferGeometry, Float32BufferAttribute } from 'three';

type Outline = readonly (readonly [number, number])[];
type Corner = readonly [u: number, v: number];

/** How far the blade stands out of its plane, for looks alone: light is reckoned on flat blades. */
const foldSlope = 0.22;
const tipDroop = 0.16;
/** Veins lie this far above the blade, in midribs. */
const veinLift = 0.012;
/** Corners of the outline on weak devices. */
const plainCorners = 21;

const heightAt = (u: number, v: number, shaped: boolean): number =>
  shaped ? foldSlope * Math.abs(v) * (1 - 0.55 * Math.abs(v)) - tipDroop * (u * u + 0.8 * v * v) : 0;

/** Corners of the outline farthest from the petiole among their neighbours: where the veins of the lobes end. */
export function lobeTips(outline: Outline): Corner[] {
  const n = outline.length;
  const reach = outline.map(([u, v]) => Math.hypot(u, v));
  return outline.filter((_, i) => {
    const here = reach[i] as number;
    const [before, after] = [reach[(i + n - 1) % n] as number, reach[(i + 1) % n] as number];
    return here > 0.35 && here > before && here >= after;
  });
}

interface Build {
  readonly positions: number[];
  /** Per corner: how near the edge of the blade, 0 at the petiole to 1; 2 on a vein. */
  readonly edges: number[];
  readonly index: number[];
}

/** Rings of corners from the petiole to the edge: more of them let the blade bend. */
function addBlade(build: Build, outline: Outline, shaped: boolean): void {
  const n = outline.length;
  const rings = shaped ? [0.55, 1] : [1];
  build.positions.push(0, 0, 0);
  build.edges.push(0);
  rings.forEach((t, ring) => {
    for (const [u, v] of outline) {
      build.positions.push(u * t, heightAt(u * t, v * t, shaped), v * t);
      build.edges.push(t);
    }
    const outer = 1 + ring * n;
    for (let i = 0; i < n; i++) {
      const next = (i + 1) % n;
      // Right round as seen from above, so that the upper side is the front.
      if (ring === 0) build.index.push(0, outer + next, outer + i);
      else {
        const inner = outer - n;
        build.index.push(inner + i, outer + next, outer + i, inner + i, inner + next, outer + next);
      }
    }
  });
}

/** Leaves out the corners whose loss changes the shape least (Visvalingam and Whyatt 1993), down to `count`. */
export function simplerOutline(outline: Outline, count: number): Outline {
  const kept = [...outline];
  while (kept.length > Math.max(3, count)) {
    const n = kept.length;
    const lossAt = (i: number): number => {
      const [a, b, c] = [kept[(i + n - 1) % n], kept[i], kept[(i + 1) % n]] as [Corner, Corner, Corner];
      return Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
    };
    let least = 0;
    for (let i = 1; i < n; i++) if (lossAt(i) < lossAt(least)) least = i;
    kept.splice(least, 1);
  }
  return kept;
}

function addVein(build: Build, [u, v]: Corner, shaped: boolean): void {
  const first = build.positions.length / 3;
  const reach = Math.hypot(u, v);
  const [acrossU, acrossV] = [-v / reach, u / reach];
  const steps = shaped ? 3 : 1;
  for (let i = 0; i <= steps; i++) {
    const t = (0.94 * i) / steps;
    const halfWidth = 0.013 * (1 - 0.75 * t);
    for (const side of [1, -1]) {
      const [x, z] = [u * t + acrossU * halfWidth * side, v * t + acrossV * halfWidth * side];
      build.positions.push(x, heightAt(u * t, v * t, shaped) + veinLift, z);
      build.edges.push(2);
    }
  }
  for (let i = 0; i < steps; i++) {
    const [right, left] = [first + 2 * i, first + 2 * i + 1];
    build.index.push(right, left, right + 2, left, left + 2, right + 2);
  }
}

/**
 * @param outline closed polygon [along, across], petiole at the origin, from where all of its edge can be seen
 * @param shaped true folds the blade at the midrib, lets its edge droop and draws a vein to each lobe;
 *   false leaves it flat, with the midrib alone
 * @returns attributes position, normal and `edge` (0 at the petiole to 1 at the edge, 2 on veins)
 */
export function makeLeafGeometry(outline: Outline, shaped: boolean): BufferGeometry {
  if (outline.length < 3)
    throw new Error(`makeLeafGeometry: an outline has three corners or more, got ${outline.length}`);
  const build: Build = { positions: [], edges: [], index: [] };
  addBlade(build, shaped ? outline : simplerOutline(outline, plainCorners), shaped);
  const tips = shaped ? lobeTips(outline) : [[1, 0] as const];
  for (const tip of tips) addVein(build, tip, shaped);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(build.positions, 3));
  geometry.setAttribute('edge', new Float32BufferAttribute(build.edges, 1));
  geometry.setIndex(build.index);
  geometry.computeVertexNormals();
  return geometry;
}
