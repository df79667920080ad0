/** Visible text of the Place sheet. */
import { formatDecimal } from '../../../geometry/measure.ts';

const ends = {
  frost: 'when the first frost is due',
  'cold nights': 'when the nights grow too cold',
  'length of season': 'when the longest season is over',
} as const;

export const placeWords = {
  headline: (firstRipe: string | null, last: string, by: keyof typeof ends) =>
    firstRipe === null
      ? `In a normal year no main-crop fig ripens here before about ${last}, ${ends[by]}.`
      : `Figs ripen here from about ${firstRipe} until about ${last}, ${ends[by]}.`,
  dates: 'The season in a normal year',
  dateRows: {
    budBreak: 'Buds break',
    leafOut: 'First leaf',
    firstFigs: 'First figs show',
    fullLeaf: 'Full leaf',
    firstRipe: 'First ripe fig',
    end: 'Ripening ends',
  },
  never: 'not in time',
  budBreak: 'Buds broke on',
  sketched: 'Sketched on',
  day: (date: string) => `Light of the open sky on ${date}`,
  dayLine: (mol: number, diffuse: number, hours: number) =>
    `${formatDecimal(mol, 1)} mol m⁻² of PAR in a mean day of ${formatDecimal(hours, 1)} hours; ${formatDecimal(diffuse * 100, 0)} % of it from the sky, the rest straight from the sun.`,
  sun: 'sun',
  sky: 'sky',
  dayPicture: 'Light by the hour of the sun: most at 12.',
  climate: 'Weather in a normal year',
  climateSource: {
    measured: 'Measured at the place.',
    published: 'From published normals.',
    guess: 'A guess; a tree file can carry figures of your own.',
  },
  guess: 'No figures? Guess them for this latitude',
  guessKinds: {
    none: 'Leave as it is',
    maritime: 'Mild, near the ocean',
    continental: 'Hot summers, cold winters',
    mediterranean: 'Dry summers, mild winters',
    'humid subtropical': 'Hot wet summers, mild winters',
  },
  temperature: 'Mean of the day, °C',
  sunshine: 'Sunshine, hours a day',
  frost: (last: string, first: string) =>
    `Last frost of spring about ${last}, first of autumn about ${first}.`,
  noFrost: 'It does not freeze here.',
  place: 'Where it stands',
  fields: {
    name: 'Place',
    latitude: 'Latitude, north positive',
    longitude: 'Longitude, east positive',
    elevation: 'Height above the sea',
    ground: 'Light thrown back by the ground',
    turned: 'Turned clockwise since the sketch',
    pot: 'It stands',
    potTop: 'Pot, across the top',
    potBase: 'Pot, across the base',
    potHeight: 'Pot, height',
    soil: 'Soil below the rim',
  },
  standings: { pot: 'in a pot', ground: 'in the ground' },
  round: 'Walls and neighbours',
  noneRound: 'Nothing stands near that takes light away.',
  positions: 'Positions are measured from the middle of the place: east and north positive.',
  kinds: { wall: 'wall', box: 'block', crown: 'tree or hedge' },
  addKind: { wall: 'Add a wall', box: 'Add a block', crown: 'Add a tree' },
  takeAway: (name: string) => `Take away ${name}`,
  roundFields: {
    name: 'Name',
    fromEast: 'One end, east',
    fromNorth: 'One end, north',
    toEast: 'Other end, east',
    toNorth: 'Other end, north',
    height: 'Height',
    thickness: 'Thickness',
    reflectance: 'Light thrown back',
    east: 'Middle, east',
    north: 'Middle, north',
    wide: 'Size east-west',
    deep: 'Size north-south',
    turned: 'Turned clockwise',
    middleHeight: 'Middle above ground',
    halfWide: 'Half size east-west',
    halfDeep: 'Half size north-south',
    halfHigh: 'Half size up-down',
    leaves: 'Leaf area in the crown',
  },
  fresh: { wall: 'New wall', box: 'New block', crown: 'New neighbour' },
} as const;
