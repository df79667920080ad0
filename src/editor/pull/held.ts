/** Figures of a branch that the grower has locked: a pull leaves them as they are. */

export const heldNames = ['side', 'upright', 'length', 'thickness'] as const;
export type HeldName = (typeof heldNames)[number];
export type Held = ReadonlySet<HeldName>;
