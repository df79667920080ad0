import { describe, expect, it } from 'vitest';
import { quantities } from '../../../src/ui/fields/quantities.ts';

const { wood, site, bearing, percent, count, thickness, coordinate } = quantities;

describe('a number field', () => {
  it.each([
    ['34', 0.34],
    ['34,5', 0.345],
    ['34.5', 0.345],
    [',5', 0.005],
    ['.5', 0.005],
    ['34 cm', 0.34],
    ['345mm', 0.345],
    ['1,2 m', 1.2],
    ['13 in', 0.3302],
    ['1\'6"', 0.4572],
    ['1 500', 15],
    ['١٢٫٥', 0.125],
    ['۳۴', 0.34],
  ])('reads %s as a length of wood in metres', (text, metres) => {
    expect(wood.read(text, 'metric')).toBeCloseTo(metres, 9);
  });

  it.each(['', 'long', '1.2.3', '12 apples', '--3', '1e3'])('refuses %j', (text) => {
    expect(wood.read(text, 'metric')).toBeNull();
    expect(bearing.read(text, 'metric')).toBeNull();
  });

  it('takes a bare number in the unit shown beside it', () => {
    expect(wood.read('10', 'us')).toBeCloseTo(0.254, 9);
    expect(wood.unit('us')).toBe('in');
    expect(site.read('10', 'us')).toBeCloseTo(3.048, 9);
    expect(site.unit('metric')).toBe('m');
    expect(thickness.read('21', 'metric')).toBeCloseTo(0.021, 9);
  });

  it('reads back what it writes, within what it shows', () => {
    for (const metres of [0.0071, 0.213, 0.9047, 3.317]) {
      for (const units of ['metric', 'us'] as const) {
        expect(Math.abs((wood.read(wood.write(metres, units), units) ?? 0) - metres)).toBeLessThan(6e-4);
      }
    }
  });

  it('writes no idle zeros and no minus before nothing', () => {
    expect(wood.write(0.34, 'metric')).toBe('34');
    expect(wood.write(0.3, 'metric')).toBe('30');
    expect(coordinate.write(-0.0001, 'metric')).toBe('0');
    expect(count.write(10, 'metric')).toBe('10');
    expect(percent.write(0.17, 'metric')).toBe('17');
  });

  it('takes a share in percent', () => {
    expect(percent.read('17 %', 'metric')).toBeCloseTo(0.17, 9);
    expect(bearing.read('213°', 'metric')).toBe(213);
  });

  it('takes temperatures in the unit on show, or in the one that is written', () => {
    const { temperature } = quantities;
    expect(temperature.read('-3,5', 'metric')).toBe(-3.5);
    expect(temperature.read('14', 'us')).toBe(-10);
    expect(temperature.read('21 °C', 'us')).toBe(21);
    expect(temperature.read('50 F', 'metric')).toBe(10);
    expect(temperature.write(-40, 'us')).toBe('-40');
    expect(temperature.write(21.5, 'us')).toBe('70.7');
    expect(temperature.read('warm', 'us')).toBeNull();
  });
});
