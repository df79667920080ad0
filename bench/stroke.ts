/** What a move of the hand costs while a branch is drawn: the course, what it settles on, and the tree with it. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../src/document/parseTreeFile.ts';
import { courseOf } from '../src/editor/drawing/course.ts';
import { drawAgain } from '../src/editor/drawing/drawAgain.ts';
import { drawBranch } from '../src/editor/drawing/drawBranch.ts';
import type { Look, Xy } from '../src/editor/drawing/look.ts';
import { startOn } from '../src/editor/drawing/workPlane.ts';
import { median, timeMs } from './clock.ts';

const moves = 120;
const pxPerM = 240;

/** An eye far to the south; a metre is 240 pixels. */
const look: Look = {
  facing: [0, 0, 1],
  project: ([x, y]) => [480 + pxPerM * x, 700 - pxPerM * y, 9],
  sightAt: (x, y) => ({
    from: [(x - 480) / pxPerM, (700 - y) / pxPerM, 9],
    way: [0, 0, -1],
    facing: [0, 0, 1],
  }),
};

/** Markdown: milliseconds a move, for a new branch and for one drawn again. */
export function measureStroke(): string {
  const read = parseTreeFile(readFileSync('public/examples/old-fig-in-ground.json', 'utf8'));
  if (!read.ok) throw new Error(`measureStroke: ${read.reason}`);
  const { file } = read;
  const leaves = file.axes.reduce((sum, { foliage }) => sum + (foliage?.count ?? 0), 0);
  const trunk = file.axes[0]?.id ?? '';
  const start = startOn(file, trunk, look, 480, 560);
  const ask = { file, but: trunk, plane: start.plane, look, snapPx: 24 };
  const stroke: Xy[] = [[480, 560]];
  const [drawn, again]: [number[], number[]] = [[], []];
  for (let i = 1; i <= moves; i++) {
    stroke.push([480 + 150 * Math.sin(i / 70), 560 - 2 * i]);
    drawn.push(
      timeMs(() => {
        const course = courseOf(stroke, ask);
        if (course !== null) drawBranch(file, start, course.path);
      }),
    );
    again.push(timeMs(() => drawAgain(ask, stroke)));
  }
  return `A move while a branch is drawn on a tree of ${file.axes.length} branches and ${leaves} leaves: **${median(drawn).toFixed(2)} ms** in the median for a new branch, ${median(again).toFixed(2)} ms for one drawn again, the picture apart. Goal: 8 ms.`;
}
