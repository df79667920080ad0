import type { Parameter } from '../parameter.ts';

/** Figures of the fig that the room `light` reads. */
export const figLight = {} as const satisfies Record<string, Parameter>;
