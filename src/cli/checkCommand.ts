/** `boughlight check FILE` */
import { checkReport } from './checkReport.ts';
import { checkText } from './checkText.ts';
import { misuse, type Read } from './read.ts';
import { readTree } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import type { Workplace } from './workplace.ts';

export async function checkCommand(request: WorkRequest, { terminal }: Workplace): Promise<Read<string>> {
  const tree = await readTree(request.file, terminal);
  if (!tree.ok) return misuse(tree.reason);
  const report = checkReport(tree.value.file, tree.value.notes);
  return { ok: true, value: request.json ? `${JSON.stringify(report, null, 2)}\n` : checkText(report) };
}
