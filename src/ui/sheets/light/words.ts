/** Visible text of the Light sheet. */
import { formatDecimal } from '../../../geometry/measure.ts';

export const percent = (share: number): string => formatDecimal(share * 100, 0);

/** A limit in percent, with a decimal where it has one: 13.5. */
export const limitPercent = (share: number): string => formatDecimal(share * 100, 1).replace('.0', '');

/** A standard error in percent, rounded up, so that it is never shown as nothing: 0.3. */
export const doubtPercent = (share: number): string =>
  share < 0.0095 ? formatDecimal(Math.ceil(share * 1000) / 10, 1) : formatDecimal(Math.ceil(share * 100), 0);

const shoots = (n: number): string => (n === 1 ? '1 shoot' : `${n} shoots`);

export const lightWords = {
  headline(dark: number, all: number, inside: number, when: string): string {
    if (all === 0) return 'No shoot carries leaves yet.';
    if (dark === 0) return `None of the ${shoots(all)} sits in deep shade ${when}.`;
    const inner =
      inside === 0
        ? ''
        : inside === dark
          ? dark === 1
            ? ', inside the crown'
            : ', all inside the crown'
          : `; ${inside} of them inside the crown`;
    return `${dark} of ${shoots(all)} ${dark === 1 ? 'sits' : 'sit'} in deep shade ${when}${inner}.`;
  },
  waiting: 'Tracing the light.',
  stale: 'The tree has changed. These figures are of the tree before; new ones are on their way.',
  staleStopped: 'The tree has changed. These figures are of the tree before.',
  coarse: 'First, rough figures. Finer ones follow.',
  cancelled: 'Stopped. The figures are not finished.',
  again: 'Trace again',
  failed: (message: string) => `The light could not be worked out. ${message}`,
  table: 'Shoots by light',
  columns: { shoot: 'Shoot', sky: 'Open sky', leaf: 'Leaf light' },
  darkestFirst: 'Darkest first',
  brightestFirst: 'Brightest first',
  noShoots: 'There is no leafy shoot on this tree.',
  toTree: 'Add one on the Tree sheet',
  classes: (from: number, to: number) =>
    from === 0
      ? `under ${limitPercent(to)} %`
      : to === 1
        ? `${limitPercent(from)} % and more`
        : `${limitPercent(from)} to ${limitPercent(to)} %`,
  ofAMomentAgo: 'Grey: light of a moment ago',
  onItsWay: 'Light on its way',
  legend: 'Share of open sky',
  leafLegend: 'Light on each leaf',
  leafNote:
    'Both faces of each leaf together, as a share of what a level sensor gets under open sky. The limits were measured with level sensors at the nodes.',
  showDark: 'Show them on the tree',
  showAll: 'Show the whole tree',
  lookingAt: 'Look at',
  lookings: { shoots: 'Shoots', day: 'Day', sky: 'Sky', spread: 'Spread' },
  colouring: 'Colour the leaves by',
  colourings: { shoot: 'shoot', node: 'node', leaf: 'leaf' },
  sources: 'The limits of the classes, and where they come from',
  changed: '(changed)',
  limits: { fruitHalfAtFraction: 'Fruiting light', fruitFullFromFraction: 'As much as leaves can use' },
  changedFrom: (share: number) => `Changed from ${limitPercent(share)} %`,
  backTo: (share: number) => `Back to ${limitPercent(share)} %`,
  sourceIs: (source: string, confidence: string, min: number, max: number) =>
    `Between ${limitPercent(min)} and ${limitPercent(max)} %; confidence ${confidence}. Source: ${source}.`,
  deepShadeIs: (share: number) => `Deep shade, ${limitPercent(share)} %: half of fruiting light, our choice.`,
  meaning: 'What these numbers mean, and what they cannot tell',
  meanings: [
    'Open sky: the light a level sensor gets at the nodes of the shoot, as a share of what it would get with nothing above it. Published light limits were measured so. After ± stands the standard error of the tracing.',
    'mol m⁻² d⁻¹: light for growth (PAR) in a mean day of the time chosen; mol m⁻² h⁻¹ in one hour of it.',
    'Direct sun: hours of a mean day in which the sun’s disc is not hidden by the tree or by what stands round it. Clouds are left out of account.',
    'Sun time: the sun stands highest at 12, whatever the clock says.',
    'Leaf light: what the leaves themselves get, both faces together, for each area of leaf. It can be well above or below the sensor’s figure, as leaves lean.',
    'They come from the sketch and from the mean weather of the place. The ± holds the chance in the tracing alone; not the weather of this year, a branch drawn a hand too far left, or leaves that grew otherwise.',
  ],
} as const;
