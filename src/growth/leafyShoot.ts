/** Leafy shoots: those that stand, as measured, and those that buds will grow. */
import type { Path } from '../geometry/path.ts';
import { hashText } from '../geometry/random.ts';
import { type PlacedAxis, placeBud } from '../geometry/tree.ts';
import type { FigValues } from '../species/fig.ts';
import type { Member } from './owners.ts';
import {
  internodeShare,
  leafExpansion,
  midribShare,
  nodesAlong,
  type ShootForm,
  shootForm,
  vigourOfInternode,
} from './shootForm.ts';
import { shootPath, startDirection } from './shootPath.ts';

/** A shoot with everything settled but how its leaves hang. */
export interface LeafyShoot {
  readonly owner: number;
  readonly id: string;
  readonly name: string;
  readonly path: Path;
  readonly form: ShootForm;
  readonly vigour: number;
  readonly tipDiameterM: number;
  /** By node: length of the midrib, and its share of what it will be full-grown. */
  readonly leafSizes: readonly { readonly midribM: number; readonly expansion: number }[];
}

/** A shoot that stands in leaf: its count, midrib, length and thickness are the grower's. */
export function standingShoot({ owner, axis }: Member, wood: PlacedAxis, values: FigValues): LeafyShoot {
  const { count, midribM } = axis.foliage ?? { count: 0, midribM: 0 };
  const shares = Array.from({ length: count }, (_, i) => internodeShare(i + 1, count));
  const middleM = wood.lengthM / shares.reduce((sum, share) => sum + share, 0);
  const atBuds = axis.buds.length === count;
  const form: ShootForm = {
    leafCount: count,
    finalLeafCount: count,
    nodesM: atBuds
      ? axis.buds.map((bud) => bud.atM).toSorted((a, b) => a - b)
      : nodesAlong(count, wood.lengthM),
    lengthM: wood.lengthM,
    baseDiameterM: axis.baseDiameterM,
    // A shoot of a few leaves has none of the full length.
    internodeM: middleM * Math.max(...shares),
  };
  return {
    owner,
    id: axis.id,
    name: axis.name,
    path: wood.path,
    form,
    vigour: vigourOfInternode(middleM, values),
    tipDiameterM: axis.tipDiameterM,
    leafSizes: form.nodesM.map((_, i) => ({
      midribM: midribM * midribShare((i + 0.5) / count),
      expansion: 1,
    })),
  };
}

/** Full-grown blades outside these lengths are not to be expected, metres (the range of the area equation's table). */
export const smallestMidribM = 0.1;
export const largestMidribM = 0.3;

function leafSizes(
  form: ShootForm,
  vigour: number,
  heatGdd8: number,
  values: FigValues,
): LeafyShoot['leafSizes'] {
  const middleM = (values.leafMidribCm / 100) * vigour ** values.leafVigourExponent;
  return form.nodesM.map((_, i) => {
    const wantedM = middleM * midribShare((i + 0.5) / form.finalLeafCount);
    const fullM = Math.min(largestMidribM, Math.max(smallestMidribM, wantedM));
    const expansion = leafExpansion(i + 1, heatGdd8, values);
    return { midribM: fullM * expansion, expansion };
  });
}

/** Plain name of the shoot of a bud: buds are counted from the base of their branch. */
function budShootName({ axis, bud }: Member): string {
  const inOrder = axis.buds.toSorted((a, b) => a.atM - b.atM);
  return `Shoot ${inOrder.findIndex((other) => other.id === bud?.id) + 1} on ${axis.name}`;
}

export interface Conditions {
  readonly heatGdd8: number;
  /** Height that nothing grown dips below, metres. */
  readonly groundM: number;
  readonly seed: number;
  readonly values: FigValues;
}

/** The shoot a bud will have grown; null before its first leaf is out. */
export function budShoot(
  member: Member,
  wood: PlacedAxis,
  vigour: number,
  conditions: Conditions,
): LeafyShoot | null {
  const { heatGdd8, groundM, seed, values } = conditions;
  const { bud } = member;
  if (bud === null) throw new Error(`budShoot: a bud is wanted, got axis ${member.axis.id}`);
  const form = shootForm(vigour, heatGdd8, values);
  if (form.leafCount === 0) return null;
  const key = hashText(bud.id);
  const place = placeBud(wood, bud);
  const along = startDirection(place, wood.lengthM - bud.atM, key, seed, values);
  const lowestM = groundM + form.baseDiameterM / 2;
  return {
    owner: member.owner,
    id: bud.id,
    name: budShootName(member),
    path: shootPath({ point: place.point, along }, form.nodesM, lowestM, key, seed, values),
    form,
    vigour,
    tipDiameterM: form.baseDiameterM * values.shootTipDiameterShare,
    leafSizes: leafSizes(form, vigour, heatGdd8, values),
  };
}
