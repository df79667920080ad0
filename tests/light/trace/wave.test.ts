import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import type { Wave } from '../../../src/light/ledger.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { traceWave, traceWaveSteps } from '../../../src/light/trace/wave.ts';
import { receiverCosine } from '../../../src/light/trace/waveRecord.ts';
import { waveOf } from '../cells.ts';
import { sceneOf } from './scene.ts';

const scene = sceneOf(41, { leaves: 29, stems: 14, triangles: 5, clouds: 1, openReceivers: 13 });
const input = { ...scene, directions: waveOf(41, 0), ownerCount: 9 };

/** A ray as it is told by the wave. */
function rayOf(wave: Wave, d: number, r: number) {
  const { directions, rayList, listStart, listVeil, veilOwner, veilShare, stanceCosine, receiverStance } =
    wave;
  const ray = d * wave.receiverCount + r;
  const list = rayList[ray] ?? Number.NaN;
  const veils = listVeil.subarray(listStart[list], listStart[list + 1]);
  const stances = stanceCosine.length / directions.length;
  return {
    cosine: stanceCosine[d * stances + (receiverStance[r] ?? Number.NaN)] ?? Number.NaN,
    clouds: wave.rayCloudShare?.[ray] ?? 1,
    owners: Array.from(veils, (veil) => veilOwner[veil]),
    shares: Array.from(veils, (veil) => veilShare[veil] ?? Number.NaN),
  };
}

describe('a wave', () => {
  it('holds for every ray the sorted owners, their shares, those of clouds and the cosine', () => {
    const wave = traceWave(input);
    expect(wave.receiverCount).toBe(scene.receivers.length);
    const trace = bruteForceTracer(scene.surfaces, scene.receivers);
    wave.directions.forEach(({ toSky }, d) => {
      const expected = scene.receivers.map(() => ({ clouds: 1, owners: new Map<number, number>() }));
      trace(toSky, (r, surface, share) => {
        const { owner, shape } = scene.surfaces[surface] as Surface;
        const ray = expected[r];
        if (ray === undefined) return;
        if (shape === 'cloud') ray.clouds *= share;
        else ray.owners.set(owner, (ray.owners.get(owner) ?? 1) * share);
      });
      expected.forEach(({ clouds, owners }, r) => {
        const got = rayOf(wave, d, r);
        expect(got.clouds).toBeCloseTo(clouds, 6);
        expect(got.cosine).toBeCloseTo(receiverCosine(scene.receivers[r] as Receiver, toSky), 6);
        let sorted = [...owners].toSorted((p, q) => p[0] - q[0]);
        if (owners.get(0) === 0) sorted = [[0, 0]];
        if (got.cosine === 0) sorted = [];
        expect(got.owners).toEqual(sorted.map(([owner]) => owner));
        got.shares.forEach((share, i) => {
          expect(share).toBeCloseTo(sorted[i]?.[1] ?? Number.NaN, 6);
        });
      });
    });
  });

  it('keeps every list, every veil and every stance once, and clouds only where there are some', () => {
    const wave = traceWave(input);
    const { listStart, listVeil, veilOwner, veilShare } = wave;
    const lists = Array.from({ length: listStart.length - 1 }, (_, l) =>
      listVeil.subarray(listStart[l], listStart[l + 1]).join(' '),
    );
    expect(new Set(lists).size).toBe(lists.length);
    expect(new Set(Array.from(veilOwner, (owner, v) => `${owner} ${veilShare[v]}`)).size).toBe(
      veilOwner.length,
    );
    const level = scene.receivers.map(
      (receiver): Receiver => ({ ...receiver, normal: [0, 1, 0], sides: 'one' }),
    );
    const cloudless = scene.surfaces.filter(({ shape }) => shape !== 'cloud');
    const spare = traceWave({
      ...input,
      surfaces: cloudless,
      receivers: level.map((r) => ({ ...r, onSurface: -1 })),
    });
    expect(spare.rayCloudShare).toBeNull();
    expect(spare.stanceCosine).toHaveLength(spare.directions.length);
    expect(spare.rayList.BYTES_PER_ELEMENT).toBe(spare.listStart.length > 257 ? 2 : 1);
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
