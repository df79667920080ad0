/** Blades and stems of the point grid by WebAssembly with vectors: `assembly/pointGrid.ts`, the twin of `blades.ts` and `stems.ts`. */
import type { Blade, Stem, Surface } from '../../geometry/surface.ts';
import { distance } from '../../geometry/vec.ts';
import { bladeStride, preparedBlades } from './blades.ts';
import { Balls, ballsOfParallelograms } from './lattice/balls.ts';
import { makeMaskTable } from './lattice/masks.ts';
import { simdInstance } from './lattice/simdModule.ts';
import type { BeamFrame, Cover, ReceiverGrid } from './receiverGrid.ts';
import { isShadedEndOn, stemsOf } from './stems.ts';

interface Global {
  readonly value: number;
}

/** What `assembly/pointGrid.ts` exports; addresses of met pairs and cells change when it takes more memory. */
interface GridExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly gridBladeAt: Global;
  readonly gridBladeMaskAt: Global;
  readonly gridBladeSurfaceAt: Global;
  readonly gridStemAt: Global;
  readonly gridStemSurfaceAt: Global;
  readonly gridBladeBallAt: Global;
  readonly gridStemBallAt: Global;
  readonly gridTexelAt: Global;
  readonly gridRowStartAt: Global;
  readonly gridEdgeAt: Global;
  readonly gridRightAt: Global;
  readonly gridTopAt: Global;
  readonly gridAheadAt: Global;
  readonly gridOnSurfaceAt: Global;
  readonly gridStartAt: Global;
  readonly gridMetAt: Global;
  readonly setUpGrid: (
    blades: number,
    stems: number,
    receivers: number,
    texels: number,
    rowStarts: number,
    edges: number,
  ) => void;
  readonly makeCellRoom: (cells: number) => void;
  readonly coverGrid: (...frameAndGrid: number[]) => number;
}

function ballsOfStems(stems: readonly { readonly stem: Stem }[]): Float32Array {
  const balls = new Balls(stems.length);
  stems.forEach(({ stem: { from, to, fromRadiusM, toRadiusM } }, n) => {
    const middle = (k: 0 | 1 | 2): number => (from[k] + to[k]) / 2;
    balls.put(n, middle(0), middle(1), middle(2), distance(from, to) / 2 + Math.max(fromRadiusM, toRadiusM));
  });
  return balls.numbers;
}

function load(kernel: GridExports, surfaces: readonly Surface[], receiverCount: number) {
  const blades = preparedBlades(surfaces);
  const masks = makeMaskTable();
  const maskOf = blades.surfaces.map((surface) => masks.maskOf((surfaces[surface] as Blade).outline));
  const { texel, rowStart, edge } = masks.arrays();
  const stems = stemsOf(surfaces);
  const count = blades.numbers.length / bladeStride;
  kernel.setUpGrid(count, stems.length, receiverCount, texel.length, rowStart.length, edge.length / 4);
  const { buffer } = kernel.memory;
  new Float64Array(buffer, kernel.gridBladeAt.value).set(blades.numbers);
  new Int32Array(buffer, kernel.gridBladeMaskAt.value).set(maskOf);
  new Int32Array(buffer, kernel.gridBladeSurfaceAt.value).set(blades.surfaces);
  const ends = stems.map(({ stem }) => [...stem.from, ...stem.to, stem.fromRadiusM, stem.toRadiusM]);
  new Float64Array(buffer, kernel.gridStemAt.value).set(ends.flat());
  new Int32Array(buffer, kernel.gridStemSurfaceAt.value).set(stems.map(({ surface }) => surface));
  new Float32Array(buffer, kernel.gridBladeBallAt.value).set(
    ballsOfParallelograms(blades.numbers, count, bladeStride),
  );
  new Float32Array(buffer, kernel.gridStemBallAt.value).set(ballsOfStems(stems));
  new Uint8Array(buffer, kernel.gridTexelAt.value).set(texel);
  new Int32Array(buffer, kernel.gridRowStartAt.value).set(rowStart);
  new Float64Array(buffer, kernel.gridEdgeAt.value).set(edge);
  return { blades, stems };
}

function setGrid(kernel: GridExports, grid: ReceiverGrid): void {
  const { count, columns, rows, right, top, ahead, onSurface, start } = grid;
  kernel.makeCellRoom(columns * rows);
  const { buffer } = kernel.memory;
  new Float64Array(buffer, kernel.gridRightAt.value).set(right.subarray(0, count));
  new Float64Array(buffer, kernel.gridTopAt.value).set(top.subarray(0, count));
  new Float64Array(buffer, kernel.gridAheadAt.value).set(ahead.subarray(0, count));
  new Int32Array(buffer, kernel.gridOnSurfaceAt.value).set(onSurface.subarray(0, count));
  new Int32Array(buffer, kernel.gridStartAt.value).set(start.subarray(0, columns * rows + 1));
}

function coverAll(kernel: GridExports, { right, top, ahead }: BeamFrame, grid: ReceiverGrid): Int32Array {
  setGrid(kernel, grid);
  const { minRight, minTop, cellsPerM, columns, rows, count } = grid;
  const place = [minRight, minTop, cellsPerM, columns, rows, count];
  const met = kernel.coverGrid(...right, ...top, ...ahead, ...place);
  return new Int32Array(kernel.memory.buffer, kernel.gridMetAt.value, 2 * met);
}

/** Fewer things are not worth handing over. */
const worthwhile = 16;

/**
 * As `prepareBlades` and then `prepareStems`, by WebAssembly: the same crossings in the same order. Asks only things that may reach a
 * receiver, whatever it is told. Null where the platform cannot, or there is little to be asked.
 */
export function fastestSolids(surfaces: readonly Surface[], receiverCount: number): Cover | null {
  const count = surfaces.reduce((sum, { shape }) => sum + (shape === 'blade' || shape === 'stem' ? 1 : 0), 0);
  const kernel = count < worthwhile || receiverCount === 0 ? null : simdInstance<GridExports>();
  if (kernel === null) return null;
  const { blades, stems } = load(kernel, surfaces, receiverCount);
  return (frame, grid, _, crossing) => {
    const met = coverAll(kernel, frame, grid);
    for (let m = 0; m < met.length; m += 2) {
      const [k, thing] = [met[m] as number, met[m + 1] as number];
      const receiver = grid.receiver[k] as number;
      const number = thing < 0 ? ~thing : thing;
      if (number < blades.surfaces.length) {
        crossing(receiver, blades.surfaces[number] as number, blades.passedShares[number] as number);
        continue;
      }
      const { stem, surface } = stems[number - blades.surfaces.length] as (typeof stems)[number];
      if (thing < 0 && !isShadedEndOn(stem, grid, k, frame)) continue;
      crossing(receiver, surface, stem.optics.transmittance);
    }
  };
}
