import type { Parameter } from '../parameter.ts';
import { figBearing } from './bearing.ts';
import { figFaults } from './faults.ts';
import { figWork } from './work.ts';

/** Figures of the fig that the room `plan` reads. */
export const figPlan = { ...figBearing, ...figFaults, ...figWork } as const satisfies Record<
  string,
  Parameter
>;
