/** That light was asked for when the tree has no leaves. */
import type { LeafSeason } from '../season/leafSeason.ts';

export function leafWords({ from, to, daysOutside }: LeafSeason): readonly string[] {
  if (daysOutside === 0) return [];
  const days = daysOutside === 1 ? 'On 1 day' : `On ${daysOutside} days`;
  return [
    `${days} of this time the tree is taken to be bare (in leaf from ${from} to ${to}), but the light is told as if all its leaves hung: it is lighter then.`,
  ];
}
