/** Where the old fig stands: a warm, wet garden terrace with a neighbour's tree to the south-east. */
import type { TreeFile } from '../../src/document/treeFile.ts';

export const terrace: Pick<TreeFile, 'species' | 'cultivar' | 'site' | 'standing'> = {
  species: 'fig',
  cultivar: { name: '', ripening: 'mid', bearsFirstCrop: false },
  site: {
    name: 'Lower terrace at Aonezaka',
    latitudeDeg: 34.94,
    longitudeDeg: 136.27,
    timeZone: 'Asia/Tokyo',
    elevationM: 96,
    groundReflectance: 0.19,
    viewpoint: { name: 'the house', bearingDeg: 203 },
    climate: {
      source: 'guess',
      meanC: [3.9, 4.6, 8.1, 13.5, 18.4, 22.3, 26.4, 27.6, 23.8, 17.9, 12, 6.5],
      minC: [0.1, 0.4, 3.1, 8.2, 13.4, 18.4, 22.8, 23.7, 20, 13.6, 7.5, 2.5],
      sunshineH: [4.6, 4.9, 5.4, 6.2, 6.3, 4.6, 5.3, 6.6, 5, 5.1, 4.9, 4.5],
    },
    frost: { lastOfSpring: '04-05', firstOfAutumn: '11-19' },
    surroundings: [
      {
        kind: 'crown',
        name: 'Neighbour’s persimmon',
        centre: [3.2, -2.4],
        centreHeightM: 3,
        halfSizeM: [1.5, 1.4, 1.6],
        leafAreaDensityM2M3: 1.3,
      },
      {
        kind: 'box',
        name: 'Tool shed',
        centre: [-3.7, 2.3],
        sizeM: [2.2, 1.7, 2.1],
        turnedDeg: 14,
        reflectance: 0.31,
      },
    ],
  },
  standing: { pot: null, at: [0.35, -0.6], turnedDeg: 0 },
};
