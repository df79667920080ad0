import { describe, expect, it } from 'vitest';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { traceWave, traceWaveSteps } from '../../../src/light/trace/wave.ts';
import { waveOf } from '../cells.ts';
import { sceneOf } from './scene.ts';

const scene = sceneOf(41, { leaves: 29, stems: 14, triangles: 5, clouds: 1, openReceivers: 13 });
const input = { ...scene, directions: waveOf(41, 0), ownerCount: 9 };

describe('a wave', () => {
  it('holds for every ray the sorted owners, their shares, the fixed share and the cosine', () => {
    const wave = traceWave(input);
    expect(wave.receiverCount).toBe(scene.receivers.length);
    const trace = bruteForceTracer(scene.surfaces, scene.receivers);
    wave.directions.forEach(({ toSky }, d) => {
      const expected = scene.receivers.map(() => ({ fixed: 1, owners: new Map<number, number>() }));
      trace(toSky, (r, surface, share) => {
        const owner = scene.surfaces[surface]?.owner ?? Number.NaN;
        const ray = expected[r];
        if (ray === undefined) return;
        if (owner === 0) ray.fixed *= share;
        else ray.owners.set(owner, (ray.owners.get(owner) ?? 1) * share);
      });
      expected.forEach(({ fixed, owners }, r) => {
        const ray = d * wave.receiverCount + r;
        const [from, to] = [wave.rayList[ray] ?? 0, (wave.rayList[ray] ?? 0) + 1].map(
          (l) => wave.listStart[l],
        );
        const counts = wave.rayCosine[ray] !== 0 && fixed > 0;
        const sorted = counts ? [...owners].toSorted((p, q) => p[0] - q[0]) : [];
        expect(wave.rayFixedShare[ray]).toBeCloseTo(fixed, 6);
        expect([...wave.listOwner.subarray(from, to)]).toEqual(sorted.map(([owner]) => owner));
        wave.listShare.subarray(from, to).forEach((share, i) => {
          expect(share).toBeCloseTo(sorted[i]?.[1] ?? Number.NaN, 6);
        });
      });
    });
  });

  it('is the same traced in steps, and says how far it is', () => {
    const steps = traceWaveSteps(input);
    const done: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) done.push(step.value);
    expect(done.length).toBe(Math.ceil(input.directions.length / 16) - 1);
    expect(done).toEqual(done.toSorted((a, b) => a - b));
    expect(done.at(-1)).toBeLessThan(1);
    expect(step.value).toEqual(traceWave(input));
  });

  it('can be stopped between steps', () => {
    const steps = traceWaveSteps(input);
    steps.next();
    expect(steps.return(undefined as never).done).toBe(true);
    expect(steps.next().done).toBe(true);
  });

  it('refuses owners past the owner count', () => {
    expect(() => traceWave({ ...input, ownerCount: 3 })).toThrow(
      /^traceWave: owner of surface \d+ must be below 3/,
    );
  });
});
