/** View factors, by our code. */
import type { Receiver } from '../../../src/geometry/surface.ts';
import { rad } from '../../../src/geometry/world.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };
import { disc, field, level, longWall, meanView, rim, sheet, viewFactorFrom, viewOf } from './scenes.ts';

/** Two equal rectangles a x b face to face at distance c. */
const plates = (a: number, b: number, c: number): number =>
  viewFactorFrom(field(a, b, 20), [sheet([0, c, 0], [a, c, 0], [a, c, b], [0, c, b])], {
    subdivision: 6,
    waves: 4,
  });

const tilted = (tiltDeg: number): Receiver => ({
  ...level([0, 0, 0]),
  normal: [Math.sin(rad(tiltDeg)) * 0.8, Math.cos(rad(tiltDeg)), Math.sin(rad(tiltDeg)) * 0.6],
});

export const viewfactors: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'vf.plates': () => plates(1, 1.5, 0.5),
    'vf.plates.unit': () => plates(1, 1, 1),
    'vf.plates.12': () => plates(1, 2, 1),
    'vf.patch.disk': () => [0.5, 1, 2].map((h) => 1 - viewOf([disc([0, h, 0], 1)])),
    'vf.wall': () => [30, 45, 60].map((a) => viewOf([longWall(1, Math.tan(rad(a)), 0.7)])),
    'vf.canyon.mid': () =>
      [0.5, 1, 2].map((h) => viewOf([longWall(0.5, h, 0.4), longWall(0.5, h, 0.4 + Math.PI)])),
    'vf.basin': () =>
      [30, 45, 60].map((a) =>
        meanView([rim(Math.tan(rad(a)))], [level([0, 0, 0])], { subdivision: 6, waves: 2 }),
      ),
    'vf.slope': () => [0, 45, 90, 135, 180].map((t) => viewOf([], tilted(t))),
  },
};
