import { describe, expect, it } from 'vitest';
import type { Surface } from '../../../src/geometry/surface.ts';
import { sceneChange } from '../../../src/light/trace/change.ts';
import { sceneOf } from './scene.ts';

const size = { leaves: 11, stems: 7, triangles: 3, clouds: 3, openReceivers: 0 };
const { surfaces } = sceneOf(301, size);
const all = Array.from(surfaces.keys());
const copy = (list: readonly Surface[]): Surface[] => structuredClone(list) as Surface[];
const ownersOf = (list: readonly Surface[]): Set<number> => new Set(list.map(({ owner }) => owner));

describe('what two scenes have in common', () => {
  it('is everything for a scene and its copy', () => {
    const { surfaceBefore, ownerAfter } = sceneChange(surfaces, copy(surfaces));
    expect(Array.from(surfaceBefore)).toEqual(all);
    for (const owner of ownersOf(surfaces)) expect(ownerAfter[owner]).toBe(owner);
  });

  it('leaves out any surface of which one number changed', () => {
    for (const i of all) {
      const after = copy(surfaces);
      const one = after[i] as Surface;
      after[i] = {
        blade: () => ({ ...one, across: [0.1, 0.2, 0.3] }) as Surface,
        stem: () => ({ ...one, toRadiusM: 0.123 }) as Surface,
        mesh: () => ({ ...one, triangles: [...Array(18).keys()] }) as Surface,
        cloud: () => ({ ...one, turnedDeg: 13 }) as Surface,
      }[one.shape]();
      expect(Array.from(sceneChange(surfaces, after).surfaceBefore)).toEqual(
        all.map((k) => (k === i ? -1 : k)),
      );
      const dimmer = surfaces.map((s, k) =>
        k === i ? { ...s, optics: { ...s.optics, transmittance: 0.31 } } : s,
      );
      expect(sceneChange(surfaces, dimmer).surfaceBefore[i]).toBe(-1);
    }
  });

  it('follows surfaces past ones that came and went, and owners that were numbered anew', () => {
    const after = copy(surfaces)
      .filter((_, i) => i !== 4 && i !== 9)
      .map((s) => ({ ...s, owner: s.owner === 0 ? 0 : s.owner + 3 }));
    after.splice(2, 0, {
      ...(surfaces[5] as Surface),
      owner: 40,
      optics: { transmittance: 0, reflectance: 0 },
    });
    const { surfaceBefore, ownerAfter } = sceneChange(surfaces, after);
    expect(Array.from(surfaceBefore)).toEqual([0, 1, -1, ...all.filter((i) => i > 1 && i !== 4 && i !== 9)]);
    const stayed = new Set(Array.from(surfaceBefore).flatMap((i) => (i < 0 ? [] : [surfaces[i]?.owner])));
    ownerAfter.forEach((now, owner) => {
      expect(now).toBe(owner === 0 ? 0 : stayed.has(owner) ? owner + 3 : -1);
    });
  });

  it('keeps the order: of two surfaces that changed places one is new', () => {
    const after = copy(surfaces);
    [after[3], after[8]] = [after[8] as Surface, after[3] as Surface];
    const { surfaceBefore } = sceneChange(surfaces, after);
    const kept = Array.from(surfaceBefore).filter((i) => i >= 0);
    expect(kept).toEqual([...kept].sort((a, b) => a - b));
    expect(kept).toHaveLength(surfaces.length - 2);
  });

  it('counts a surface as new when its owner parted from the others, or became fixed', () => {
    const [first, second] = all.filter((i) => surfaces[i]?.owner === surfaces[1]?.owner) as [number, number];
    const parted = surfaces.map((s, i) => (i === second ? { ...s, owner: 55 } : s));
    expect(sceneChange(surfaces, parted).surfaceBefore[second]).toBe(-1);
    expect(sceneChange(surfaces, parted).surfaceBefore[first]).toBe(first);
    const free = surfaces.findIndex(({ owner }) => owner > 0);
    const fixed = surfaces.map((s) => (s.owner === surfaces[free]?.owner ? { ...s, owner: 0 } : s));
    expect(sceneChange(surfaces, fixed).surfaceBefore[free]).toBe(-1);
  });

  it('tells a blade from one with another outline, though it is listed twice', () => {
    const blade = surfaces[0] as Surface & { shape: 'blade' };
    const before = [blade, blade];
    const after: Surface[] = [
      blade,
      {
        ...blade,
        outline: [
          [0, 0],
          [1, 0],
          [0, 1],
        ],
      },
      copy([blade])[0] as Surface,
    ];
    expect(Array.from(sceneChange(before, after).surfaceBefore)).toEqual([0, -1, 1]);
    expect(Array.from(sceneChange([], after).surfaceBefore)).toEqual([-1, -1, -1]);
  });
});
