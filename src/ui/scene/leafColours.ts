/** The colour of every leaf: light where it is known, a quiet green where not. */
import type { Canopy } from '../../growth/canopy.ts';
import type { LightScale } from '../theme/lightScale.ts';
import { greyOf, type LinearRgb, linearRgbOf, mixRgb } from '../theme/srgb.ts';

/** What the numbers of `shares` are: light as a share of open sky, or the part in direct sun at one moment. */
export type ShareKind = 'open sky' | 'direct sun';

export interface LeafLook {
  /** Light of each leaf, in the order of `canopy.leaves`; NaN where it is not known. */
  readonly shares: Float32Array;
  readonly kind: ShareKind;
  readonly stale: boolean;
  readonly scale: LightScale;
  /** Owners, 0 for none. */
  readonly selected: number;
  readonly hovered: number;
  /** Per owner, 1 for what is to be found at a glance; null: nothing is. */
  readonly spotlit: Uint8Array | null;
  /** Leaves with this share of open sky or more step back; null: none. */
  readonly fadeFrom: number | null;
  readonly plant: string;
  readonly paper: string;
  /** Of leaves in and out of the direct sun. */
  readonly lit: string;
  readonly shade: string;
}

/** Shares of the way: of old light to grey, of the others to paper, of the hovered to white. */
const staleShare = 0.7;
const othersShare = 0.3;
const faintShare = 0.45;
const hoverShare = 0.35;

const white: LinearRgb = [1, 1, 1];

/** Three numbers a leaf, linear red, green and blue, in the order of `canopy.leaves`. */
export function leafColours(canopy: Canopy, look: LeafLook): Float32Array {
  const [plant, paper] = [linearRgbOf(look.plant), linearRgbOf(look.paper)];
  const [lit, shade] = [linearRgbOf(look.lit), linearRgbOf(look.shade)];
  const { kind, scale, shares } = look;
  const colours = new Float32Array(canopy.leaves.length * 3);
  canopy.leaves.forEach((leaf, i) => {
    const share = shares[i] ?? Number.NaN;
    let colour = plant;
    if (!Number.isNaN(share)) {
      colour = kind === 'open sky' ? scale.linearRgb(share) : mixRgb(shade, lit, share);
      if (look.stale) colour = mixRgb(colour, greyOf(colour), staleShare);
    }
    if (stepsBack(look, leaf.owner, share)) colour = mixRgb(colour, paper, faintShare);
    else if (look.selected > 0 && leaf.owner !== look.selected) colour = mixRgb(colour, paper, othersShare);
    if (leaf.owner === look.hovered && look.hovered !== look.selected)
      colour = mixRgb(colour, white, hoverShare);
    colours.set(colour, i * 3);
  });
  return colours;
}

type Finding = Pick<LeafLook, 'spotlit' | 'fadeFrom' | 'kind' | 'shares'>;

/** Whether a leaf steps back because others are to be found. Unknown light fades nothing. */
const stepsBack = ({ spotlit, fadeFrom, kind }: Finding, owner: number, share: number): boolean =>
  spotlit?.[owner] === 0 || (fadeFrom !== null && kind === 'open sky' && share >= fadeFrom);

/** One number a leaf: 1 for those that step back. */
export function faintLeaves(canopy: Canopy, look: Finding): Float32Array {
  return Float32Array.from(canopy.leaves, ({ owner }, i) =>
    stepsBack(look, owner, look.shares[i] ?? Number.NaN) ? 1 : 0,
  );
}
