/** A weather file read away from the page's own thread: a year of hours takes longer than a frame. */
import type { TreeFile } from '../document/treeFile.ts';
import { type WeatherTaken, withEpw } from '../document/withEpw.ts';
import type { Job } from './job.ts';

export function* weatherJob(file: TreeFile, text: string): Job<WeatherTaken> {
  yield { done: 0, doing: 'Reading the weather' };
  return withEpw(file, text);
}
