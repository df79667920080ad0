/** Ticks by WebAssembly: `assembly/ticks.ts`, the twin of `tickedRuns.ts`. */
import { gainPerHit, type MakeTickedRuns, plainTickedRuns } from './tickedRuns.ts';
import { type Global, simdInstance } from './trace/lattice/simdModule.ts';

/** What `assembly/ticks.ts` exports; all memory is taken at once, so that addresses and views stay good. */
interface TickExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly tickKindAt: Global;
  readonly tickCodeAt: Global;
  readonly tickRowAt: Global;
  readonly tickEndAt: Global;
  readonly tickPassedAt: Global;
  readonly setUpTicks: (kinds: number, hits: number, stretches: number, entries: number) => void;
  readonly changeStretches: (first: number, last: number, from: number) => void;
}

/** Numbers of a kind, 8 bytes each. */
const kindStride = 4;
/** Of hits and of the matrix; a module addresses 4 GB. */
const mostBytes = 2 ** 30;

/** By WebAssembly where the platform has it, there are no clouds and kinds are few; the same numbers either way. */
export const fastestTickedRuns: MakeTickedRuns = (wave, runs, passedBefore) => {
  const { code, share, end, row, stretchStart } = runs;
  const isSmall = code.byteLength < mostBytes && passedBefore.byteLength < mostBytes;
  const fits = isSmall && share === null && code instanceof Int16Array;
  const kernel = fits ? simdInstance<TickExports>() : null;
  if (kernel === null) return plainTickedRuns(wave, runs, passedBefore);
  const { kindGroup, groupCount } = wave;
  kernel.setUpTicks(kindGroup.length, code.length, row.length, passedBefore.length);
  const { buffer } = kernel.memory;
  new Int16Array(buffer, kernel.tickCodeAt.value).set(code);
  new Int32Array(buffer, kernel.tickRowAt.value).set(row.map((its) => 8 * groupCount * its));
  new Int32Array(buffer, kernel.tickEndAt.value).set(end);
  const passed = new Float64Array(buffer, kernel.tickPassedAt.value, passedBefore.length);
  passed.set(passedBefore);
  const kinds = new Float64Array(buffer, kernel.tickKindAt.value, kindStride * kindGroup.length);
  gainPerHit(wave).forEach((gain, kind) => {
    kinds[kindStride * kind + 2] = gain;
  });
  const places = new Int32Array(buffer, kernel.tickKindAt.value);
  kindGroup.forEach((group, kind) => {
    places[2 * kindStride * kind + 6] = 8 * Math.max(0, group);
  });
  const firstHit = stretchStart.map((first) => end[first - 1] ?? 0);
  return {
    passed,
    change: (owner, before, now) => {
      for (let kind = 0; kind < before.length; kind++) {
        kinds[kindStride * kind] = before[kind] as number;
        kinds[kindStride * kind + 1] = now[kind] as number;
      }
      const [first, last] = [stretchStart[owner] as number, stretchStart[owner + 1] as number];
      kernel.changeStretches(first, last, firstHit[owner] as number);
    },
  };
};
