import { describe, expect, test } from 'vitest';
import { clockHourAngleRad } from '../../../src/season/extraterrestrial.ts';
import { checkCases } from '../checkCases.ts';
import { radiation } from './answers.ts';

describe('radiation against published values', () => {
  checkCases(radiation);

  test('the longitude of a place west of its zone makes its solar time late, not early', () => {
    expect(clockHourAngleRad(12, -16.25, -15, 274)).toBeLessThan(clockHourAngleRad(12, -15, -15, 274));
  });
});
