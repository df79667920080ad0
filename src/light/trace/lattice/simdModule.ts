/** The lattice as WebAssembly with vectors, where that works. */
import { latticeBytes } from '../generated/latticeBytes.ts';

export interface Global {
  readonly value: number;
}

/** What `assembly/lattice.ts` exports; addresses change when it takes more memory. */
export interface SimdExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly bladeAt: Global;
  readonly bladeMaskAt: Global;
  readonly stemAt: Global;
  readonly bladeBallAt: Global;
  readonly stemBallAt: Global;
  readonly texelAt: Global;
  readonly rowStartAt: Global;
  readonly edgeAt: Global;
  readonly kindAt: Global;
  readonly fateAt: Global;
  readonly endOnAt: Global;
  readonly endOnCount: Global;
  readonly hitCount: Global;
  readonly rayAt: Global;
  readonly aheadAt: Global;
  readonly thingAt: Global;
  readonly startAt: Global;
  readonly sortedAheadAt: Global;
  readonly sortedThingAt: Global;
  readonly outAt: Global;
  readonly outRayAt: Global;
  readonly runCount: Global;
  readonly spanLeftAt: Global;
  readonly spanRightAt: Global;
  readonly followedAt: Global;
  readonly setUp: (
    blades: number,
    stems: number,
    extraBlades: number,
    extraStems: number,
    things: number,
    texels: number,
    rowStarts: number,
    edges: number,
  ) => void;
  readonly reserve: (more: number) => void;
  readonly setHitCount: (count: number) => void;
  readonly makeRayRoom: (rays: number) => void;
  readonly makeSweepRoom: (rows: number, rays: number) => void;
  readonly setPlane: (...plane: number[]) => void;
  readonly setWindow: (left: number, low: number, columns: number, rows: number) => void;
  readonly cast: (isSparse: boolean) => void;
  readonly sort: (rays: number) => void;
  readonly collect: (rays: number) => number;
}

/** The part of the platform's own that is used here; the core's types know no platform. */
declare const WebAssembly:
  | {
      readonly Module: new (bytes: Uint8Array) => object;
      readonly Instance: new (module: object) => { readonly exports: unknown };
    }
  | undefined;

const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

function fromBase64(text: string): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.replace(/=+$/, '').length * 3) / 4));
  let [bits, count, at] = [0, 0, 0];
  for (const letter of text) {
    const digit = digits.indexOf(letter);
    if (digit < 0) break;
    bits = ((bits << 6) | digit) & 0xffff;
    count += 6;
    if (count < 8) continue;
    count -= 8;
    bytes[at++] = (bits >> count) & 0xff;
  }
  return bytes;
}

let compiled: object | null | undefined;

/** The module, compiled once; null where the platform cannot. */
function compile(): object | null {
  if (compiled !== undefined) return compiled;
  try {
    compiled = typeof WebAssembly === 'undefined' ? null : new WebAssembly.Module(fromBase64(latticeBytes));
  } catch {
    // No vectors, or a policy that forbids code made from bytes.
    compiled = null;
  }
  return compiled;
}

/** A new instance with a memory of its own; null where the platform cannot. */
export function simdInstance<Exports = SimdExports>(): Exports | null {
  const module = compile();
  if (module === null || typeof WebAssembly === 'undefined') return null;
  return new WebAssembly.Instance(module).exports as Exports;
}
