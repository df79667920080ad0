import type { Parameter } from '../parameter.ts';

/** Figures of the fig that the room `plan` reads. */
export const figPlan = {} as const satisfies Record<string, Parameter>;
