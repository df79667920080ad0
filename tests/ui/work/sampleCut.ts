import type { Cut, Place, Reason } from '../../../src/plan/cut.ts';

export const samplePlace = (place: Partial<Place> = {}): Place => ({
  piece: null,
  branch: 'East limb',
  branchSide: 'east',
  fromForkM: 0.347,
  forksFrom: 'Trunk',
  heightM: 0.91,
  face: 'north',
  bearingDeg: 83,
  ...place,
});

export const sampleCut = (
  target: string,
  reason: Reason,
  place: Partial<Place> = {},
  kind: Cut['kind'] = 'rub off bud',
): Cut => ({
  id: `${kind.replaceAll(' ', '-')}:${target}`,
  kind,
  target,
  atM: 0,
  place: samplePlace(place),
  reasons: [reason],
  when: { from: '2030-04-19', to: '2030-05-30' },
  gain: { figs: 0.37, fruitingWoodM: 0.11, lights: [] },
  pass: null,
  ifKept: { figs: 0, fallBelow: [] },
  standsIn: null,
  cautions: ['estimate', 'sap'],
});

export const crowding: Reason = {
  rule: 'crowding',
  ownShare: 0.23,
  figsIfKept: 0.57,
  figsForOthers: 0.94,
  figsByShade: 0.31,
  figsWanted: 0.25,
};
