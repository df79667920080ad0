/** The sky over a node as text: how much of it is open, what stands before it, and a small picture. */
import type { TreeFile } from '../document/treeFile.ts';
import type { SkyAnswer, SkyThing } from '../engine/look.ts';
import { formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import { directionAtPlace } from '../light/look/skyRaster.ts';
import { type Column, table } from './table.ts';

const markOf: Readonly<Record<SkyThing['kind'], string>> = {
  sky: '.',
  leaf: 'o',
  wood: '#',
  pot: '=',
  wall: '=',
  box: '=',
  fence: '=',
  crown: '%',
  hedge: '%',
  skyline: '^',
  slope: '^',
};

/** Lines of the small picture; a letter is about twice as high as it is wide. */
const pictureLines = 19;

const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;

function thingAt({ size, first, things }: SkyAnswer, toEast: number, toNorth: number): SkyThing | null {
  if (directionAtPlace(toEast, toNorth) === null) return null;
  const column = Math.min(size - 1, Math.floor(((toEast + 1) / 2) * size));
  const row = Math.min(size - 1, Math.floor(((1 - toNorth) / 2) * size));
  return things[first[row * size + column] as number] ?? null;
}

function picture(answer: SkyAnswer): string[] {
  const columns = 2 * pictureLines;
  return Array.from({ length: pictureLines }, (_, row) =>
    Array.from({ length: columns }, (_unused, column) => {
      const thing = thingAt(answer, (2 * (column + 0.5)) / columns - 1, 1 - (2 * (row + 0.5)) / pictureLines);
      return thing === null ? ' ' : markOf[thing.kind];
    })
      .join('')
      .trimEnd(),
  );
}

const nameOf = (thing: SkyThing): string => {
  if (thing.kind === 'sky') return 'Open sky';
  if (thing.kind === 'leaf') return `Leaves of ${thing.name}`;
  return thing.kind === 'wood' ? `Wood of ${thing.name}` : thing.name;
};

/** Share of the round picture that each thing takes, most first. */
function covers({ first, things }: SkyAnswer): { readonly thing: SkyThing; readonly share: number }[] {
  const counts = things.map(() => 0);
  let dots = 0;
  for (const thing of first) {
    if (thing < 0) continue;
    dots++;
    counts[thing] = (counts[thing] as number) + 1;
  }
  return things
    .map((thing, i) => ({ thing, share: (counts[i] as number) / dots }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}

const mostNamed = 12;

export function skyText(answer: SkyAnswer, file: TreeFile, units: Units): string {
  const { name, node, open, light, point } = answer;
  const all = covers(answer);
  const columns: Column[] = [
    { title: 'Seen first', align: 'left' },
    { title: 'Picture', align: 'right' },
  ];
  const lines = [
    `From node ${node} of ${name}, ${formatLength(point[1], units)} above the ground, ${percent(open.solidAngle)} of the sky is open: ${percent(open.cosine)} as a level sensor sees it.`,
    `${file.name}, ${file.site.name}. With what leaves let through: ${percent(light.solidAngle)} and ${percent(light.cosine)}.`,
    '',
    ...picture(answer),
    '',
    ...table(
      columns,
      all.slice(0, mostNamed).map(({ thing, share }) => [nameOf(thing), percent(share)]),
    ),
    ...(all.length > mostNamed ? [`and ${all.length - mostNamed} more`] : []),
    '',
    'North is at the top and east on the right, as on a map; the zenith is the middle, the horizon the rim.',
    'Open sky ., leaf o, wood #, wall or pot =, crown or hedge %, far off or rising ground ^.',
    'An estimate from a sketch, its leaves placed by rule.',
  ];
  return `${lines.join('\n')}\n`;
}
