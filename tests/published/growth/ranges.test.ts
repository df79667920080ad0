/**
 * Shoots, leaves and internodes against what growers and trials report. "Common practice" has no publication behind it: those
 * ranges are wide, and the model's figures are held to lie inside them, not to match.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import { planInputOf } from '../../../src/engine/planInput.ts';
import { growCanopy } from '../../../src/growth/growCanopy.ts';
import { blindNodes, shootForm } from '../../../src/growth/shootForm.ts';
import { figValues } from '../../../src/species/fig.ts';

const values = figValues({});
/** By then every shoot has all its leaves and they are full-grown: 20 leaves and 280 degree-days more. */
const autumnGdd8 = values.leafOutHeatGdd8 + 20 * values.phyllochronGdd8 + values.leafExpansionGdd8;
const median = (figures: readonly number[]): number =>
  figures.toSorted((a, b) => a - b)[Math.floor(figures.length / 2)] ?? Number.NaN;
/** The figures below the least or above the most. */
const outside = (figures: readonly number[], least: number, most: number): number[] =>
  figures.filter((figure) => !(figure >= least && figure <= most));

const text = readFileSync(
  new URL('../../../public/examples/potted-fig-bud-break.json', import.meta.url),
  'utf8',
);
const parsed = parseTreeFile(text);
if (!parsed.ok) throw new Error('the sample tree is good');
const { tree, stance } = planInputOf(parsed.file, {});

describe.each([1, 17, 240])('a potted fig with every bud kept, in autumn, seed %i', (seed) => {
  const canopy = growCanopy({ tree, stance, values, heatGdd8: autumnGdd8, seed, gone: new Set() });
  const leafCounts = canopy.shoots.map(
    ({ owner }) => canopy.leaves.filter((leaf) => leaf.owner === owner).length,
  );
  const lengthsCm = canopy.shoots.map(({ lengthM }) => 100 * lengthM);

  it('has 6 to 18 leaves on a shoot, about 11 (common practice for pots)', () => {
    expect(outside(leafCounts, 6, 18)).toEqual([]);
    expect(Math.abs(median(leafCounts) - 11)).toBeLessThanOrEqual(2);
  });

  it('has shoots of 15 to 100 cm, about 50 (common practice for pots)', () => {
    expect(outside(lengthsCm, 15, 100)).toEqual([]);
    expect(Math.abs(median(lengthsCm) - 50)).toBeLessThan(15);
  });

  it('has leaves of 150 to 550 cm2 (range of common practice about the equation of Ciencia Rural 44(7), 2014)', () => {
    expect(
      outside(
        canopy.leaves.map(({ areaM2 }) => 1e4 * areaM2),
        150,
        550,
      ),
    ).toEqual([]);
  });

  it('has 0.15 to 0.9 m2 of leaf on a shoot (Caetano et al. 2005: 0.258 where the yield was best; long cordon shoots 0.9)', () => {
    expect(
      outside(
        canopy.shoots.map(({ leafAreaM2 }) => leafAreaM2),
        0.15,
        0.9,
      ),
    ).toEqual([]);
  });
});

describe('shoots from weakest to strongest', () => {
  const [weak, balanced, strong] = [values.vigourLowest, 1, values.vigourHighest].map((vigour) =>
    shootForm(vigour, autumnGdd8, values),
  ) as [ReturnType<typeof shootForm>, ReturnType<typeof shootForm>, ReturnType<typeof shootForm>];

  it('begin in the shortest class of mature trees, 10 to 20 cm (Gerber, Steyn and Theron 2010, HortScience 45(9))', () => {
    expect(outside([100 * weak.lengthM], 10, 20)).toEqual([]);
  });

  it('end where cordon shoots do: 100 to 150 cm, 18 to 23 mm, 12 to 24 leaves (Aichi 1995)', () => {
    expect(outside([100 * strong.lengthM], 100, 150)).toEqual([]);
    expect(outside([1000 * strong.baseDiameterM], 18, 23)).toEqual([]);
    expect(outside([strong.leafCount], 12, 24)).toEqual([]);
  });

  it('have internodes of 1.5 to 3 cm, 5 to 7.5 cm and 7.5 to 20 cm in the middle (common practice)', () => {
    expect(outside([100 * weak.internodeM], 1.5, 3)).toEqual([]);
    expect(outside([100 * balanced.internodeM], 5, 7.5)).toEqual([]);
    expect(outside([100 * strong.internodeM], 7.5, 20)).toEqual([]);
  });

  it('close up at the tip to 0.5 to 3 cm on balanced wood (common practice), so that 10 cm hold several nodes', () => {
    const tips = balanced.nodesM.slice(-2) as [number, number];
    expect(outside([100 * (tips[1] - tips[0])], 0.5, 3)).toEqual([]);
    expect(balanced.nodesM.filter((atM) => atM > balanced.lengthM - 0.1).length).toBeGreaterThanOrEqual(3);
  });

  it('bear blind nodes where over-vigorous (direction after Hosomi, Miwa and Mano 2013)', () => {
    expect(blindNodes(strong, values)).toBeGreaterThan(blindNodes(balanced, values));
    expect(blindNodes(weak, values)).toBe(blindNodes(balanced, values));
  });
});
