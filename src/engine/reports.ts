/** What the jobs answer: the same shapes on the screen, in files and from the headless command. */
import type { LightParts } from '../light/lightParts.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import type { Period } from '../season/site.ts';

export interface MonthLight {
  /** 1 to 12. */
  readonly month: number;
  readonly lightFraction: number;
  readonly parMolM2Day: number;
}

export interface ShootLight {
  /** Id of the axis, or of the bud it grows from. */
  readonly id: string;
  readonly name: string;
  /** Mean over the nodes of the level-sensor light, as share of open sky; over the period. */
  readonly lightFraction: number;
  readonly standardError: number;
  readonly parMolM2Day: number;
  /** By the way it came; they add up to `lightFraction`. */
  readonly parts: LightParts;
  /** Light on the leaves (both faces, per one-sided leaf area) as share of what a level sensor gets under open sky. */
  readonly leafLightFraction: number;
  /** By the way it came; they add up to `leafLightFraction`. */
  readonly leafParts: LightParts;
  readonly byMonth: readonly MonthLight[];
}

export interface LightReport {
  readonly format: 'boughlight-light';
  readonly version: 1;
  readonly period: Period;
  readonly weather: Weather;
  readonly sky: SkyKind;
  readonly openSkyParMolM2Day: number;
  readonly seed: number;
  /** Rays traced for the answer. */
  readonly rays: number;
  readonly shoots: readonly ShootLight[];
}

/** The light at one node, for the stage. */
export interface NodeLight {
  readonly shootId: string;
  readonly node: number;
  readonly share: number;
}
