import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { add, type Vec3 } from '../../../src/geometry/vec.ts';
import { exposure } from '../../../src/light/exposure.ts';
import type { Wave } from '../../../src/light/ledger.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import { retraceWave, retraceWaveSteps } from '../../../src/light/trace/retraceWave.ts';
import { tidyWave } from '../../../src/light/trace/tidyWave.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import type { TraceDirection } from '../../../src/light/tracer.ts';
import { lightOf, waveOf } from '../cells.ts';
import { moved, movedReceiver } from './moves.ts';
import { realCanopy } from './realCanopy.ts';
import { type Draw, sceneOf, stream } from './scene.ts';

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly ownerCount: number;
}

const size = { leaves: 61, stems: 23, triangles: 5, clouds: 2, openReceivers: 19 };
const first = (seed: number): Scene => ({ ...sceneOf(seed, size), ownerCount: 9 });

const isOf = (surface: Surface | undefined, owner: number): boolean => surface?.owner === owner;

/** One owner with all that lies on it goes somewhere else. */
function withOwnerMoved({ surfaces, receivers, ownerCount }: Scene, owner: number, by: Vec3): Scene {
  const place = (v: Vec3): Vec3 => add(v, by);
  return {
    surfaces: surfaces.map((s) => (isOf(s, owner) ? moved(s, (v) => v, place) : s)),
    receivers: receivers.map((r) =>
      isOf(surfaces[r.onSurface], owner) ? movedReceiver(r, (v) => v, place) : r,
    ),
    ownerCount,
  };
}

/** Takes surfaces away, with the receivers on them. */
function without({ surfaces, receivers, ownerCount }: Scene, isGone: (i: number) => boolean): Scene {
  const place = new Int32Array(surfaces.length).fill(-1);
  const left = surfaces.filter((_, i) => !isGone(i));
  left.forEach((s, now) => {
    place[surfaces.indexOf(s)] = now;
  });
  return {
    surfaces: left,
    receivers: receivers.flatMap((r) => {
      if (r.onSurface < 0) return [r];
      const now = place[r.onSurface] as number;
      return now < 0 ? [] : [{ ...r, onSurface: now }];
    }),
    ownerCount,
  };
}

const changes: Readonly<Record<string, (scene: Scene, draw: Draw) => Scene>> = {
  'one owner moved a little': (scene) => withOwnerMoved(scene, 4, [0.03, -0.02, 0.05]),
  'one owner moved far': (scene) => withOwnerMoved(scene, 7, [1.3, 0.4, -2.1]),
  'two owners moved': (scene) => withOwnerMoved(withOwnerMoved(scene, 2, [0.1, 0, 0]), 5, [0, 0.07, -0.1]),
  'one owner gone': (scene) => without(scene, (i) => isOf(scene.surfaces[i], 3)),
  'some surfaces gone': (scene, draw) => without(scene, (i) => !isOf(scene.surfaces[i], 0) && draw() < 0.1),
  'surfaces back that were gone': (scene) => scene,
  'owners numbered anew': ({ surfaces, receivers }) => ({
    surfaces: surfaces.map((s) => ({ ...s, owner: s.owner === 0 ? 0 : 11 - s.owner })),
    receivers,
    ownerCount: 12,
  }),
  'receivers moved, come and gone': ({ receivers, ...scene }) => ({
    ...scene,
    receivers: receivers.flatMap((r, i): Receiver[] => {
      if (i % 7 === 2) return [];
      return i % 5 === 1 ? [{ ...r, point: add(r.point, [0, 0.01, 0]) }, r] : [r];
    }),
  }),
  'what is fixed moved': (scene) => withOwnerMoved(scene, 0, [0.02, 0, 0.01]),
  nothing: (scene) => ({ ...scene, surfaces: structuredClone(scene.surfaces) as Surface[] }),
};

/** Every answer is the same, to the last bit. */
function expectSameLight(got: Wave, anew: Wave, { receivers, ownerCount }: Scene): void {
  const answer = (wave: Wave) => {
    const ledger = { ownerCount, receiverCount: receivers.length, waves: [wave], seed: 0 };
    const keep = Uint8Array.from({ length: ownerCount }, (_, owner) => (owner % 3 === 1 ? 0 : 1));
    return [exposure(ledger, lightOf(0.21)), exposure(ledger, lightOf(0.21), undefined, keep)];
  };
  expect(answer(got)).toEqual(answer(anew));
}

