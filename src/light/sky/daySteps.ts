/** The steps in which a day's light is added up. */
/** Steps of 10 minutes of solar time (2.5 degrees of hour angle) from midnight. */
export const daySteps = 144;
export const stepDeg = 360 / daySteps;
export const hourSteps = daySteps / 24;

/** Hour angle of the middle of a step, degrees. */
export const hourAngleOfStep = (step: number): number => (step + 0.5) * stepDeg - 180;
