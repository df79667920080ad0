/**
 * Parts of a whole, rounded so that they add up to the whole as it is rounded: each down, and what is then missing given, a step each,
 * to those that lost most (largest remainder). None is off by a whole step.
 */
export function roundedParts(parts: readonly number[], decimals: number): number[] {
  const step = 10 ** decimals;
  const steps = parts.map((part) => Math.floor(part * step + 1e-9));
  const lost = parts.map((part, i) => part * step - (steps[i] as number));
  const whole = Math.round(parts.reduce((sum, part) => sum + part, 0) * step);
  const missing = whole - steps.reduce((sum, part) => sum + part, 0);
  const given = new Set(
    [...parts.keys()].sort((a, b) => (lost[b] as number) - (lost[a] as number)).slice(0, missing),
  );
  return steps.map((part, i) => (part + (given.has(i) ? 1 : 0)) / step);
}
