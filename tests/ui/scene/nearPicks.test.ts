import { readFileSync } from 'node:fs';
import { OrthographicCamera } from 'three';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import { random01, randomNormal } from '../../../src/geometry/random.ts';
import { ownersLeft } from '../../../src/growth/owners.ts';
import { dormantBuds } from '../../../src/ui/scene/dormantBuds.ts';
import { flatFraming, viewDirection } from '../../../src/ui/scene/framing.ts';
import { pickNear, spreadPx } from '../../../src/ui/scene/nearPicks.ts';
import { type PickOptions, pick, pickerOf, type Target, targetsNear } from '../../../src/ui/scene/pick.ts';
import { stageEyeOf } from '../../../src/ui/scene/stageEye.ts';
import type { StageEye } from '../../../src/ui/scene/stageModel.ts';
import { pickTargets } from '../../../src/ui/scene/targets.ts';
import { drawnCanopy } from '../../../src/ui/stage/drawnCanopy.ts';

const seed = 20270502;
/** 500 taps at a hundred places each, on a machine that does other things too, milliseconds. */
const patienceMs = 120_000;
/** The stage of a phone, the sheet half up. */
const size = { width: 390, height: 404 };

/** A sample as a phone shows it when it is opened, and what can be pressed there. */
function phoneOf(sample: string): { eye: StageEye; targets: readonly Target[]; options: PickOptions } {
  const read = parseTreeFile(readFileSync(`public/examples/${sample}.json`, 'utf8'));
  if (!read.ok) throw new Error(read.reason);
  const canopy = drawnCanopy(read.file, 'as sketched');
  const standing = ownersLeft(canopy.owners, new Set());
  const points = [
    ...canopy.wood.flatMap(({ from, to }) => [from, to]),
    ...canopy.leaves.map(({ bladeFrom }) => bladeFrom),
  ];
  const framing = flatFraming(points, viewDirection('south', 0), size, { above: 60, below: 60 });
  const camera = new OrthographicCamera(-195, 195, 202, -202, 0.05, 200);
  camera.zoom = framing.pxPerM;
  camera.updateProjectionMatrix();
  camera.position.set(...framing.eye);
  camera.lookAt(...framing.target);
  camera.updateMatrixWorld();
  const eye = stageEyeOf(camera, size);
  if (eye === null) throw new Error('phoneOf: the camera is no eye');
  const options = { reachPx: 22, pxPerM: eye.pxPerM };
  return { eye, targets: pickTargets(canopy, standing, dormantBuds(read.file, canopy)), options };
}

describe('a press by a finger', () => {
  it.each(['potted-fig-in-leaf', 'potted-fig-bud-break', 'old-fig-in-ground', 'young-whip'])(
    `that scatters by 6 pixels finds what was meant in 98 of 100, or offers it, in %s, seed ${seed}`,
    (sample) => {
      const { eye, targets, options } = phoneOf(sample);
      let [taps, good] = [0, 0];
      for (let n = 0; taps < 500; n++) {
        const aimed = targets[Math.floor(targets.length * random01(seed, n, 1))] as Target;
        const [x, y] = eye.project(aimed.shape === 'face' ? aimed.centre : aimed.from) ?? [-1, -1];
        // What is seen at the very pixel that is aimed at.
        const close = targetsNear(targets, eye.project, x, y, options, 2 * spreadPx);
        const meant = pick(close, eye.project, x, y, { ...options, reachPx: 2 });
        if (meant === null) continue;
        taps += 1;
        const pickAt = pickerOf(close, eye.project, options);
        const [offX, offY] = [6 * randomNormal(seed, n, 3), 6 * randomNormal(seed, n, 4)];
        const { target, among } = pickNear(pickAt, x + offX, y + offY, 'touch');
        if (target?.id === meant.id || among.includes(meant.id)) good += 1;
      }
      expect(good / taps).toBeGreaterThanOrEqual(0.98);
    },
    patienceMs,
  );
});

const wood = (id: string): Target => ({ id, shape: 'wood', from: [0, 0, 0], to: [0, 1, 0], radiusM: 0.01 });

describe('what a press may have meant', () => {
  /** Wood to the left of 100, other wood to the right, nothing past 150. */
  const twoLimbs = (x: number): Target | null => (x < 100 ? wood('left') : x < 150 ? wood('right') : null);

  it('is plain in the midst of one branch, whatever presses', () => {
    for (const kind of ['touch', 'mouse', 'pen'] as const) {
      expect(pickNear(twoLimbs, 70, 50, kind)).toMatchObject({ target: { id: 'left' }, among: [] });
    }
  });

  it('is told for a finger near another branch, the one that it took first', () => {
    expect(pickNear(twoLimbs, 96, 50, 'touch').among).toEqual(['left', 'right']);
    expect(pickNear(twoLimbs, 103, 50, 'touch').among).toEqual(['right', 'left']);
  });

  it('is told for a mouse only on the line between two thin branches', () => {
    expect(pickNear(twoLimbs, 96, 50, 'mouse').among).toEqual([]);
    expect(pickNear(twoLimbs, 98.5, 50, 'mouse').among).toEqual(['left', 'right']);
  });

  it('offers what a finger just missed, without taking it', () => {
    expect(pickNear(twoLimbs, 157, 50, 'touch')).toMatchObject({ target: null, among: ['right'] });
    expect(pickNear(twoLimbs, 190, 50, 'touch')).toMatchObject({ target: null, among: [] });
  });

  it('is looked for among the targets near it alone, with the same answer', () => {
    const { eye, targets, options } = phoneOf('potted-fig-in-leaf');
    for (let n = 0; n < 200; n++) {
      const [x, y] = [size.width * random01(seed, n, 5), size.height * random01(seed, n, 6)];
      const near = targetsNear(targets, eye.project, x, y, options, spreadPx);
      const [dx, dy] = [12 * random01(seed, n, 7), 12 * random01(seed, n, 8)];
      const answer = (all: readonly Target[]) => pick(all, eye.project, x + dx, y + dy, options);
      expect(answer(near)).toBe(answer(targets));
      expect(pickerOf(near, eye.project, options)(x + dx, y + dy)).toBe(answer(targets));
    }
  });
});
