/** `boughlight sky FILE --shoot NAME --node N` */

import type { TreeFile } from '../document/treeFile.ts';
import { grownTree } from '../engine/grownTree.ts';
import type { SkyAnswer } from '../engine/look.ts';
import { rayOptions } from './rayOptions.ts';
import { misuse, type Read } from './read.ts';
import { readWork } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import { skyText } from './skyText.ts';
import type { Workplace } from './workplace.ts';

/** Id of the shoot that is meant, by its id or its name, with a node that it has. */
function placeOf(
  file: TreeFile,
  { shoot, node, ...request }: WorkRequest,
): Read<{ shootId: string; node: number }> {
  const { canopy } = grownTree(file, rayOptions(request));
  const { shoots, nodes } = canopy;
  if (shoots.length === 0) return misuse('there are no shoots in leaf');
  const named = shoots.filter(({ id, name }) => id === shoot || name === shoot);
  const [one] = named;
  if (one === undefined) {
    const some = shoots.slice(0, 3).map(({ name }) => name);
    return misuse(
      `no shoot in leaf is called ${shoot}; there are ${shoots.length}, such as ${some.join('; ')}`,
    );
  }
  if (named.length > 1) {
    return misuse(
      `${named.length} shoots are called ${shoot}: give the id, ${named.map(({ id }) => id).join(' or ')}`,
    );
  }
  const count = nodes.filter(({ owner }) => owner === one.owner).length;
  if (node === undefined || node > count) {
    return misuse(`${one.name} has nodes 1 to ${count}, got --node ${node}`);
  }
  return { ok: true, value: { shootId: one.id, node } };
}

/** JSON as the engine answers it, the rows of dots as plain numbers. */
const jsonOf = ({ first, passed, ...rest }: SkyAnswer): string =>
  `${JSON.stringify({ format: 'boughlight-sky', version: 1, ...rest, first: Array.from(first), passed: Array.from(passed) })}\n`;

export async function skyCommand(
  request: WorkRequest,
  { terminal, makeEngine }: Workplace,
): Promise<Read<string>> {
  const tree = await readWork(request, terminal);
  if (!tree.ok) return tree;
  const file = tree.value;
  const place = placeOf(file, request);
  if (!place.ok) return place;
  const { json, units } = request;
  const engine = makeEngine();
  try {
    const answer = await engine.look(
      file,
      { ask: 'sky', ...place.value },
      rayOptions(request),
      ({ doing, done }) => terminal.showProgress?.(doing, done),
    ).result;
    return { ok: true, value: json ? jsonOf(answer) : skyText(answer, file, units) };
  } finally {
    engine.dispose();
  }
}
