import { describe, expect, it } from 'vitest';
import type { LightOptions } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { sampleFile } from '../document/sampleFiles.ts';

const engine = createInPlaceEngine();
const whip = sampleFile('young-whip');
const shootsOf = async (options: LightOptions) => (await engine.light(whip, options).result).report.shoots;

describe('the seeds of a tree with buds', () => {
  it('of the rays leave the crown alone: the truth lies within three printed errors of nearly all answers, seeds 1 to 8', async () => {
    const truth = await shootsOf({ waves: 48, seed: 777 });
    let [within, count] = [0, 0];
    for (let seed = 1; seed <= 8; seed++) {
      for (const [s, { lightFraction, standardError }] of (await shootsOf({ waves: 4, seed })).entries()) {
        const whole = truth[s];
        if (whole === undefined) throw new Error(`shoot ${s} is not in the crown`);
        const doubt = Math.hypot(standardError, whole.standardError);
        if (Math.abs(lightFraction - whole.lightFraction) <= 3 * doubt) within++;
        count++;
      }
    }
    // Student's t with 3 degrees of freedom: 94 % within three.
    expect(within / count).toBeGreaterThan(0.9);
  }, 60_000);

  it('of the leaves draw another crown', async () => {
    const [one, other] = [await shootsOf({ waves: 4 }), await shootsOf({ waves: 4, leafSeed: 2 })];
    const apart = one.map(({ lightFraction }, s) => Math.abs(lightFraction - (other[s]?.lightFraction ?? 0)));
    expect(Math.max(...apart)).toBeGreaterThan(0.02);
  });
});
