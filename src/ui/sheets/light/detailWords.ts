/** Visible text of all that is told of one shoot. */
import type { ShootLight } from '../../../engine/reports.ts';
import { formatDecimal, formatLength, type Units } from '../../../geometry/measure.ts';

const percent = (share: number): string => `${formatDecimal(share * 100, share < 0.095 ? 1 : 0)} %`;
const hours = (h: number): string => `${formatDecimal(h, 1)} h`;

/** Name, figure and what it means in one line. */
type Fact = readonly [name: string, figure: string, meaning: string];

export const detailWords = {
  facts: (shoot: ShootLight, dayLengthH: number, units: Units): readonly Fact[] => {
    const { beam, sky, ground, transmitted, scattered } = shoot.parts;
    return [
      [
        'Share of open sky',
        percent(shoot.lightFraction),
        `${percent(beam)} straight from the sun, ${percent(sky)} from the sky, ${percent(ground)} from the ground, ${percent(transmitted + scattered)} through and off leaves`,
      ],
      [
        'Direct sun',
        hours(shoot.sunHours),
        `of ${hours(dayLengthH)} from sunrise to sunset on a mean day, if no cloud came`,
      ],
      [
        'Sky in sight',
        percent(shoot.openSky.cosine),
        `for a level sensor; ${percent(shoot.openSky.solidAngle)} when low sky counts as much as high`,
      ],
      ['Height', formatLength(shoot.heightM, units), 'of its nodes above the ground, mean'],
    ];
  },
  nodes: 'Its nodes, from the base: open sky and direct sun',
  toSky: 'See the sky from this node',
  sun: hours,
} as const;
