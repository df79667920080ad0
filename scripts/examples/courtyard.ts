/** Where the potted fig stands: before a south-facing house wall in the hills, with a real winter. */
import type { TreeFile } from '../../src/document/treeFile.ts';

export const courtyard: Pick<TreeFile, 'species' | 'cultivar' | 'site' | 'standing'> = {
  species: 'fig',
  cultivar: { name: 'Brown seedling', ripening: 'mid', bearsFirstCrop: true },
  site: {
    name: 'Courtyard in Varnoux-le-Haut',
    latitudeDeg: 44.93,
    longitudeDeg: 4.61,
    timeZone: 'Europe/Paris',
    elevationM: 187,
    groundReflectance: 0.22,
    viewpoint: { name: 'the house', bearingDeg: 357 },
    climate: {
      source: 'guess',
      meanC: [3.6, 4.9, 9.1, 12.6, 16.9, 20.9, 23.7, 23.2, 18.9, 14.3, 8.2, 4.4],
      minC: [-0.4, 0.2, 3.3, 6.7, 11, 14.8, 17.2, 16.9, 13.2, 9.7, 4.5, 0.9],
      sunshineH: [2.9, 4.2, 6, 7, 8, 9.3, 10.2, 9.1, 7.2, 4.9, 3.2, 2.6],
    },
    frost: { lastOfSpring: '04-08', firstOfAutumn: '11-03' },
    surroundings: [
      {
        kind: 'wall',
        name: 'House wall',
        from: [-4.1, 1.62],
        to: [3.3, 1.91],
        heightM: 3.4,
        thicknessM: 0.38,
        reflectance: 0.46,
      },
    ],
  },
  standing: {
    pot: { topDiameterM: 0.45, baseDiameterM: 0.35, heightM: 0.41, soilBelowRimM: 0.04 },
    at: [0, 0],
    turnedDeg: 0,
  },
};
