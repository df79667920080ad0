/** Names must still be there once hidden characters are out. */

import type { Place } from '../shape.ts';
import type { TreeFile } from '../treeFile.ts';
import type { Finding } from './finding.ts';

export function findNamelessThing(file: TreeFile): Finding | null {
  const names: [string, Place][] = [
    [file.name, ['name']],
    [file.site.name, ['site', 'name']],
    ...file.axes.map((axis, i): [string, Place] => [axis.name, ['axes', i, 'name']]),
    ...file.site.surroundings.map((thing, i): [string, Place] => [
      thing.name,
      ['site', 'surroundings', i, 'name'],
    ]),
  ];
  if (file.site.viewpoint) names.push([file.site.viewpoint.name, ['site', 'viewpoint', 'name']]);
  if (file.site.cover) names.push([file.site.cover.name, ['site', 'cover', 'name']]);
  const nameless = names.find(([name]) => name === '');
  if (!nameless) return null;
  return { place: nameless[1], reason: 'The name has no character that can be read. Give it a name.' };
}
