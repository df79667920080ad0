/** A change to where the tree stands, held against the shape and the meaning of the tree file before it is made. */
import { findWrongPlace } from '../../document/meaning/place.ts';
import { type TreeFile, treeFileSchema } from '../../document/treeFile.ts';
import { type Edited, refuse } from '../edit.ts';

const placeSchema = treeFileSchema.pick({ site: true, standing: true, season: true });

export function checkedPlace(next: TreeFile, said: string): Edited {
  const { site, standing, season } = next;
  const shape = placeSchema.safeParse({ site, standing, season });
  if (!shape.success) {
    const issue = shape.error.issues[0];
    return refuse(`That cannot be used: ${issue === undefined ? 'it is out of range' : rangeWords(issue)}.`);
  }
  const wrong = findWrongPlace(next);
  return wrong === null ? { ok: true, file: next, said } : refuse(wrong.reason);
}

/** What the schema's complaint means, in plain words. */
function rangeWords(issue: { code: string; minimum?: unknown; maximum?: unknown; message: string }): string {
  if (issue.code === 'too_small') return `the smallest value is ${String(issue.minimum)}`;
  if (issue.code === 'too_big') return `the largest value is ${String(issue.maximum)}`;
  return 'please give a number or date';
}
