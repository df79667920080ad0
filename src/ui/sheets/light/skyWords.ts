/** Visible text of the sky over a node on the Light sheet. */
import { formatDecimal } from '../../../geometry/measure.ts';

const percent = (share: number): string => `${formatDecimal(share * 100, 0)} %`;

export const skyWords = {
  title: 'Sky from a node',
  shoot: 'Shoot',
  node: 'Node',
  nodeOf: (node: number, all: number) =>
    node === 1 ? `${node}, at the base` : node === all ? `${node}, at the tip` : String(node),
  picture: (name: string, node: number) =>
    `The sky as seen from node ${node} of ${name}, straight up in the middle, the horizon at the rim, north at the top and east on the right. The table below tells what stands before the sun.`,
  shares: (cosine: number, solidAngle: number, light: number) =>
    [
      [
        'Open sky for a level sensor',
        percent(cosine),
        'each part of the sky counts by how steeply its light falls on a level plate',
      ],
      ['Open sky to the eye', percent(solidAngle), 'each part of the sky counts alike, low or high'],
      ['With what leaves let through', percent(light), 'for a level sensor under an evenly bright sky'],
    ] as const,
  sharesTitle: 'How much of the sky is seen',
  orientation:
    'Drawn as a map: north at the top, east on the right. Rings stand at 30° and 60° above the horizon.',
  standsHere: (name: string) => `There stands: ${name}.`,
  openHere: 'There the sky is open.',
  tapHint: 'Tap the picture to hear what stands there.',
  before: 'What stands before the sun',
  beforeColumns: { what: 'Before the sun' },
  openSun: 'Nothing: open sun',
  hours: (h: number) => `${formatDecimal(h, 1)} h`,
  more: (n: number) => `${n} more, each less.`,
  noShoots: 'There is no leafy shoot to look up from.',
} as const;
