/** Leaf optics, by our code. */
import { figLight } from '../../../src/species/fig/light.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };

const { leafReflectance, leafTransmittance } = figLight;

export const leafoptics: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'leaf.absorptance': () => 1 - leafReflectance.value - leafTransmittance.value,
  },
};
