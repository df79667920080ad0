/** Where the tree stands: the site, the pot and what is round it. */
import type { Surrounding, TreeFile } from '../../document/treeFile.ts';
import type { Edited } from '../edit.ts';
import { checkedPlace } from './checkedPlace.ts';

export function changeSite(file: TreeFile, change: Partial<TreeFile['site']>): Edited {
  return checkedPlace({ ...file, site: { ...file.site, ...change } }, 'Changed the place');
}

export function changeStanding(file: TreeFile, change: Partial<TreeFile['standing']>): Edited {
  const said = change.turnedDeg === undefined ? 'Changed how the tree stands' : 'Turned the tree';
  return checkedPlace({ ...file, standing: { ...file.standing, ...change } }, said);
}

export function changeSeason(file: TreeFile, change: Partial<TreeFile['season']>): Edited {
  return checkedPlace({ ...file, season: { ...file.season, ...change } }, 'Changed the dates');
}

const throwsLight = ({ kind }: Surrounding): boolean => kind === 'wall' || kind === 'box';

/** The first wall or house of a place throws light back, as real ones do, where nothing else was said. */
const thrownBy = (
  next: Surrounding,
  others: readonly Surrounding[],
  { wallsThrowLight }: TreeFile['site'],
) =>
  wallsThrowLight === undefined && throwsLight(next) && !others.some(throwsLight)
    ? { wallsThrowLight: true }
    : {};

/** Puts another in place of the surrounding at that index; null takes it away; an index past the end adds it. */
export function changeSurrounding(file: TreeFile, index: number, next: Surrounding | null): Edited {
  const old = file.site.surroundings[index];
  const others = file.site.surroundings.filter((_, i) => i !== index);
  const surroundings = next === null ? others : others.toSpliced(index, 0, next);
  const name = next?.name ?? old?.name ?? '';
  const verb = next === null ? 'Took away' : old === undefined ? 'Added' : 'Changed';
  const thrown = next === null || old !== undefined ? {} : thrownBy(next, others, file.site);
  return checkedPlace({ ...file, site: { ...file.site, ...thrown, surroundings } }, `${verb} ${name}`);
}

/** What lies over or under the whole place; null takes it away. */
export function changeLand<Part extends 'skyline' | 'slope' | 'cover'>(
  file: TreeFile,
  part: Part,
  value: TreeFile['site'][Part] | null,
): Edited {
  const { [part]: _, ...others } = file.site;
  const site = (value === null ? others : { ...others, [part]: value }) as TreeFile['site'];
  return checkedPlace({ ...file, site }, `Changed the ${part}`);
}

/** A quarter turn of the pot after every so many weeks; null for a pot that is left alone. */
export function changeTurning(file: TreeFile, weeks: number | null): Edited {
  const { quarterTurnEveryWeeks: _, ...others } = file.standing;
  const standing = weeks === null ? others : { ...others, quarterTurnEveryWeeks: weeks };
  const said = weeks === null ? 'Left the pot as it stands' : `A quarter turn every ${weeks} weeks`;
  return checkedPlace({ ...file, standing }, said);
}

/** Puts the tree in a pot, or in the ground with null: there it is not turned any more. */
export function changePot(file: TreeFile, pot: TreeFile['standing']['pot']): Edited {
  const { quarterTurnEveryWeeks: _, ...still } = file.standing;
  const standing = { ...(pot === null ? still : file.standing), pot };
  return checkedPlace({ ...file, standing }, 'Changed how the tree stands');
}
