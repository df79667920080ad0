/** What can be looked at, on the sample trees: what the answers owe to one another. */
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { exampleText } from '../cli/stand.ts';

function sample(name: string): TreeFile {
  const read = parseTreeFile(exampleText(name));
  if (!read.ok) throw new Error(`sample: ${name} is refused, got ${read.reason}`);
  return read.file;
}

const whip = sample('young-whip');
const fig = sample('potted-fig-in-leaf');
const engine = createInPlaceEngine();

describe('the strip of a day', () => {
  it('has the hours of sun and the light of each node, and their means for each shoot', async () => {
    const { report, nodes } = await engine.look(whip, { ask: 'day', date: '2026-08-03' }).result;
    expect(report.shoots.length).toBeGreaterThan(0);
    for (const shoot of report.shoots) {
      const own = nodes.filter(({ shootId }) => shootId === shoot.id);
      const mean = (of: (node: (typeof own)[number]) => number) =>
        own.reduce((sum, node) => sum + of(node), 0) / own.length;
      expect(own.length).toBeGreaterThan(0);
      expect(shoot.sunHours).toBeCloseTo(
        mean(({ sunHours }) => sunHours),
        9,
      );
      expect(shoot.parMolM2[31]).toBeCloseTo(
        mean(({ parMolM2 }) => parMolM2[31] as number),
        9,
      );
      const hours = report.steps.reduce(
        (sum, step, s) => sum + step.sunHours * (shoot.sunlit[s] as number),
        0,
      );
      expect(shoot.sunHours).toBeCloseTo(hours, 6);
      expect(shoot.parMolM2Day).toBeLessThan(report.openParMolM2Day);
    }
    expect(report.steps.reduce((sum, { sunHours }) => sum + sunHours, 0)).toBeCloseTo(report.dayLengthH, 9);
  });
});

describe('the sky from a node', () => {
  it('names what is met first and tells the shares of the open sky', async () => {
    const shootId = 'se-b1-shoot';
    const answer = await engine.look(fig, { ask: 'sky', shootId, node: 3, size: 48 }).result;
    expect(answer.things[0]).toEqual({ kind: 'sky' });
    expect(answer.things).toContainEqual({ kind: 'wall', name: 'House wall' });
    const inCircle = answer.first.filter((thing) => thing >= 0).length;
    expect(inCircle / 48 ** 2).toBeCloseTo(Math.PI / 4, 2);
    const skyDots = answer.first.filter((thing) => thing === 0).length;
    expect(skyDots).toBeGreaterThan(0);
    expect(answer.open.solidAngle).toBeGreaterThan(0);
    expect(answer.light.cosine).toBeGreaterThan(answer.open.cosine);
  });

  it('refuses a shoot and a node that are not there', async () => {
    await expect(engine.look(fig, { ask: 'sky', shootId: 'no-such', node: 1 }).result).rejects.toThrow(
      'no-such',
    );
    await expect(engine.look(fig, { ask: 'sky', shootId: 'se-b1-shoot', node: 99 }).result).rejects.toThrow(
      'has no node 99',
    );
  });
});
