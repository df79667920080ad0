/** What can be looked at, on the sample trees: what the answers owe to one another. */
import { MessageChannel } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { Cancelled } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { Port } from '../../src/engine/messages.ts';
import { createRemoteEngine } from '../../src/engine/remoteEngine.ts';
import { serve } from '../../src/engine/serve.ts';
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

describe('what stands round the tree', () => {
  const line = (from: [number, number], to: [number, number]) => ({
    from,
    to,
    heightM: 2.7,
    thicknessM: 0.3,
  });
  const around: TreeFile['site']['surroundings'] = [
    { kind: 'wall', name: 'South wall', ...line([-9, -4], [9, -4]), reflectance: 0.2 },
    { kind: 'fence', name: 'East fence', ...line([4, -9], [4, 9]), openFraction: 0.5 },
    { kind: 'hedge', name: 'West hedge', ...line([-4, -9], [-4, 9]), leafAreaDensityM2M3: 2 },
    { kind: 'box', name: 'Shed', centre: [0, 5], sizeM: [6, 2, 2.9], turnedDeg: 0, reflectance: 0.1 },
    {
      kind: 'crown',
      name: 'Pear',
      centre: [-2, 2],
      centreHeightM: 4,
      halfSizeM: [1, 1, 1],
      leafAreaDensityM2M3: 0.4,
    },
  ];
  const points = [
    { bearingDeg: 10, heightDeg: 3 },
    { bearingDeg: 45, heightDeg: 60 },
    { bearingDeg: 80, heightDeg: 3 },
  ];
  const skyline = { reflectance: 0.1, points };
  const centred = { ...whip, standing: { ...whip.standing, at: [0, 0] as [number, number] } };
  const enclosed = { ...centred, site: { ...whip.site, surroundings: around, skyline } };

  it('is named in the sky of a node, nearest first, with a skyline behind it all', async () => {
    const { nodes } = await engine.look(whip, { ask: 'day', date: '2026-11-02' }, { waves: 1 }).result;
    const [sunniest] = [...nodes].sort((a, b) => b.sunHours - a.sunHours);
    const { shootId, node } = sunniest as (typeof nodes)[number];
    const answer = await engine.look(enclosed, { ask: 'sky', shootId, node, size: 64 }).result;
    const kinds = answer.things.map(({ kind }) => kind);
    expect(kinds).toEqual(
      expect.arrayContaining(['sky', 'leaf', 'wall', 'fence', 'hedge', 'box', 'crown', 'skyline']),
    );
    expect(answer.things).toContainEqual({ kind: 'box', name: 'Shed' });
    const rowsOf = (name: string) =>
      Array.from(answer.first.entries())
        .filter(([, thing]) => JSON.stringify(answer.things[thing])?.includes(name))
        .map(([dot]) => Math.floor(dot / 64));
    expect(rowsOf('Shed').length).toBeGreaterThan(9);
    expect(Math.max(...rowsOf('Shed'))).toBeLessThan(32);
    expect(Math.min(...rowsOf('South wall'))).toBeGreaterThan(31);
    const bare = await engine.look(
      { ...centred, site: { ...whip.site, surroundings: [] } },
      { ask: 'sky', shootId, node, size: 64 },
    ).result;
    expect(answer.open.solidAngle).toBeLessThan(bare.open.solidAngle);
  });

  it('shortens the sun, but for a fence by what it lets through', async () => {
    const date = '2026-12-09';
    const free = { ...centred, site: { ...whip.site, surroundings: [] } };
    const fenced = { ...centred, site: { ...whip.site, surroundings: [around[1] as (typeof around)[0]] } };
    const hours = async (file: TreeFile) =>
      (await engine.look(file, { ask: 'day', date }, { waves: 1 }).result).report.shoots.map(
        (s) => s.sunHours,
      );
    const [open, some, little] = [await hours(free), await hours(fenced), await hours(enclosed)];
    open.forEach((sunHours, s) => {
      expect(some[s]).toBeLessThanOrEqual(sunHours);
      expect(little[s]).toBeLessThanOrEqual(some[s] as number);
    });
    const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
    expect(sum(some)).toBeLessThan(sum(open));
    expect(sum(some)).toBeGreaterThan(sum(little));
  });
});

describe('a pot that is turned', () => {
  it('is looked at as it stands on the day', async () => {
    const { quarterTurnEveryWeeks: _, ...standing } = fig.standing;
    const ask = 'day';
    const date = '2026-07-02';
    const days = (from: string) => (Date.parse(date) - Date.parse(from)) / 86_400_000;
    const weeks = 3;
    const turns = Math.floor(days(fig.season.budBreakOn) / (7 * weeks)) % 4;
    expect(turns).toBeGreaterThan(0);
    const turned = { ...fig, standing: { ...standing, quarterTurnEveryWeeks: weeks } };
    const set = { ...fig, standing: { ...standing, turnedDeg: (standing.turnedDeg + 90 * turns) % 360 } };
    const [a, b, c] = [
      await engine.look(turned, { ask, date }, { waves: 1 }).result,
      await engine.look(set, { ask, date }, { waves: 1 }).result,
      await engine.look(fig, { ask, date }, { waves: 1 }).result,
    ];
    expect(a.report.shoots).toEqual(b.report.shoots);
    expect(a.report.shoots).not.toEqual(c.report.shoots);
  });
});

describe('a look across a port', () => {
  it('is the same as here, and can be cancelled', async () => {
    const { port1, port2 } = new MessageChannel();
    serve(port2 as unknown as Port, createInPlaceEngine());
    const remote = createRemoteEngine(port1 as unknown as Port, () => {});
    const question = { ask: 'day', date: '2026-11-02' } as const;
    const there = await remote.look(whip, question).result;
    expect(there).toEqual(await engine.look(whip, question).result);
    expect(there.nodes[0]?.sunlit).toBeInstanceOf(Float32Array);
    const running = remote.look(fig, question, { waves: 400 }, () => running.cancel());
    await expect(running.result).rejects.toBeInstanceOf(Cancelled);
    port1.close();
  });
});
