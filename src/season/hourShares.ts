/** How a day's light is spread over its hours, from the hour angle and that of sunset alone (both radians). */

/** The part both shares have: 0 at sunset, largest at noon. */
function shape(hourAngleRad: number, sunsetRad: number): number {
  if (!(Number.isFinite(hourAngleRad) && sunsetRad >= 0 && sunsetRad <= Math.PI)) {
    throw new Error(
      `hourShare: a finite hour angle and a sunset of 0 to pi are needed, got ${hourAngleRad} and ${sunsetRad}`,
    );
  }
  if (sunsetRad === 0 || Math.abs(hourAngleRad) >= sunsetRad) return 0;
  return (
    ((Math.PI / 24) * (Math.cos(hourAngleRad) - Math.cos(sunsetRad))) /
    (Math.sin(sunsetRad) - sunsetRad * Math.cos(sunsetRad))
  );
}

/** Share of the day's **diffuse** light per hour, Liu & Jordan 1960 (Solar Energy 4(3):1). Its integral over the day is 1. */
export const diffuseShareAt = (hourAngleRad: number, sunsetRad: number): number =>
  shape(hourAngleRad, sunsetRad);

/**
 * Share of the day's **global** radiation per hour, Collares-Pereira & Rabl 1979 (Solar Energy 22:155). Its integral is not quite
 * 1 (a few thousandths off): whoever spreads a day with it divides by the sum.
 */
export function globalShareAt(hourAngleRad: number, sunsetRad: number): number {
  const a = 0.409 + 0.5016 * Math.sin(sunsetRad - Math.PI / 3);
  const b = 0.6609 - 0.4767 * Math.sin(sunsetRad - Math.PI / 3);
  return (a + b * Math.cos(hourAngleRad)) * shape(hourAngleRad, sunsetRad);
}
