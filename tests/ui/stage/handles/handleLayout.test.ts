import * as fc from 'fast-check';
import { OrthographicCamera } from 'three';
import { describe, expect, it } from 'vitest';
import { aroundParentDeg } from '../../../../src/editor/edits/turnRound.ts';
import { type HandlePlaces, handlePlaces } from '../../../../src/editor/pull/handlePlaces.ts';
import { pull } from '../../../../src/editor/pull/pull.ts';
import { add, type Vec3 } from '../../../../src/geometry/vec.ts';
import { turnDeg } from '../../../../src/geometry/world.ts';
import { flatFraming, flatSides, viewDirection } from '../../../../src/ui/scene/framing.ts';
import { stageEyeOf } from '../../../../src/ui/scene/stageEye.ts';
import type { StageEye } from '../../../../src/ui/scene/stageModel.ts';
import {
  awayFrom,
  type Handle,
  handlesOf,
  holdsOf,
  pullBy,
  pullByKeys,
  reaches,
  roomIn,
} from '../../../../src/ui/stage/handles/handleLayout.ts';
import { labelPlace } from '../../../../src/ui/stage/handles/labelPlace.ts';
import { smallTree } from '../../../editor/smallTree.ts';

const seed = 20270509;
const phone = { width: 390, height: 404 };
const laptop = { width: 961, height: 900 };

function eyeFrom(side: (typeof flatSides)[number], size: { width: number; height: number }): StageEye {
  const points: Vec3[] = [
    [-0.6, 0, -0.5],
    [0.7, 1.7, 0.6],
  ];
  const { eye, target, pxPerM } = flatFraming(points, viewDirection(side, 0), size, { above: 57, below: 71 });
  const { width, height } = size;
  const camera = new OrthographicCamera(-width / 2, width / 2, height / 2, -height / 2, 0.05, 200);
  camera.zoom = pxPerM;
  camera.updateProjectionMatrix();
  camera.position.set(...eye);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return stageEyeOf(camera, size) as StageEye;
}

const placesOf = (id: string): HandlePlaces => handlePlaces(smallTree, id) as HandlePlaces;
const handle = (handles: readonly Handle[], key: string): Handle =>
  handles.find((one) => one.key === key) as Handle;
const axis = (file: typeof smallTree, id: string) => {
  const found = file.axes.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};
const none = new Set<never>();

describe('handles', () => {
  it('of a limb are its tip, base, bends, thickness and the ring round its parent; the trunk has no base and no ring', () => {
    const eye = eyeFrom('south', laptop);
    const keys = (id: string) => handlesOf(placesOf(id), eye).map(({ key }) => key);
    expect(keys('east')).toEqual(['tip-0', 'base-0', 'bend-0', 'thickness-0', 'round-0']);
    expect(keys('trunk')).toEqual(['tip-0', 'bend-0', 'thickness-0']);
  });

  it.each(flatSides)('lie on what they move, seen from %s', (side) => {
    const eye = eyeFrom(side, laptop);
    const places = placesOf('east');
    const tip = eye.project(places.tip);
    expect(handle(handlesOf(places, eye), 'tip-0').at).toEqual([tip?.[0], tip?.[1]]);
  });
});

describe('holds', () => {
  it(`never lie over each other or under the tools, wherever the branch is (seed ${seed})`, () => {
    const px = fc.tuple(fc.integer({ min: 0, max: 390 }), fc.integer({ min: 0, max: 404 }));
    const room = roomIn(phone);
    const tool = { left: 290, top: 180, right: 390, bottom: 320 };
    let told = 0;
    fc.assert(
      fc.property(fc.array(px, { minLength: 7, maxLength: 7 }), (ats) => {
        const kinds = ['tip', 'base', 'bend', 'thickness', 'round', 'bend', 'bend'] as const;
        const handles = ats.map((at, i): Handle => {
          const kind = kinds[i] ?? 'bend';
          return { key: `${kind}-${i}`, kind, nth: i, at, from: at, radiusM: 0.1 };
        });
        const holds = holdsOf(handles, room, reaches.touch, [tool]);
        const centres = handles.flatMap(({ key, at }) => {
          const off = holds.get(key);
          return off === undefined ? [] : [[at[0] + off[0], at[1] + off[1]] as const];
        });
        told += centres.length;
        for (const [i, [x, y]] of centres.entries()) {
          expect(x).toBeGreaterThan(room.left + 22);
          expect(y).toBeLessThan(room.bottom - 22);
          expect(awayFrom(tool, [x, y])).toBeGreaterThanOrEqual(22);
          for (const [otherX, otherY] of centres.slice(i + 1))
            expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThanOrEqual(44);
        }
      }),
      { seed, numRuns: 200 },
    );
    expect(told).toBeGreaterThan(500);
  });

  it('leave the tip itself free of the finger, and put a mouse on it', () => {
    const handles = handlesOf(placesOf('east'), eyeFrom('south', phone));
    const [dx, dy] = holdsOf(handles, roomIn(phone), reaches.touch, []).get('tip-0') as readonly [
      number,
      number,
    ];
    expect(Math.hypot(dx, dy)).toBeGreaterThan(22);
    const onMouse = holdsOf(handles, roomIn(laptop), reaches.fine, []).get('tip-0') ?? [Number.NaN, 0];
    expect(Math.hypot(...onMouse)).toBe(0);
  });
});

