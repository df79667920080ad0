/** A plan made by hand, for tests of its words. */
import type { Cut } from '../../src/plan/cut.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { noSearch } from '../../src/plan/searchRecord.ts';

const bud: Cut = {
  id: 'rub-off-bud.east-2-b3',
  kind: 'rub off bud',
  target: 'east-2-b3',
  atM: 0,
  place: {
    piece: null,
    branch: 'East limb, lateral 2',
    branchSide: 'east',
    fromForkM: 0.343,
    forksFrom: 'East limb',
    heightM: 0.917,
    face: 'upper side',
    bearingDeg: 97.3,
  },
  reasons: [
    {
      rule: 'crowding',
      ownShare: 0.113,
      figsIfKept: 0.4,
      figsForOthers: 1.36,
      figsByShade: 0.9,
      figsWanted: 0.25,
    },
  ],
  when: { from: '2027-04-08', to: '2027-05-02' },
  gain: {
    figs: 0.93,
    fruitingWoodM: 0.213,
    lights: [{ id: 'east-2-b2', name: 'Shoot 2 on East limb, lateral 2', shareGain: 0.087 }],
  },
  ifKept: {
    figs: -0.93,
    fallBelow: [
      {
        id: 'east-2-b2',
        name: 'Shoot 2 on East limb, lateral 2',
        share: 0.31,
        shareIfKept: 0.223,
        figsLost: 0.62,
      },
    ],
  },
  pass: 1,
  standsIn: {
    worlds: 32,
    stands: 31,
    rival: { target: 'e-bud-4', branch: 'East limb', atM: 0.412, stands: 18 },
  },
  cautions: ['estimate', 'sap'],
};

const dead: Cut = {
  id: 'remove.spur',
  kind: 'remove',
  target: 'spur',
  atM: 0,
  place: { ...bud.place, piece: 'Old spur', branch: 'East limb', forksFrom: 'Trunk', heightM: 2.31 },
  reasons: [{ rule: 'dead' }],
  when: { from: '2027-04-08', to: '2027-09-30' },
  gain: { figs: -0.04, fruitingWoodM: 0, lights: [] },
  ifKept: { figs: 0.04, fallBelow: [] },
  pass: null,
  standsIn: null,
  cautions: ['estimate', 'sap', 'ladder'],
};

const doNothing = {
  ripeFigs: 11.83,
  figsSet: 19.4,
  firstCropFigs: 2.2,
  fruitingWoodM: 3.217,
  shootCount: 52,
  deepShadeCount: 9,
  leafAreaM2: 1.837,
  meanLight: 0.312,
};

export const madePlan: Plan = {
  date: '2027-04-08',
  cuts: [dead, bud],
  yourCall: [],
  confidence: {
    worlds: 32,
    yourCallBelowShare: 0.6,
    figs: {
      plan: { low: 9.31, middle: 13.7, high: 19.44 },
      doNothing: { low: 8.02, middle: 11.1, high: 17.9 },
      difference: { low: -0.43, middle: 2.6, high: 5.12 },
      betterIn: 28,
    },
  },
  search: noSearch,
  choice: [],
  steps: [],
  pinch: null,
  score: {
    doNothing,
    plan: {
      ...doNothing,
      ripeFigs: 14.26,
      figsSet: 17.9,
      shootCount: 31,
      deepShadeCount: 0,
      fruitingWoodM: 5.1,
      meanLight: 0.447,
    },
    withYourCall: null,
  },
  remarks: ['No tip needs cutting.'],
};