describe('a wave brought up to date', () => {
  const cases = Object.keys(changes).flatMap((name, i) => [
    [name, 821 + 2 * i] as const,
    [name, 822 + 2 * i] as const,
  ]);
  it.each(cases)('equals one traced anew, to the last bit: %s (seed %i)', (name, seed) => {
    const draw = stream(seed);
    const whole = first(seed);
    const isBack = name === 'surfaces back that were gone';
    const before = isBack ? without(whole, (i) => i % 9 === 4 && !isOf(whole.surfaces[i], 0)) : whole;
    const after = isBack ? whole : (changes[name] as (scene: Scene, draw: Draw) => Scene)(whole, draw);
    const directions = waveOf(seed, 0);
    const wave = traceWave({ ...before, directions });
    const [got, anew] = [retraceWave({ ...after, before, wave }), traceWave({ ...after, directions })];
    expect(tidyWave(got)).toEqual(anew);
    expectSameLight(got, anew, after);
  });

  it('stays so through a long drag, and drops lists of no use from time to time (seed 851)', () => {
    const directions = waveOf(851, 1);
    let scene = first(851);
    let wave = traceWave({ ...scene, directions });
    let [drops, most] = [0, wave.listStart.length];
    for (let step = 0; step < 18; step++) {
      const after = withOwnerMoved(scene, 1 + (step % 3), [0.02, 0.011 * step, -0.03]);
      const before = wave.listStart.length;
      wave = retraceWave({ ...after, before: scene, wave });
      scene = after;
      const anew = traceWave({ ...scene, directions });
      expectSameLight(wave, anew, scene);
      most = Math.max(most, anew.listStart.length);
      // Looked for at each fifth more, and dropped when they are half of all; lists that are there twice are of use.
      expect(wave.listStart.length).toBeLessThan(4 * most);
      if (wave.listStart.length < before) drops++;
    }
    expect(drops).toBeGreaterThan(0);
    expect(tidyWave(wave)).toEqual(traceWave({ ...scene, directions }));
  });

  it('of a sample tree with one shoot moved equals one traced anew', () => {
    const { canopy, surfaces, receivers } = realCanopy('potted-fig-in-leaf');
    const before = { surfaces, receivers, ownerCount: canopy.owners.length };
    const directions = waveOf(853, 0);
    const after = withOwnerMoved(before, canopy.shoots[3]?.owner ?? Number.NaN, [0.04, 0.02, -0.03]);
    const wave = traceWave({ ...before, directions });
    const got = retraceWave({ ...after, before, wave });
    expect(tidyWave(got)).toEqual(traceWave({ ...after, directions }));
    expect(tidyWave(got)).not.toEqual(wave);
  });

  it('asks the tracer for rays of and through what moved only (seed 852)', () => {
    const before = first(852);
    const wave = traceWave({ ...before, directions: waveOf(852, 0) });
    const after = withOwnerMoved(before, 6, [0.05, 0.01, 0.02]);
    const asked: [number, number][] = [];
    const counting = (surfaces: readonly Surface[], receivers: readonly Receiver[]): TraceDirection => {
      asked.push([surfaces.length, receivers.length]);
      return parallelBeamTracer(surfaces, receivers);
    };
    retraceWave({ ...after, before, wave }, counting);
    const own = after.surfaces.filter((s) => isOf(s, 6)).length;
    const onIt = after.receivers.filter((r) => isOf(after.surfaces[r.onSurface], 6)).length;
    expect(asked).toEqual([
      [after.surfaces.length, onIt],
      [own, after.receivers.length - onIt],
    ]);
  });

  it('can be handed over in steps, and says how far it is', () => {
    const before = first(854);
    const directions = waveOf(854, 0);
    const wave = traceWave({ ...before, directions });
    const steps = retraceWaveSteps({ ...before, before, wave });
    const done: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) done.push(step.value);
    expect(done).toHaveLength(Math.ceil(directions.length / 16) - 1);
    expect(step.value).toEqual(wave);
  });

  it('refuses owners past the owner count', () => {
    const before = first(855);
    const wave = traceWave({ ...before, directions: waveOf(855, 0) });
    expect(() => retraceWave({ ...before, ownerCount: 3, before, wave })).toThrow(/must be below 3/);
  });
});
