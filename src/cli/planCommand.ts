/** `boughlight plan FILE` */
import type { PlanOptions } from '../engine/engine.ts';
import { planReport } from './planReport.ts';
import { planText } from './planText.ts';
import { misuse, type Read } from './read.ts';
import { readTree, tellNotes } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import type { Workplace } from './workplace.ts';

export async function planCommand(
  request: WorkRequest,
  { terminal, makeEngine }: Workplace,
): Promise<Read<string>> {
  const tree = await readTree(request.file, terminal);
  if (!tree.ok) return misuse(tree.reason);
  const { file, notes } = tree.value;
  tellNotes(notes, terminal);
  const { date, waves, seed, units } = request;
  const options: PlanOptions = {
    ...(date === undefined ? {} : { date }),
    ...(waves === undefined ? {} : { waves }),
    ...(seed === undefined ? {} : { seed }),
  };
  const engine = makeEngine();
  try {
    const plan = await engine.plan(file, options, ({ doing, done }) => terminal.showProgress?.(doing, done))
      .result;
    const value = request.json
      ? `${JSON.stringify(planReport(plan, file, units), null, 2)}\n`
      : planText(plan, file, units);
    return { ok: true, value };
  } finally {
    engine.dispose();
  }
}
