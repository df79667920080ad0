/** The choices of the branch form, in the grower's words. */
import { treeWords as words } from './words.ts';

const option = <T extends string>(value: T, text: string): { readonly value: T; readonly text: string } => ({
  value,
  text,
});

export const kindOptions = (['scaffold', 'lateral', 'shoot', 'sucker'] as const).map((k) =>
  option(k, words.kinds[k]),
);

export const conditionOptions = (['live', 'dead', 'diseased', 'damaged'] as const).map((c) =>
  option(c, words.conditions[c]),
);

/** Whether the number or the size of a shoot's leaves is known. */
export const leafSourceOptions = (of: 'count' | 'midrib') =>
  (['measured', 'estimated'] as const).map((source) => option(source, words.leafSources[of][source]));

/** Whether it carried figs on the day of the sketch. */
export const figOptions = (['yes', 'no'] as const).map((f) => option(f, words.figs[f]));

export const pinOptions = (['free', 'keep', 'remove'] as const).map((p) => option(p, words.pins[p]));
