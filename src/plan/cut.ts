/** Cuts are the one currency: what is proposed, accepted, drawn, printed, undone and compared. */
import type { Wind } from '../geometry/world.ts';
import type { IsoDate } from '../season/site.ts';
import type { StandsIn } from './worlds/standsIn.ts';

export type CutKind = 'rub off bud' | 'remove' | 'tip';

/** How a grower finds it on the real tree. Lengths in metres; words are made of it in `words.ts`. */
export interface Place {
  /** Name of what goes, when it has one of its own: a limb, a shoot; null for a bud and for a tip. A bud that must have grown out by the day of the plan is "shoot from this bud". */
  readonly piece: string | null;
  /** Name of the branch to go to: the one the piece or bud sits on. */
  readonly branch: string;
  /** Of the branch as a whole, seen from the trunk. */
  readonly branchSide: Wind;
  /** Along the branch from the fork where it begins (for the trunk, from the soil) to the cut, metres. */
  readonly fromForkM: number;
  /** What it forks from: name of the parent, null for the trunk. */
  readonly forksFrom: string | null;
  /** Height of the cut above the soil, metres. */
  readonly heightM: number;
  /** Side of the branch on which the bud or base sits: a wind, or above, below. */
  readonly face: Wind | 'upper side' | 'lower side';
  /** Direction of the cut from the trunk, for a cut on the trunk that of its face; degrees clockwise from north. */
  readonly bearingDeg: number;
}

/** Why one of two crossing branches is the better one. */
export type Merit = 'sound' | 'scaffold' | 'heads outward' | 'good fork' | 'carries more' | 'thicker';

/** Why, as data; turned into sentences in `words.ts` and nowhere else. */
export type Reason =
  | { readonly rule: 'dead' | 'diseased' | 'damaged' }
  | { readonly rule: 'sucker'; readonly originHeightM: number; readonly limitM: number }
  | {
      readonly rule: 'crossing';
      /** Name of the branch that stays. */
      readonly other: string;
      /** Between the barks at the nearest place, 0 where they touch, and what it should be at least. */
      readonly barkGapM: number;
      readonly barkLimitM: number;
      /** The same between centre lines. */
      readonly gapM: number;
      readonly limitM: number;
      /** Length of the branch that lies nearer than the limit. */
      readonly overM: number;
      /** What the other one has over this one. */
      readonly keptFor: readonly Merit[];
    }
  | { readonly rule: 'inward'; readonly share: number; readonly limit: number }
  | { readonly rule: 'narrow fork'; readonly angleDeg: number; readonly limitDeg: number }
  | {
      readonly rule: 'water sprout';
      readonly elevationDeg: number;
      readonly limitDeg: number;
      readonly lengthM: number;
      readonly limitM: number;
      /** Mean distance of its nodes; null where they were not counted. */
      readonly internodeM: number | null;
      /** By how much the wood it grew from is older. */
      readonly parentAgeYears: number;
    }
  | {
      readonly rule: 'crowding';
      readonly ownShare: number;
      readonly figsIfKept: number;
      readonly figsForOthers: number;
      /** Of those, figs lost to its shade; the rest because the roots feed only so many. */
      readonly figsByShade: number;
      /** What a kept shoot should bring, figs; less is no gain. */
      readonly figsWanted: number;
    }
  /** Heights above the soil: of the bud, and of the first fork as it is or is wanted. */
  | { readonly rule: 'below the fork'; readonly heightM: number; readonly forkM: number }
  | { readonly rule: 'pinned' }
  | { readonly rule: 'pair'; readonly other: string; readonly gapM: number; readonly wantedM: number }
  | { readonly rule: 'limb full'; readonly limb: string; readonly kept: number; readonly limit: number }
  | {
      readonly rule: 'tip';
      readonly lengthM: number;
      readonly nodes: number;
      readonly firstCropFigsLost: number;
      readonly why: 'too high' | 'too wide' | 'wants a lateral';
    };

export type CautionKey =
  | 'sap'
  | 'tools'
  | 'ladder'
  | 'saw'
  | 'power lines'
  | 'large limb'
  | 'fork'
  | 'local rules'
  | 'estimate';

export interface Gain {
  /** Ripe figs this season that the plan has more with this one cut than without it; may be below 0. */
  readonly figs: number;
  /** The same for shoot length in fruiting light, metres. */
  readonly fruitingWoodM: number;
  /** Shoots that gain most, largest first, at most three: name and change of share of open sky. */
  readonly lights: readonly { readonly id: string; readonly name: string; readonly shareGain: number }[];
}

/** The price of overruling a cut: the plan without this one cut against the plan. */
export interface IfKept {
  /** Ripe figs of both crops that there are more then; below 0: fewer. */
  readonly figs: number;
  /** Shoots of the plan that fall below fruiting light then, those that lose most figs first. */
  readonly fallBelow: readonly {
    readonly id: string;
    readonly name: string;
    /** Of open sky: in the plan, and with the piece kept. */
    readonly share: number;
    readonly shareIfKept: number;
    /** Figs that ripen on it in the plan and not with the piece kept. */
    readonly figsLost: number;
  }[];
}

export interface Cut {
  /** Stable: made of kind and target. */
  readonly id: string;
  readonly kind: CutKind;
  /** Id of the axis or bud. */
  readonly target: string;
  /** Along the target axis from its base to the cut, metres: 0 removes it whole. Unused for buds. */
  readonly atM: number;
  readonly place: Place;
  readonly reasons: readonly Reason[];
  readonly when: { readonly from: IsoDate; readonly to: IsoDate };
  /** Of a bud that is rubbed off: now, because it is sure, or two weeks later, after another look. Null for all else. */
  readonly pass: 1 | 2 | null;
  readonly gain: Gain;
  readonly ifKept: IfKept;
  /** In how many worlds it is right; null for what goes on sight or was marked, and where no worlds were asked for. */
  readonly standsIn: StandsIn | null;
  readonly cautions: readonly CautionKey[];
}
