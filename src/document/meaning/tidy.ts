/** Small things that are put right on reading rather than refused, each with a note to the grower. */
import type { Path } from '../../geometry/path.ts';
import { distance, type Vec3 } from '../../geometry/vec.ts';
import { plainName, plainNote } from '../text.ts';
import type { TreeFile } from '../treeFile.ts';
import type { FileAxis } from './finding.ts';

/** Points nearer than this are one point; twice the step to which lengths are written. */
const samePointM = 2e-4;

export interface Tidied {
  readonly file: TreeFile;
  readonly notes: readonly string[];
}

/** How often something was put right. */
interface Tally {
  names: number;
  points: number;
  buds: number;
}

function tidyName(name: string, tally: Tally): string {
  const plain = plainName(name);
  if (plain !== name) tally.names++;
  return plain;
}

function withoutRepeats(path: Path, tally: Tally): Vec3[] {
  const kept: Vec3[] = [];
  for (const point of path) {
    const last = kept[kept.length - 1];
    if (last === undefined || distance(last, point) > samePointM) kept.push(point);
    else tally.points++;
  }
  return kept;
}

function inOrder(buds: FileAxis['buds'], tally: Tally): FileAxis['buds'] {
  const sorted = [...buds].sort((a, b) => a.atM - b.atM);
  if (sorted.some((bud, i) => bud !== buds[i])) tally.buds++;
  return sorted;
}

const tidyAxis = (axis: FileAxis, tally: Tally): FileAxis => ({
  ...axis,
  name: tidyName(axis.name, tally),
  path: withoutRepeats(axis.path, tally).map(([x, y, z]) => [x, y, z]),
  buds: inOrder(axis.buds, tally),
});

function tidySite(site: TreeFile['site'], tally: Tally): TreeFile['site'] {
  const { viewpoint, cover } = site;
  return {
    ...site,
    name: tidyName(site.name, tally),
    viewpoint: viewpoint && { ...viewpoint, name: tidyName(viewpoint.name, tally) },
    surroundings: site.surroundings.map((thing) => ({ ...thing, name: tidyName(thing.name, tally) })),
    ...(cover && { cover: { ...cover, name: tidyName(cover.name, tally) } }),
  };
}

const times = (n: number, one: string, many: string): string => (n === 1 ? `One ${one}` : `${n} ${many}`);

function notesOf(tally: Tally): string[] {
  const notes: string[] = [];
  if (tally.names > 0)
    notes.push(`${times(tally.names, 'name', 'names')} had hidden characters, which were taken out.`);
  if (tally.points > 0)
    notes.push(`${times(tally.points, 'point', 'points')} of branches lay on the point before and went.`);
  if (tally.buds > 0)
    notes.push(
      `Buds were put in order from base to tip on ${tally.buds === 1 ? 'one branch' : `${tally.buds} branches`}.`,
    );
  return notes;
}

/** A copy with clean names and notes, no repeated points and buds from base to tip. Axes keep their places in the list. */
export function tidy(file: TreeFile): Tidied {
  const tally: Tally = { names: 0, points: 0, buds: 0 };
  const tidied: TreeFile = {
    ...file,
    name: tidyName(file.name, tally),
    note: plainNote(file.note),
    cultivar: { ...file.cultivar, name: tidyName(file.cultivar.name, tally) },
    site: tidySite(file.site, tally),
    axes: file.axes.map((axis) => tidyAxis(axis, tally)),
  };
  return { file: tidied, notes: notesOf(tally) };
}
