import { describe, expect, it } from 'vitest';
import { createTimeWork, type ShownTime, weighedAt } from '../../../src/ui/state/timeWork.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { lightAnswer, standInEngine } from './standIn.ts';

const june: ShownTime = { by: 'month', month: 6 };
const noon: ShownTime = { by: 'hour', solarHour: 12 };

describe('the light of a month or an hour', () => {
  it('is weighed over the calendar days of the month, and once', async () => {
    const { engine, lights } = standInEngine();
    const work = createTimeWork(engine);
    const season = lightAnswer(7);
    work.weigh(smallTree, season, june);
    work.weigh(smallTree, season, june);
    expect(lights).toHaveLength(1);
    expect(lights[0]?.options).toEqual({ period: { from: '2030-06-01', to: '2030-06-30' } });
    expect(weighedAt(work.store.getState(), season, june)).toBeNull();
    await lights[0]?.answer(lightAnswer(8));
    expect(weighedAt(work.store.getState(), season, june)?.report.seed).toBe(8);
    work.weigh(smallTree, season, june);
    expect(lights).toHaveLength(1);
  });

  it('is weighed for one hour of every day of the season', async () => {
    const { engine, lights } = standInEngine();
    const work = createTimeWork(engine);
    const season = lightAnswer(7);
    work.weigh(smallTree, season, noon);
    work.weigh(smallTree, season, june);
    expect(lights[0]?.options).toEqual({ solarHour: 12 });
    await lights[1]?.answer(lightAnswer(9));
    await lights[0]?.answer(lightAnswer(8));
    expect(weighedAt(work.store.getState(), season, noon)?.report.seed).toBe(8);
    expect(weighedAt(work.store.getState(), season, june)?.report.seed).toBe(9);
    expect(weighedAt(work.store.getState(), season, null)).toBeNull();
  });

  it('belongs to one answer: with the next it is asked for again', async () => {
    const { engine, lights } = standInEngine();
    const work = createTimeWork(engine);
    const [season, next] = [lightAnswer(7), lightAnswer(17)];
    work.weigh(smallTree, season, june);
    await lights[0]?.answer(lightAnswer(8));
    expect(weighedAt(work.store.getState(), next, june)).toBeNull();
    work.weigh(smallTree, next, june);
    await lights[1]?.answer(lightAnswer(18));
    expect(weighedAt(work.store.getState(), next, june)?.report.seed).toBe(18);
  });

  it('is left out for a month that the season does not touch, and can be asked for again after a failure', async () => {
    const { engine, lights } = standInEngine();
    const work = createTimeWork(engine);
    const season = lightAnswer(7);
    work.weigh(smallTree, season, { by: 'month', month: 1 });
    expect(lights).toHaveLength(0);
    work.weigh(smallTree, season, noon);
    await lights[0]?.fail('no more memory');
    work.weigh(smallTree, season, noon);
    expect(lights).toHaveLength(2);
  });
});
