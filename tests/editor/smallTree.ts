import type { TreeFile } from '../../src/document/treeFile.ts';
import type { TreeAxis } from '../../src/editor/edit.ts';

const monthly = (
  first: number,
): [number, number, number, number, number, number, number, number, number, number, number, number] => [
  first,
  first + 1,
  first + 4,
  first + 9,
  first + 13,
  first + 16,
  first + 18,
  first + 17,
  first + 14,
  first + 9,
  first + 4,
  first + 1,
];

const branch = (axis: Partial<TreeAxis> & Pick<TreeAxis, 'id' | 'name' | 'kind'>): TreeAxis => ({
  parentId: 'trunk',
  atM: 0.31,
  path: [
    [0, 0, 0],
    [0.21, 0.17, -0.03],
    [0.43, 0.39, -0.05],
  ],
  baseDiameterM: 0.021,
  tipDiameterM: 0.011,
  grownIn: 2029,
  condition: 'live',
  buds: [],
  foliage: null,
  pin: null,
  ...axis,
});

/** A trunk, two limbs, a lateral with two shoots: invented, uneven on purpose. */
export const smallTree: TreeFile = {
  format: 'boughlight-tree',
  version: 1,
  id: 'small-fig',
  name: 'Small fig',
  note: '',
  species: 'fig',
  cultivar: { name: '', ripening: 'mid', bearsFirstCrop: true },
  site: {
    name: 'Lower yard',
    latitudeDeg: 46.7,
    longitudeDeg: 5.3,
    timeZone: 'Europe/Paris',
    elevationM: 213,
    groundReflectance: 0.17,
    viewpoint: { name: 'the house', bearingDeg: 200 },
    climate: {
      source: 'guess',
      meanC: monthly(1.3),
      minC: monthly(-2.7),
      sunshineH: monthly(2.1).map((h) => h / 2) as ReturnType<typeof monthly>,
    },
    frost: { lastOfSpring: '04-21', firstOfAutumn: '10-29' },
    surroundings: [],
  },
  standing: {
    pot: { topDiameterM: 0.47, baseDiameterM: 0.35, heightM: 0.41, soilBelowRimM: 0.03 },
    at: [0, 0],
    turnedDeg: 0,
  },
  season: { budBreakOn: '2030-04-12', sketchedOn: '2030-06-23' },
  settings: {},
  axes: [
    branch({
      id: 'trunk',
      name: 'Trunk',
      kind: 'trunk',
      parentId: null,
      atM: 0,
      path: [
        [0, 0, 0],
        [0.01, 0.23, 0.02],
        [0, 0.47, 0],
      ],
      baseDiameterM: 0.043,
      tipDiameterM: 0.035,
    }),
    branch({ id: 'east', name: 'East limb', kind: 'scaffold' }),
    branch({
      id: 'west',
      name: 'West limb',
      kind: 'scaffold',
      atM: 0.37,
      path: [
        [0, 0, 0],
        [-0.33, 0.41, 0.07],
      ],
    }),
    branch({
      id: 'lateral',
      name: 'East limb, lateral',
      kind: 'lateral',
      parentId: 'east',
      atM: 0.29,
      path: [
        [0, 0, 0],
        [0.07, 0.19, 0.23],
      ],
      buds: [{ id: 'lateral-b1', atM: 0.11, aroundDeg: 31, pin: null }],
    }),
    branch({
      id: 'shoot-1',
      name: 'Shoot 1',
      kind: 'shoot',
      parentId: 'lateral',
      atM: 0.13,
      grownIn: 2030,
      foliage: { count: 11, midribM: 0.17, source: 'measured' },
    }),
    branch({
      id: 'shoot-2',
      name: 'Shoot 2',
      kind: 'shoot',
      parentId: 'lateral',
      atM: 0.27,
      grownIn: 2030,
      foliage: { count: 9, midribM: 0.19, source: 'measured' },
    }),
  ],
};
