/** What the jobs answer: the same shapes on the screen, in files and from the headless command. */
import type { LightParts } from '../light/lightParts.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import type { LeafSeason } from '../season/leafSeason.ts';
import type { Period } from '../season/site.ts';
import type { EnergyBasis } from './energyBasis.ts';

export interface MonthLight {
  /** 1 to 12. */
  readonly month: number;
  readonly lightFraction: number;
  readonly parMolM2Day: number;
}

export interface HourLight {
  /** Beginning of the hour in solar time, 0 to 23: the sun stands highest at 12. */
  readonly solarHour: number;
  readonly lightFraction: number;
  /** mol m-2 in the hour, mean of the days. */
  readonly parMolM2: number;
}

/** Two ways to say how much of the sky is seen; they differ, and each has its use. */
export interface SkyShares {
  /** By solid angle: every part of the half sphere alike. What leaves turned every way get of it. */
  readonly solidAngle: number;
  /** By solid angle times the sine of the altitude: what a level sensor gets of an evenly bright sky. */
  readonly cosine: number;
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
  /** The hours in which there is light; none in the first, coarse answer. */
  readonly byHour: readonly HourLight[];
  /** Hours of direct sun on a mean day of the period, clouds left out of account: mean over its nodes. */
  readonly sunHours: number;
  /** Share of the sky that is seen with nothing before it: mean over its nodes. */
  readonly openSky: SkyShares;
  /** Mean height of its nodes above the ground, metres. */
  readonly heightM: number;
}

/** A share of open sky at which the meaning of light changes. */
export interface Threshold {
  readonly share: number;
  /** Where the figure as given comes from. */
  readonly source: string;
  /** Whether the grower has set another figure in its place. */
  readonly isSet: boolean;
}

export interface LightThresholds {
  /** Below it a shoot sits in deep shade. */
  readonly deepShade: Threshold;
  /** Below it a shoot is not expected to set fruit. */
  readonly fruitingLight: Threshold;
  /** Above it more light adds little to a leaf. */
  readonly saturation: Threshold;
}

export interface LightReport {
  readonly format: 'boughlight-light';
  readonly version: 1;
  readonly period: Period;
  readonly weather: Weather;
  readonly sky: SkyKind;
  /** Only the hour of each day that begins at this solar time was asked for; null for the whole days. */
  readonly solarHour: number | null;
  readonly energy: EnergyBasis;
  /** When the tree is in leaf, and on how many days of the period it is not: light is traced in full leaf all the same. */
  readonly leafSeason: LeafSeason;
  /** How radiation was turned into PAR, mol per MJ of all wavelengths, and between what limits that figure is in print. */
  readonly parFactor: { readonly molPerMJ: number; readonly low: number; readonly high: number };
  /** Of the whole day, or of the hour. */
  readonly openSkyParMolM2Day: number;
  /** From the rise to the set of the sun's centre, mean of the days: the hours of direct sun in the open. */
  readonly dayLengthH: number;
  readonly thresholds: LightThresholds;
  readonly seed: number;
  /** Rays traced for the answer. */
  readonly rays: number;
  readonly shoots: readonly ShootLight[];
}

/** The light at one node. */
export interface NodeLight {
  readonly shootId: string;
  /** 1 at the base. */
  readonly node: number;
  readonly share: number;
}

/** All that is told of one node. */
export interface NodeFigures extends NodeLight {
  /** As those of its shoot. */
  readonly sunHours: number;
  readonly openSky: SkyShares;
  readonly heightM: number;
}

/** The light on one leaf, both faces, per one-sided area, as share of what a level sensor gets under open sky. */
export interface LeafLight {
  readonly shootId: string;
  /** Of the node that carries it. */
  readonly node: number;
  readonly share: number;
  readonly standardError: number;
}
