import { describe, expect, it } from 'vitest';
import { heightsBetween } from '../../../src/ui/stage/seeInside.ts';

describe('heightsBetween', () => {
  it('is nothing at both ends of the tree', () => {
    expect(heightsBetween('from', [0, 2.35], 2.35)).toBeNull();
    expect(heightsBetween('to', [0, 2.4], 2.35)).toBeNull();
  });

  it('keeps the other end while one is moved', () => {
    expect(heightsBetween('from', [0.4, 2.35], 2.35)).toEqual([0.4, 2.35]);
    expect(heightsBetween('to', [0, 1.1], 2.35)).toEqual([0, 1.1]);
  });

  it('pushes the other end rather than crossing it', () => {
    expect(heightsBetween('from', [1.5, 1.1], 2.35)).toEqual([1.5, 1.5]);
    expect(heightsBetween('to', [0.9, 0.3], 2.35)).toEqual([0.3, 0.3]);
  });
});
