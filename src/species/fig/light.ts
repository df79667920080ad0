import type { Parameter } from '../parameter.ts';

const source =
  'What leaves do not absorb: Bjorkman and Demmig 1987, Planta 170:489, absorptance 0.838 +- 0.006 over 37 species with C3 leaves; its split into thrown back and passed is common practice (0.08 to 0.10 and 0.05 to 0.07)';

/** Figures of the fig that the room `light` reads. */
export const figLight = {
  leafReflectance: {
    name: 'Share of PAR thrown back by a leaf',
    value: 0.09,
    min: 0.05,
    max: 0.13,
    unit: 'share of light',
    source,
    confidence: 'medium',
    adjustable: true,
    note: 'No measurement on fig leaves was found.',
  },
  leafTransmittance: {
    name: 'Share of PAR that passes through a leaf',
    value: 0.07,
    min: 0.03,
    max: 0.1,
    unit: 'share of light',
    source,
    confidence: 'medium',
    adjustable: true,
    note: 'No measurement on fig leaves was found.',
  },
} as const satisfies Record<string, Parameter>;
