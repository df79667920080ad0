import type { Parameter } from '../parameter.ts';

/** Figures of the fig that the room `season` reads. */
export const figSeason = {} as const satisfies Record<string, Parameter>;
