import { describe, expect, it } from 'vitest';
import { figsLostBy, whyFewer } from '../../src/plan/fewerFigs.ts';

const steps = [
  { step: 'before the cuts', ripeFigs: 41.3 },
  { step: 'suckers', ripeFigs: 37.1 },
  { step: 'crossing', ripeFigs: 29.8 },
  { step: 'crowding', ripeFigs: 31.2 },
];

describe('why a plan ripens fewer figs', () => {
  it('names the steps that cost figs, the dearest first', () => {
    expect(figsLostBy(steps).map(({ step }) => step)).toEqual(['crossing', 'suckers']);
    expect(whyFewer(figsLostBy(steps))).toMatch(/^What costs figs: crossing .* \(7\); suckers, .* \(4\)\./);
  });

  it('speaks of limits where no step costs any', () => {
    expect(whyFewer(figsLostBy(steps.slice(2)))).toContain('limits');
  });
});
