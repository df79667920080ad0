/** `boughlight light FILE` */

import type { LightOptions } from '../engine/engine.ts';
import { lightText } from './lightText.ts';
import { rayOptions } from './rayOptions.ts';
import type { Read } from './read.ts';
import { readWork } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import type { Workplace } from './workplace.ts';

export async function lightCommand(
  request: WorkRequest,
  { terminal, makeEngine }: Workplace,
): Promise<Read<string>> {
  const tree = await readWork(request, terminal);
  if (!tree.ok) return tree;
  const file = tree.value;
  const { period, weather, sky } = request;
  const options: LightOptions = {
    ...(period === undefined ? {} : { period }),
    ...(weather === undefined ? {} : { weather }),
    ...(sky === undefined ? {} : { sky }),
    ...rayOptions(request),
  };
  const engine = makeEngine();
  try {
    const { report, nodes, leaves } = await engine.light(file, options, ({ doing, done }) =>
      terminal.showProgress?.(doing, done),
    ).result;
    if (!request.json) return { ok: true, value: lightText(report, file, request.units) };
    const answer = {
      ...report,
      ...(request.nodes === true ? { nodes } : {}),
      ...(request.leaves === true ? { leaves } : {}),
    };
    return { ok: true, value: `${JSON.stringify(answer, null, 2)}\n` };
  } finally {
    engine.dispose();
  }
}
