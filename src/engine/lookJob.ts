import type { TreeFile } from '../document/treeFile.ts';
import { dayJob } from './dayJob.ts';
import type { Job } from './job.ts';
import type { LookAnswers, LookOptions, LookQuestion } from './look.ts';
import { skyJob } from './skyJob.ts';

/** Answers a question of either kind. */
export function lookJob(
  file: TreeFile,
  question: LookQuestion,
  options: LookOptions,
): Job<LookAnswers[LookQuestion['ask']]> {
  return question.ask === 'day' ? dayJob(file, question, options) : skyJob(file, question, options);
}
