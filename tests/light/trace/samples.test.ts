import { describe, expect, it } from 'vitest';
import type { Receiver } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import type { TraceDirection } from '../../../src/light/tracer.ts';
import { sampleIds } from '../../document/sampleFiles.ts';
import { realCanopy } from './realCanopy.ts';
import { anyDirection, stream } from './scene.ts';

/** Each crossing as one number per receiver and surface, with its share; several of one pair add a count. */
function crossings(trace: TraceDirection, toSky: Vec3, surfaces: number): Map<number, number> {
  const found = new Map<number, number>();
  trace(toSky, (receiver, surface, share) => {
    const key = receiver * surfaces + surface;
    found.set(key, (found.get(key) ?? 1) * (1 + share));
  });
  return found;
}

const draw = stream(611);
/** Straight up and down, along the axes, a hair above and below the level, and anyhow. */
const directions: Vec3[] = [
  [0, 1, 0],
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, -1],
  direction(203, 0.01),
  direction(17, -0.01),
  direction(291, 1.3),
  ...Array.from({ length: 8 }, () => anyDirection(draw)),
];

/** Nodes and leaf points, thinned to what brute force can do; the nodes as sensors that see every way. */
const thinned = (receivers: readonly Receiver[]): Receiver[] =>
  receivers.filter((_, i) => i % 5 === 3).map((r) => ({ ...r, sides: 'both' }));

describe('the two tracers on the sample trees', () => {
  it.each(sampleIds)('meet the same surfaces on every ray: %s (seed 611)', (id) => {
    const { surfaces, receivers } = realCanopy(id);
    const some = thinned(receivers);
    const [slow, fast] = [bruteForceTracer(surfaces, some), parallelBeamTracer(surfaces, some)];
    let [met, different] = [0, 0];
    for (const toSky of directions) {
      const expected = crossings(slow, toSky, surfaces.length);
      const got = crossings(fast, toSky, surfaces.length);
      for (const [key, share] of expected) {
        if (!(Math.abs((got.get(key) ?? 0) - share) < 1e-12)) different++;
      }
      for (const key of got.keys()) if (!expected.has(key)) different++;
      met += expected.size;
    }
    expect(met).toBeGreaterThan(200);
    expect(different).toBe(0);
  });
});
