/** What can be looked at: questions to a tree in leaf, and their answers. */
import type { Surrounding } from '../document/treeFile.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { LeafSeason } from '../season/leafSeason.ts';
import type { IsoDate } from '../season/site.ts';
import type { EnergyBasis } from './energyBasis.ts';
import type { SkyShares } from './reports.ts';

export interface DayQuestion {
  /** The sun and the shade of one day, every ten minutes. */
  readonly ask: 'day';
  readonly date: IsoDate;
  /** Default normal. It changes the amounts of light, not the shade. */
  readonly weather?: Weather;
}

export interface SkyQuestion {
  /** The sky as it is seen from one node. */
  readonly ask: 'sky';
  readonly shootId: string;
  /** 1 at the base of the shoot. */
  readonly node: number;
  /** Dots of the picture each way, 2 to 1024; default 96. */
  readonly size?: number;
}

export type LookQuestion = DayQuestion | SkyQuestion;

export interface LookOptions {
  /** As for the light. Default 1. */
  readonly seed?: number;
  readonly leafSeed?: number;
  /** Waves of rays for the light of the sky in a day; default 4. */
  readonly waves?: number;
}

/** Ten minutes of solar time in which the sun is up. */
export interface DayStep {
  /** Solar time of its middle, hours: the sun stands highest at 12. */
  readonly solarHour: number;
  /** The same moment by the clock of the place, HH:MM. */
  readonly clock: string;
  readonly instantMs: number;
  /** Where the sun stands then, degrees; true altitude. */
  readonly bearingDeg: number;
  readonly altitudeDeg: number;
  /** How long the sun is up in the step, hours: a sixth, but less at its rise and set. */
  readonly sunHours: number;
  /** On a level under open sky, mol m-2 in the step. */
  readonly openParMolM2: number;
}

export interface DayShoot {
  readonly id: string;
  readonly name: string;
  /** Hours of direct sun, mean over its nodes. */
  readonly sunHours: number;
  /** Light of the day, mean over its nodes. */
  readonly parMolM2Day: number;
  /** Share of its nodes in direct sun, per step. */
  readonly sunlit: readonly number[];
  /** PAR, mol m-2 in the step, mean over its nodes; per step. */
  readonly parMolM2: readonly number[];
}

/**
 * The strip of a day: when the sun falls on what. The leaves are those of the light report, at full leaf. Shade is of a sun that is a
 * point, traced where it stands in each step.
 */
export interface DayReport {
  readonly format: 'boughlight-day';
  readonly version: 1;
  readonly date: IsoDate;
  readonly weather: Weather;
  readonly energy: EnergyBasis;
  /** As of the light's report; `daysOutside` is 1 on a day without leaves. */
  readonly leafSeason: LeafSeason;
  /** IANA name; of the clock times. */
  readonly timeZone: string;
  readonly seed: number;
  /** From the rise to the set of the sun's centre: the hours of direct sun in the open. */
  readonly dayLengthH: number;
  readonly openParMolM2Day: number;
  readonly steps: readonly DayStep[];
  readonly shoots: readonly DayShoot[];
}

export interface DayNode {
  readonly shootId: string;
  /** 1 at the base. */
  readonly node: number;
  readonly sunHours: number;
  readonly parMolM2Day: number;
  /** Per step: 1 in direct sun, 0 in shade, between them behind a crown with gaps, say. */
  readonly sunlit: Float32Array;
  /** PAR, mol m-2 in the step. */
  readonly parMolM2: Float32Array;
}

export interface DayAnswer {
  readonly report: DayReport;
  readonly nodes: readonly DayNode[];
}

/** What a ray to the sky can meet. */
export type SkyThing =
  | { readonly kind: 'sky' }
  | { readonly kind: 'leaf' | 'wood'; readonly id: string; readonly name: string }
  /** A skyline is what stands far off, a slope the ground itself where it rises. */
  | { readonly kind: 'pot' | 'skyline' | 'slope' | Surrounding['kind']; readonly name: string };

/**
 * The sky over a node as a round picture: equidistant zenith projection, the zenith in the middle, the horizon the rim, **north at the
 * top and east on the right**, as on a map (`skyPlace` and `directionAtPlace`).
 */
export interface SkyAnswer {
  readonly shootId: string;
  readonly name: string;
  readonly node: number;
  /** Where the node is, metres east, up and south. */
  readonly point: Vec3;
  /** Dots each way. */
  readonly size: number;
  /** Entry 0 is the open sky. */
  readonly things: readonly SkyThing[];
  /** Per dot, row by row from the north, each from the west: the thing that is met first, as index; -1 outside the circle. */
  readonly first: Int16Array;
  /** Per dot: share of the light that gets through all that stands there; 0 outside the circle. */
  readonly passed: Float32Array;
  /** Nothing before it; through a crown with gaps, the share of the gaps. */
  readonly open: SkyShares;
  /** With what leaves let through and scatter on. */
  readonly light: SkyShares;
}

export interface LookAnswers {
  readonly day: DayAnswer;
  readonly sky: SkyAnswer;
}
