import { describe, expect, it } from 'vitest';
import { briefPiece, briefPlace, briefReason, stepTitle } from '../../src/plan/briefWords.ts';
import { crowding, sampleCut, samplePlace } from '../ui/work/sampleCut.ts';

describe('a cut in few words', () => {
  it('is found on its branch with a tape, in either units', () => {
    expect(briefPlace(samplePlace(), 'metric')).toBe('35 cm out, north side');
    expect(briefPlace(samplePlace({ face: 'lower side' }), 'us')).toBe('13 1/2 in out, lower side');
    expect(briefPlace(samplePlace({ forksFrom: null }), 'metric')).toBe('35 cm up, north side');
    expect(briefPlace(samplePlace({ forksFrom: null, fromForkM: 0 }), 'metric')).toBe('from the soil');
  });

  it('names what goes without saying its branch twice', () => {
    const piece = (given: Parameters<typeof sampleCut>[2], kind?: Parameters<typeof sampleCut>[3]) =>
      briefPiece(sampleCut('x', crowding, given, kind), 'metric');
    expect(piece({})).toBe('Bud 35 cm out, north side');
    expect(piece({ piece: 'shoot from this bud' })).toBe('Shoot from the bud 35 cm out, north side');
    expect(piece({ piece: 'East limb, shoot 3' }, 'remove')).toBe('Shoot 3, 35 cm out, north side');
    expect(piece({ piece: 'Old lateral' }, 'remove')).toBe('Old lateral, 35 cm out, north side');
    expect(piece({}, 'tip')).toBe('Tip, cut 35 cm out, north side');
    expect(piece({}, 'remove')).toBe('All beyond 35 cm out, north side');
  });

  it('tells what step and which pass a cut is of', () => {
    const bud = sampleCut('b', crowding);
    expect(stepTitle(bud)).toBe('Buds to rub off');
    expect(stepTitle({ ...bud, pass: 1 })).toBe('Buds to rub off: sure now');
    expect(stepTitle({ ...bud, pass: 2 })).toBe('Buds to rub off: look again');
    expect(stepTitle(sampleCut('s', crowding, {}, 'remove'))).toBe('Shoots to thin');
    expect(stepTitle(sampleCut('s', { rule: 'dead' }, {}, 'remove'))).toBe('Dead and sick wood');
  });

  it('weighs what it bears against what it costs', () => {
    expect(briefReason(crowding, 'metric')).toBe('Kept, it ripens about 0.6 and costs the others 0.9.');
    const poor = { ...crowding, figsIfKept: 0.02, figsForOthers: 0.01 };
    expect(briefReason(poor, 'metric')).toBe('Kept, it ripens hardly a fig, in 23 % of open sky.');
    expect(briefReason({ rule: 'dead' }, 'metric')).toBe('The wood is dead.');
  });
});
