/** `boughlight day FILE` */
import { rayOptions } from './rayOptions.ts';
import type { Read } from './read.ts';
import { readWork } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import { stripText } from './strip.ts';
import type { Workplace } from './workplace.ts';

export async function dayCommand(
  request: WorkRequest,
  { terminal, makeEngine }: Workplace,
): Promise<Read<string>> {
  const tree = await readWork(request, terminal);
  if (!tree.ok) return tree;
  const file = tree.value;
  const { date, weather, json, nodes: withNodes } = request;
  const engine = makeEngine();
  try {
    const { report, nodes } = await engine.look(
      file,
      {
        ask: 'day',
        date: date ?? file.season.sketchedOn,
        ...(weather === undefined ? {} : { weather }),
      },
      rayOptions(request),
      ({ doing, done }) => terminal.showProgress?.(doing, done),
    ).result;
    if (!json) return { ok: true, value: stripText(report, file) };
    const plain = nodes.map((node) => ({
      ...node,
      sunlit: Array.from(node.sunlit),
      parMolM2: Array.from(node.parMolM2),
    }));
    const answer = withNodes === true ? { ...report, nodes: plain } : report;
    return { ok: true, value: `${JSON.stringify(answer)}\n` };
  } finally {
    engine.dispose();
  }
}
