/** Where the tree stands: the site, the pot and what is round it. */
import { type Surrounding, type TreeFile, treeFileSchema } from '../../document/treeFile.ts';
import { type ClimateKind, guessClimate } from '../../season/guessClimate.ts';
import { type Edited, refuse } from '../edit.ts';

/** A change to the site or the standing, checked against the shape of the tree file. */
function changed(next: TreeFile, said: string): Edited {
  const checked = treeFileSchema.pick({ site: true, standing: true, season: true }).safeParse({
    site: next.site,
    standing: next.standing,
    season: next.season,
  });
  if (checked.success) return { ok: true, file: next, said };
  const issue = checked.error.issues[0];
  return refuse(`That cannot be used: ${issue === undefined ? 'it is out of range' : rangeWords(issue)}.`);
}

/** What the schema's complaint means, in plain words. */
function rangeWords(issue: { code: string; minimum?: unknown; maximum?: unknown; message: string }): string {
  if (issue.code === 'too_small') return `the smallest value is ${String(issue.minimum)}`;
  if (issue.code === 'too_big') return `the largest value is ${String(issue.maximum)}`;
  return 'please give a number or date';
}

export function changeSite(file: TreeFile, change: Partial<TreeFile['site']>): Edited {
  return changed({ ...file, site: { ...file.site, ...change } }, 'Changed the place');
}

/** Puts the weather of a kind of climate at the tree's latitude in place of the figures there are. */
export function guessWeather(file: TreeFile, kind: ClimateKind): Edited {
  const { source, meanC, minC, sunshineH } = guessClimate(file.site.latitudeDeg, kind);
  const climate = { source, meanC: [...meanC], minC: [...minC], sunshineH: [...sunshineH] } as const;
  return changed(
    { ...file, site: { ...file.site, climate: climate as TreeFile['site']['climate'] } },
    'Guessed the weather',
  );
}

export function changeStanding(file: TreeFile, change: Partial<TreeFile['standing']>): Edited {
  const said = change.turnedDeg === undefined ? 'Changed how the tree stands' : 'Turned the tree';
  return changed({ ...file, standing: { ...file.standing, ...change } }, said);
}

export function changeSeason(file: TreeFile, change: Partial<TreeFile['season']>): Edited {
  return changed({ ...file, season: { ...file.season, ...change } }, 'Changed the dates');
}

/** Puts another in place of the surrounding at that index; null takes it away; an index past the end adds it. */
export function changeSurrounding(file: TreeFile, index: number, next: Surrounding | null): Edited {
  const old = file.site.surroundings[index];
  const others = file.site.surroundings.filter((_, i) => i !== index);
  const surroundings = next === null ? others : others.toSpliced(index, 0, next);
  const name = next?.name ?? old?.name ?? '';
  const verb = next === null ? 'Took away' : old === undefined ? 'Added' : 'Changed';
  return changed({ ...file, site: { ...file.site, surroundings } }, `${verb} ${name}`);
}
