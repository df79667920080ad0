/** How buds follow each other round the wood of a sketch. */
import { figParameters } from '../species/fig.ts';

/** Turn from one bud to the next, degrees. */
export const divergenceDeg: number = figParameters.divergenceDeg.value;
