/** All chance in the old fig comes from this. */
export const oldSeed = 2307;
