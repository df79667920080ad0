/** The colour of every leaf: light where it is known, a quiet green where not. */
import type { NodeLight } from '../../engine/reports.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { LightScale } from '../theme/lightScale.ts';
import { type LinearRgb, linearRgbOf, mixRgb } from '../theme/srgb.ts';

export interface LeafLook {
  readonly lightOf: ReadonlyMap<string, number>;
  readonly nodeLight: readonly NodeLight[];
  readonly stale: boolean;
  readonly scale: LightScale;
  /** Owners, 0 for none. */
  readonly selected: number;
  readonly hovered: number;
  readonly plant: string;
  readonly paper: string;
}

/** Shares of the way: of old light to plain green, of the others to paper, of the hovered to white. */
const staleShare = 0.6;
const othersShare = 0.3;
const hoverShare = 0.35;

const white: LinearRgb = [1, 1, 1];

/** Three numbers a leaf, linear red, green and blue, in the order of `canopy.leaves`. */
export function leafColours(canopy: Canopy, look: LeafLook): Float32Array {
  const [plant, paper] = [linearRgbOf(look.plant), linearRgbOf(look.paper)];
  const ofNode = new Map(look.nodeLight.map(({ shootId, node, share }) => [`${shootId} ${node}`, share]));
  const colours = new Float32Array(canopy.leaves.length * 3);
  canopy.leaves.forEach((leaf, i) => {
    const id = canopy.owners[leaf.owner]?.id ?? '';
    const ofShoot = look.lightOf.get(id);
    const share = ofShoot === undefined ? undefined : (ofNode.get(`${id} ${leaf.node}`) ?? ofShoot);
    let colour = share === undefined ? plant : look.scale.linearRgb(share);
    if (share !== undefined && look.stale) colour = mixRgb(colour, plant, staleShare);
    if (look.selected > 0 && leaf.owner !== look.selected) colour = mixRgb(colour, paper, othersShare);
    if (leaf.owner === look.hovered && look.hovered !== look.selected)
      colour = mixRgb(colour, white, hoverShare);
    colours.set(colour, i * 3);
  });
  return colours;
}
