/** Where the potted fig stands: before a south-facing house wall in the hills, with a real winter. */
import type { TreeFile } from '../../src/document/treeFile.ts';

export const courtyard: Pick<TreeFile, 'species' | 'cultivar' | 'site' | 'standing'> = {
  species: 'fig',
  cultivar: { name: 'Brown seedling', ripening: 'mid', bearsFirstCrop: true },
  site: {
    name: 'Courtyard in Varnoux-le-Haut',
    latitudeDeg: 47.13,
    longitudeDeg: 5.87,
    timeZone: 'Europe/Paris',
    elevationM: 318,
    groundReflectance: 0.22,
    viewpoint: { name: 'the house', bearingDeg: 357 },
    climate: {
      source: 'guess',
      meanC: [1.9, 3.1, 6.9, 10.4, 14.6, 18.2, 20.4, 19.9, 15.8, 11.3, 5.9, 2.7],
      minC: [-1.1, -0.7, 2.1, 4.8, 9, 12.4, 14.4, 14, 10.7, 7.3, 2.8, 0.1],
      sunshineH: [2, 3.3, 4.9, 6.3, 6.9, 7.9, 8.3, 7.4, 5.8, 3.6, 2.2, 1.7],
    },
    frost: { lastOfSpring: '04-21', firstOfAutumn: '10-24' },
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
