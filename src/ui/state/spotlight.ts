/** Which shoots are looked for on the stage: those between two shares of open sky, or between two heights. */
export interface Spotlight {
  readonly by: 'light' | 'height';
  /** Shares of open sky, or metres above the ground: `from` included, `to` not. */
  readonly from: number;
  readonly to: number;
}

export const isSameSpotlight = (one: Spotlight | null, other: Spotlight): boolean =>
  one !== null && one.by === other.by && one.from === other.from && one.to === other.to;

/**
 * Ids of the shoots it falls on. A shoot whose figure is not known is not among them.
 * @param lightOf share of open sky by id, and heightOf metres above the ground by id
 */
export function spotlitShoots(
  { by, from, to }: Spotlight,
  lightOf: ReadonlyMap<string, number>,
  heightOf: ReadonlyMap<string, number>,
): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [id, value] of by === 'light' ? lightOf : heightOf) {
    if (value >= from && value < to) found.add(id);
  }
  return found;
}

/** Heights of the shoots by id, for `spotlitShoots`. */
export const heightsIn = (
  shoots: readonly { readonly id: string; readonly heightM: number }[],
): ReadonlyMap<string, number> => new Map(shoots.map(({ id, heightM }) => [id, heightM]));
