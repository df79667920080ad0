import type { Parameter } from '../parameter.ts';

/** Figures of the fig that the room `growth` reads. */
export const figGrowth = {} as const satisfies Record<string, Parameter>;
