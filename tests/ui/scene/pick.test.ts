import { describe, expect, it } from 'vitest';
import { ownersLeft } from '../../../src/growth/owners.ts';
import { type PickOptions, type Project, pick, type Target } from '../../../src/ui/scene/pick.ts';
import { pickTargets } from '../../../src/ui/scene/targets.ts';
import { smallCanopy } from './smallCanopy.ts';

/** An eye 5 m to the south that sees 200 px a metre at the trunk, the foot of which is at 300, 400. */
const project: Project = ([x, y, z]) => {
  const depthM = 5 - z;
  return depthM <= 0 ? null : [300 + (1000 * x) / depthM, 400 - (1000 * y) / depthM, depthM];
};
const mouse = { reachPx: 8, pxPerM: (depthM: number) => 1000 / depthM };
const finger = { reachPx: 22, pxPerM: (depthM: number) => 1000 / depthM };

const idAt = (
  targets: readonly Target[],
  eye: Project,
  x: number,
  y: number,
  options: PickOptions,
): string | null => pick(targets, eye, x, y, options)?.id ?? null;

const rod = (id: string, x: number, z: number): Target => ({
  id,
  shape: 'wood',
  from: [x, 0.2, z],
  to: [x, 1.3, z],
  radiusM: 0.005,
});
const face = (id: string, z: number): Target => ({
  id,
  shape: 'face',
  node: 3,
  corners: [
    [0.1, 0.5, z],
    [0.3, 0.5, z],
    [0.2, 0.7, z],
  ],
  centre: [0.2, 0.58, z],
  reachM: 0.15,
});

describe('pick', () => {
  it('finds thin wood within reach of the pointer, wider for a finger', () => {
    const targets = [rod('thin', 0, 0)];
    expect(idAt(targets, project, 308, 250, mouse)).toBe('thin');
    expect(idAt(targets, project, 311, 250, mouse)).toBeNull();
    expect(idAt(targets, project, 311, 250, finger)).toBe('thin');
    expect(idAt(targets, project, 331, 250, finger)).toBeNull();
  });

  it('takes the wood nearest in the picture, whatever its order', () => {
    const targets = [rod('left', -0.05, 0), rod('right', 0.05, 0)];
    expect(idAt(targets, project, 303, 250, finger)).toBe('right');
    expect(idAt(targets.toReversed(), project, 303, 250, finger)).toBe('right');
    expect(idAt(targets, project, 297, 250, finger)).toBe('left');
  });

  it('takes the leaf in front of another, and a leaf before wood that is only near', () => {
    const targets = [face('behind', -0.4), face('front', 0.3), rod('near', 0.23, 0)];
    expect(idAt(targets, project, 342, 281, finger)).toBe('front');
  });

  it('takes what is hit squarely in front of a leaf', () => {
    expect(idAt([face('leaf', -0.4), rod('wood', 0.2, 0.5)], project, 344, 270, mouse)).toBe('wood');
  });

  it('sees nothing behind the eye', () => {
    expect(idAt([rod('behind', 0, 7)], project, 300, 250, finger)).toBeNull();
  });
});

describe('pickTargets', () => {
  it('lets the pointer through the leaves of a ghost, but not through its wood', () => {
    const standing = ownersLeft(smallCanopy.owners, new Set(['limb']));
    const targets = pickTargets(smallCanopy, standing, []);
    const ids = (shape: Target['shape']) =>
      new Set(targets.filter((t) => t.shape === shape).map((t) => t.id));
    expect(ids('face')).toEqual(new Set(['bud-7']));
    expect(ids('wood')).toEqual(new Set(['trunk', 'limb', 'shoot', 'bud-7']));
  });

  it('says truly how far a leaf reaches', () => {
    const standing = ownersLeft(smallCanopy.owners, new Set());
    for (const target of pickTargets(smallCanopy, standing, [])) {
      if (target.shape !== 'face') continue;
      for (const c of target.corners) {
        const away = Math.hypot(c[0] - target.centre[0], c[1] - target.centre[1], c[2] - target.centre[2]);
        expect(away).toBeLessThanOrEqual(target.reachM);
      }
    }
  });
});
