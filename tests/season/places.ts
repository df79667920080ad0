/** Invented places with plausible climates, for tests. */
import type { Site } from '../../src/season/site.ts';

/** A valley in the middle of western Europe. */
export const northern: Site = {
  name: 'Low valley',
  latitudeDeg: 48.7,
  longitudeDeg: 2.3,
  timeZone: 'Europe/Paris',
  elevationM: 87,
  climate: {
    source: 'guess',
    meanC: [4.9, 5.6, 8.8, 11.8, 15.2, 18.6, 20.7, 20.5, 16.9, 13, 8.3, 5.5],
    minC: [2.7, 2.8, 5.3, 7.7, 11.1, 14.4, 16.3, 16.1, 12.7, 9.7, 5.8, 3.4],
    sunshineH: [2, 2.8, 4.4, 6.2, 6.6, 7, 7, 6.8, 5.8, 3.9, 2.4, 1.8],
  },
  frost: { lastOfSpring: '04-20', firstOfAutumn: '10-28' },
};

/** A terrace in the south of New Zealand's north, or anywhere like it. */
export const southern: Site = {
  name: 'Far terrace',
  latitudeDeg: -37.4,
  longitudeDeg: 175.1,
  timeZone: 'Pacific/Auckland',
  elevationM: 43,
  climate: {
    source: 'guess',
    meanC: [18.7, 19.1, 17.3, 14.5, 11.9, 9.5, 8.9, 9.7, 11.5, 13.2, 15, 17.2],
    minC: [13.2, 13.6, 11.8, 9.1, 7, 4.9, 4.2, 4.8, 6.6, 8.2, 9.8, 11.9],
    sunshineH: [7.4, 7.1, 6.1, 5.4, 4.5, 4.1, 4.3, 5, 5.3, 6, 6.6, 6.9],
  },
  frost: { lastOfSpring: '10-08', firstOfAutumn: '05-14' },
};
