import { describe, expect, it } from 'vitest';
import { cross, dot, length, sub, type Vec3 } from '../../src/geometry/vec.ts';
import { growCanopy } from '../../src/growth/growCanopy.ts';
import { canopyReceivers, canopySurfaces } from '../../src/growth/scene.ts';
import { figValues } from '../../src/species/fig.ts';
import { pottedFig } from './figTree.ts';

const canopy = growCanopy({
  tree: pottedFig(),
  stance: { foot: [0.4, 0.3, -0.7], turnedDeg: 33 },
  values: figValues({}),
  heatGdd8: 700,
  seed: 3,
  gone: new Set(['limb-3-lateral-1']),
});
const leafOptics = { transmittance: 0.06, reflectance: 0.08 };

describe('canopySurfaces', () => {
  const surfaces = canopySurfaces(canopy, leafOptics);

  it('lists the leaves first, then the wood, each with its owner', () => {
    expect(surfaces.map((s) => s.owner)).toEqual(
      [...canopy.leaves, ...canopy.wood].map((part) => part.owner),
    );
    expect(surfaces.findIndex((s) => s.shape === 'stem')).toBe(canopy.leaves.length);
  });

  it('lets light through leaves only', () => {
    for (const surface of surfaces) {
      expect(surface.optics).toEqual(
        surface.shape === 'blade' ? leafOptics : { transmittance: 0, reflectance: 0 },
      );
    }
  });
});

describe('canopyReceivers', () => {
  const receivers = canopyReceivers(canopy, { seed: 9, wave: 2 });
  const onLeaves = receivers.slice(canopy.nodes.length);

  it('lists a level sensor at every node, clear of its own leaf, then a point on every leaf', () => {
    expect(receivers).toHaveLength(canopy.nodes.length + canopy.leaves.length);
    receivers.slice(0, canopy.nodes.length).forEach((receiver, i) => {
      expect(receiver).toEqual({
        point: canopy.nodes[i]?.point,
        normal: [0, 1, 0],
        sides: 'one',
        onSurface: i,
      });
    });
    onLeaves.forEach((receiver, i) => expect(receiver).toMatchObject({ sides: 'both', onSurface: i }));
  });

  it('puts the point in the plane of its leaf', () => {
    onLeaves.forEach(({ point, normal }, i) => {
      const leaf = canopy.leaves[i];
      if (leaf === undefined) throw new Error('a leaf for each point');
      expect(length(normal)).toBeCloseTo(1, 9);
      expect(dot(sub(point, leaf.bladeFrom), normal)).toBeCloseTo(0, 12);
      expect(length(cross(normal, cross(leaf.across, leaf.along)))).toBeCloseTo(0, 9);
    });
  });

  it('takes another point for another wave and the same one for the same', () => {
    expect(canopyReceivers(canopy, { seed: 9, wave: 2 })).toEqual(receivers);
    const other = canopyReceivers(canopy, { seed: 9, wave: 3 }).slice(canopy.nodes.length);
    const moved = other.filter((r, i) => length(sub(r.point, onLeaves[i]?.point as Vec3)) > 1e-4);
    expect(moved.length).toBeGreaterThan(0.99 * other.length);
  });
});
