/** What the light of an answer was made from, in a sentence. */
import type { EnergyBasis } from '../engine/energyBasis.ts';

const months: Readonly<Record<string, string>> = {
  measured: 'of each month, as measured',
  published: 'of each month, as published',
  guess: 'of each month, which are a guess: put in figures of the place',
};

export function energyWords({ basis, source }: EnergyBasis): string {
  if (basis === 'hourly') return `Weather: mean hours of ${source}.`;
  if (basis === 'clear sky') return `Weather: every day without a cloud (${source}).`;
  const figures = basis === 'sunshine' ? 'hours of sunshine' : 'clearness figures';
  return `Weather: from ${figures} ${months[source] ?? source}.`;
}
