import type { Parameter } from '../parameter.ts';
import { figLeaf } from './leaf.ts';
import { figShoot } from './shoot.ts';
import { figVigour } from './vigour.ts';

/** Figures of the fig that the room `growth` reads. */
export const figGrowth = { ...figShoot, ...figVigour, ...figLeaf } as const satisfies Record<
  string,
  Parameter
>;
