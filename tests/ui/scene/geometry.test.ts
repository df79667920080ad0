import type { BufferGeometry } from 'three';
import { describe, expect, it } from 'vitest';
import { figLeafOutline } from '../../../src/species/fig/leafOutline.ts';
import { lobeTips, makeLeafGeometry, simplerOutline } from '../../../src/ui/scene/leafGeometry.ts';
import { makeWoodGeometry, type WoodLook } from '../../../src/ui/scene/woodGeometry.ts';
import { smallCanopy } from './smallCanopy.ts';

function shoelace(outline: readonly (readonly [number, number])[]): number {
  return Math.abs(
    outline.reduce((sum, [u, v], i) => {
      const [nextU, nextV] = outline[(i + 1) % outline.length] as readonly [number, number];
      return sum + (u * nextV - nextU * v) / 2;
    }, 0),
  );
}

/** Area of the triangles of the blade seen from above, each with the sign of the side it shows. */
function areaFromAbove(geometry: BufferGeometry): number {
  const [position, edge] = [geometry.getAttribute('position'), geometry.getAttribute('edge')];
  const corners = [...(geometry.index?.array ?? [])];
  let sum = 0;
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = corners.slice(i, i + 3) as [number, number, number];
    if (edge.getX(a) > 1.5) continue;
    const [abX, abZ] = [position.getX(b) - position.getX(a), position.getZ(b) - position.getZ(a)];
    const [acX, acZ] = [position.getX(c) - position.getX(a), position.getZ(c) - position.getZ(a)];
    sum += (abZ * acX - abX * acZ) / 2;
  }
  return sum;
}

describe('makeLeafGeometry', () => {
  it('fills the outline once, with its upper side up', () => {
    expect(areaFromAbove(makeLeafGeometry(figLeafOutline, true))).toBeCloseTo(shoelace(figLeafOutline), 5);
  });

  it('is flat and light on weak devices, of nearly the same area', () => {
    const plain = makeLeafGeometry(figLeafOutline, false);
    expect((plain.index?.count ?? 0) / 3).toBeLessThanOrEqual(23);
    const area = shoelace(figLeafOutline);
    expect(Math.abs(areaFromAbove(plain) - area) / area).toBeLessThan(0.05);
  });

  it('finds a vein for each of the five lobes of a fig leaf', () => {
    const tips = lobeTips(figLeafOutline).filter(([u]) => u > 0);
    expect(tips.length).toBeGreaterThanOrEqual(3);
    expect(tips).toContainEqual([1, 0]);
  });

  it('keeps the corners that make the shape', () => {
    const square = [
      [0, 0],
      [0.5, 0.001],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    expect(simplerOutline(square, 4)).toEqual([
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
    expect(simplerOutline(square, 1)).toHaveLength(3);
  });

  it('refuses an outline without area', () => {
    expect(() =>
      makeLeafGeometry(
        [
          [0, 0],
          [1, 0],
        ],
        true,
      ),
    ).toThrow('got 2');
  });
});

describe('makeWoodGeometry', () => {
  const look: WoodLook = {
    sides: 7,
    extraRadiusM: 0.004,
    roughness: 0,
    colourOf: (owner) => [owner / 10, 0.3, 0.2],
  };

  it('puts the bark at the radius of the wood, out from it, joined end to end', () => {
    const [base, upper] = smallCanopy.wood;
    if (base === undefined || upper === undefined) throw new Error('the trunk has two stretches');
    const geometry = makeWoodGeometry([base, upper], look);
    const position = geometry.getAttribute('position');
    // Three rings and a tip: the middle ring is shared.
    expect(position.count).toBe(3 * 7 + 1);
    for (let i = 0; i < 7; i++) {
      expect(Math.hypot(position.getX(i), position.getZ(i))).toBeCloseTo(0.034, 6);
      expect(position.getY(i)).toBeCloseTo(0.4, 6);
    }
    expect(geometry.getAttribute('color').getX(3)).toBeCloseTo(0.1, 6);
  });

  it('turns every face outwards', () => {
    const geometry = makeWoodGeometry(smallCanopy.wood.slice(0, 1), look);
    const position = geometry.getAttribute('position');
    const corners = [...(geometry.index?.array ?? [])];
    expect(corners).toHaveLength(7 * 9);
    for (let i = 0; i < 7 * 6; i += 3) {
      const [a, b, c] = corners
        .slice(i, i + 3)
        .map((n) => [position.getX(n), position.getY(n), position.getZ(n)]) as [number[], number[], number[]];
      const side = (p: number[], n: number): number => (p[n] as number) - (a[n] as number);
      const normalX = side(b, 1) * side(c, 2) - side(b, 2) * side(c, 1);
      const normalZ = side(b, 0) * side(c, 1) - side(b, 1) * side(c, 0);
      const out = [0, 2].map((n) => ((a[n] as number) + (b[n] as number) + (c[n] as number)) / 3);
      expect(normalX * (out[0] as number) + normalZ * (out[1] as number)).toBeGreaterThan(0);
    }
  });

  it('makes no tube of stretches without length, and none of no wood', () => {
    const point = { owner: 1, from: [0, 1, 0], to: [0, 1, 0], fromRadiusM: 0.1, toRadiusM: 0.1 } as const;
    expect(makeWoodGeometry([point], look).getAttribute('position').count).toBe(0);
    expect(makeWoodGeometry([], look).getAttribute('position').count).toBe(0);
  });
});