describe('a pull by a handle', () => {
  const eye = eyeFrom('south', laptop);
  const handles = handlesOf(placesOf('east'), eye);

  it('brings the tip as many pixels as the hand went', () => {
    const tip = handle(handles, 'tip-0');
    const edited = pull(smallTree, 'east', pullBy(tip, eye, 41, -67), none);
    if (!edited.ok) throw new Error(edited.reason);
    const after = handle(handlesOf(handlePlaces(edited.file, 'east') as HandlePlaces, eye), 'tip-0');
    expect(after.at[0]).toBeCloseTo(tip.at[0] + 41, 1);
    expect(after.at[1]).toBeCloseTo(tip.at[1] - 67, 1);
  });

  it('is nothing when the hand has not moved', () => {
    for (const one of handles) {
      const edited = pull(smallTree, 'east', pullBy(one, eye, 0, 0), none);
      if (!edited.ok) throw new Error(edited.reason);
      const [before, after] = [placesOf('east'), handlePlaces(edited.file, 'east') as HandlePlaces];
      for (const i of [0, 1, 2] as const) {
        expect(after.tip[i]).toBeCloseTo(before.tip[i], 1);
        expect(after.base[i]).toBeCloseTo(before.base[i], 3);
      }
    }
  });

  it('turns the branch round its parent as the ring is turned', () => {
    const above = eyeFrom('above', laptop);
    const places = placesOf('east');
    const ring = handle(handlesOf(places, above), 'round-0');
    const quarter = [ring.from[1] - ring.at[1], ring.at[0] - ring.from[0]] as const;
    const [dx, dy] = [ring.from[0] + quarter[0] - ring.at[0], ring.from[1] + quarter[1] - ring.at[1]];
    const edited = pull(smallTree, 'east', pullBy(ring, above, dx, dy), none);
    if (!edited.ok) throw new Error(edited.reason);
    const before = aroundParentDeg(smallTree, axis(smallTree, 'east')) as number;
    const after = aroundParentDeg(edited.file, axis(edited.file, 'east')) as number;
    expect(Math.abs(Math.abs(turnDeg(before, after)) - 90)).toBeLessThan(3);
  });

  it('makes the wood thicker outward and thinner inward', () => {
    const thick = handle(handles, 'thickness-0');
    const out = [thick.at[0] - thick.from[0], thick.at[1] - thick.from[1]] as const;
    const times = (share: number) => {
      const how = pullBy(thick, eye, share * out[0], share * out[1]);
      return how.by === 'thickness' ? how.times : Number.NaN;
    };
    expect(times(1)).toBeGreaterThan(1.1);
    expect(times(-1)).toBeCloseTo(1 / times(1), 9);
  });

  it('by keys goes a centimetre, five degrees, a tenth or ten pixels, with Shift a tenth of that', () => {
    expect(pullByKeys(handle(handles, 'base-0'), eye, 0, 1)).toEqual({ by: 'slide', alongM: 0.01 });
    expect(pullByKeys(handle(handles, 'round-0'), eye, -0.1, 0)).toEqual({ by: 'turn', aroundDeg: -0.5 });
    expect(pullByKeys(handle(handles, 'thickness-0'), eye, 0, 2)).toEqual({
      by: 'thickness',
      times: 1.1 ** 2,
    });
    const tip = handle(handles, 'tip-0');
    expect(pullByKeys(tip, eye, 1, 1)).toEqual(pullBy(tip, eye, 10, -10));
  });
});

describe('the label', () => {
  it(`stays inside the room and off the branch and the fingers where there is room for that (seed ${seed})`, () => {
    const room = roomIn(laptop);
    const label = { width: 262, height: 44 };
    const x = fc.integer({ min: 60, max: 900 });
    const y = fc.integer({ min: 90, max: 800 });
    fc.assert(
      fc.property(fc.tuple(x, y), fc.tuple(x, y), (base, tip) => {
        const [left, top] = labelPlace(base, tip, label, room, [tip, base], []);
        expect(left).toBeGreaterThanOrEqual(room.left);
        expect(top).toBeGreaterThanOrEqual(room.top);
        expect(left + label.width).toBeLessThanOrEqual(room.right);
        expect(top + label.height).toBeLessThanOrEqual(room.bottom);
        const isOver =
          tip[0] > left && tip[0] < left + label.width && tip[1] > top && tip[1] < top + label.height;
        expect(isOver).toBe(false);
      }),
      { seed, numRuns: 200 },
    );
  });
});

describe('places of handles', () => {
  it('follow the tree when it stands elsewhere', () => {
    const moved = { ...smallTree, standing: { ...smallTree.standing, at: [1.3, 0.7] as [number, number] } };
    const [here, there] = [placesOf('east').tip, (handlePlaces(moved, 'east') as HandlePlaces).tip];
    for (const i of [0, 1, 2] as const) expect(there[i]).toBeCloseTo(add(here, [1.3, 0, -0.7])[i], 12);
  });
});
