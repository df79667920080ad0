/** `boughlight plan FILE` */

import { workCsv } from '../document/workCsv.ts';
import { energyBasis } from '../engine/energyBasis.ts';
import type { PlanOptions } from '../engine/engine.ts';
import { planReport } from './planReport.ts';
import { planText } from './planText.ts';
import { rayOptions } from './rayOptions.ts';
import type { Read } from './read.ts';
import { readWork } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import type { Workplace } from './workplace.ts';

export async function planCommand(
  request: WorkRequest,
  { terminal, makeEngine }: Workplace,
): Promise<Read<string>> {
  const tree = await readWork(request, terminal);
  if (!tree.ok) return tree;
  const file = tree.value;
  const { date, units, weather, sky, boldness, worlds } = request;
  const options: PlanOptions = {
    ...(request.renewal === true ? { renewal: true } : {}),
    ...(request.prove === true ? { prove: true } : {}),
    ...(date === undefined ? {} : { date }),
    ...(worlds === undefined ? {} : { worlds }),
    ...(boldness === undefined ? {} : { boldness }),
    ...(weather === undefined ? {} : { weather }),
    ...(sky === undefined ? {} : { sky }),
    ...rayOptions(request),
  };
  const energy = energyBasis(file.site.climate, weather ?? 'normal');
  const engine = makeEngine();
  try {
    const plan = await engine.plan(file, options, ({ doing, done }) => terminal.showProgress?.(doing, done))
      .result;
    if (request.csv === true) {
      const advised = new Set(plan.cuts.map(({ id }) => id));
      return { ok: true, value: workCsv(plan, advised, units, file.site.viewpoint) };
    }
    const value = request.json
      ? `${JSON.stringify(planReport(plan, file, units, energy), null, 2)}\n`
      : planText(plan, file, units, energy);
    return { ok: true, value };
  } finally {
    engine.dispose();
  }
}
