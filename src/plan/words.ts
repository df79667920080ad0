/** Plans in plain words. Nowhere else are they made. */
import { formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import { turnDeg, type Wind, windDeg } from '../geometry/world.ts';
import type { Cut, IfKept, Merit, Place, Reason } from './cut.ts';
import { roundedParts } from './roundedParts.ts';

/** Where the grower looks from. */
export interface Viewpoint {
  readonly name: string;
  /** Direction in which it lies from the tree. */
  readonly bearingDeg: number;
}

/** "Take off", "Rub off", "Cut the tip of": what is done, with what it is done to. */
export function whatText(cut: Pick<Cut, 'kind' | 'atM' | 'place'>): string {
  if (cut.kind === 'rub off bud') {
    return cut.place.piece === null ? 'Rub off this bud' : `Cut off the ${cut.place.piece} at its base`;
  }
  if (cut.kind === 'tip') return `Cut the tip of ${named(cut.place.branch)}`;
  return cut.place.piece === null
    ? `Shorten ${named(cut.place.branch)}`
    : `Take off ${named(cut.place.piece)}`;
}

/**
 * Where it is, findable with a tape in hand: "Go to the south-east limb, lateral 2. 34 cm out from its fork, bud
 * on the upper side, 92 cm above the soil. Seen from the house: left, at the back."
 */
export function placeText(
  cut: Pick<Cut, 'kind' | 'atM' | 'place'>,
  units: Units,
  viewpoint: Viewpoint | null,
): string {
  const { place } = cut;
  const hasNoSide = place.forksFrom === null && place.piece === null && cut.kind !== 'rub off bud';
  const seen = viewpoint === null || hasNoSide ? '' : ` ${seenFrom(place, viewpoint)}`;
  return `Go to ${branchText(place)}. ${alongText(cut, units)}.${seen}`;
}

/** First words that are ordinary ones: the name is then said with "the" and a small letter. */
const ordinary =
  /^(trunk|limb|lateral|shoot|sucker|water|leader|branch|scaffold|(north|south)(-east|-west)?|east|west|centre|lower|upper|middle|inner|outer|old|young|left|right|long|short|big|small|thick|thin)\b/i;

export const named = (name: string): string =>
  ordinary.test(name) ? `the ${name.charAt(0).toLowerCase()}${name.slice(1)}` : name;

/** "the east limb, the west limb and Old arm" */
export function listed(names: readonly string[]): string {
  const all = names.map(named);
  const last = all.pop() ?? '';
  return all.length === 0 ? last : `${all.join(', ')} and ${last}`;
}

/** The trunk by its kind where its name does not say it; another branch with its side of the tree where its name does not. */
function branchText({ branch, branchSide, forksFrom }: Place): string {
  const name = branch.toLowerCase();
  if (forksFrom === null) return name.includes('trunk') ? named(branch) : `the trunk (${branch})`;
  return saysSide(name, branchSide) ? named(branch) : `${named(branch)} (${branchSide} side of the tree)`;
}

/** Whether a name names this side of the tree or the one next to it. */
function saysSide(name: string, side: Wind): boolean {
  const [said] = /(north|south)(-east|-west)|north|south|east|west/.exec(name) ?? [];
  return said !== undefined && Math.abs(turnDeg(windDeg(said as Wind), windDeg(side))) <= 45;
}

function alongText({ kind, place }: Pick<Cut, 'kind' | 'place'>, units: Units): string {
  const along = formatLength(place.fromForkM, units);
  const isTrunk = place.forksFrom === null;
  const face = place.face.endsWith('side') ? `on the ${place.face}` : `on the ${place.face} side`;
  if (isTrunk && place.fromForkM < 0.005) return `It comes from the soil, ${face}`;
  const height = isTrunk ? '' : `, ${formatLength(Math.max(0, place.heightM), units)} above the soil`;
  const out = isTrunk ? `${along} up from the soil` : `${along} out from its fork`;
  if (kind === 'rub off bud') return `${out}, bud ${face}${height}`;
  return place.piece === null ? `${out}${height}` : `The piece to take off sits ${out}, ${face}${height}`;
}

/** "Seen from the house: left, at the back."; on the trunk "on the far side, to the left." */
function seenFrom({ bearingDeg, forksFrom }: Place, viewpoint: Viewpoint): string {
  const turn = turnDeg(viewpoint.bearingDeg, bearingDeg);
  const side =
    Math.abs(turn) < 22.5 || Math.abs(turn) > 157.5 ? 'in the middle' : turn > 0 ? 'left' : 'right';
  if (forksFrom === null) return `Seen from ${viewpoint.name}: ${sideOfTrunk(turn)}.`;
  const depth =
    Math.abs(turn) <= 67.5 ? 'at the front' : Math.abs(turn) >= 112.5 ? 'at the back' : 'halfway back';
  return `Seen from ${viewpoint.name}: ${side}, ${depth}.`;
}

/** Which side of the trunk, for one who looks at it; 0 is the side that faces them. */
function sideOfTrunk(turn: number): string {
  const hand = turn > 0 ? 'left' : 'right';
  if (Math.abs(turn) > 67.5 && Math.abs(turn) < 112.5) return `on the ${hand} side`;
  const face = Math.abs(turn) <= 67.5 ? 'on the side that faces you' : 'on the far side';
  return Math.abs(turn) < 22.5 || Math.abs(turn) > 157.5 ? face : `${face}, to the ${hand}`;
}

const meritText: Readonly<Record<Merit, string>> = {
  sound: 'is sound',
  scaffold: 'is or carries a scaffold',
  'heads outward': 'heads outward more',
  'good fork': 'has the better fork',
  'carries more': 'carries more wood',
  thicker: 'is thicker',
};

const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;
const figs = (count: number): string => {
  const text = formatDecimal(count, 1);
  return `${text} ${text === '1.0' ? 'fig' : 'figs'}`;
};

/** Which of the two passes over the buds a cut belongs to; null for none. */
export const passText = ({ pass }: Pick<Cut, 'pass'>): string | null =>
  pass === null
    ? null
    : pass === 1
      ? 'First pass: sure now.'
      : 'Second pass: look again then, and leave it where a bud beside it has failed.';

/** One reason as a sentence. */
export function reasonText(reason: Reason, units: Units): string {
  switch (reason.rule) {
    case 'dead':
      return 'The wood is dead.';
    case 'diseased':
      return 'The wood is sick; taken back to sound wood before it spreads.';
    case 'damaged':
      return 'The wood is damaged.';
    case 'pinned':
      return 'You marked it to go.';
    case 'below the fork':
      return `It sits on the trunk ${formatLength(Math.max(0, reason.heightM), units)} above the soil, below the first fork as it is or is wanted (${formatLength(reason.forkM, units)}).`;
    case 'sucker':
      return reason.originHeightM < 0.005
        ? 'A sucker from the soil.'
        : `A sucker: it leaves the trunk ${formatLength(reason.originHeightM, units)} above the soil (limit ${formatLength(reason.limitM, units)}).`;
    case 'inward':
      return `It grows into the middle: its tip ends at ${percent(reason.share)} of the crown's radius (limit ${percent(reason.limit)}).`;
    case 'narrow fork':
      return `Its fork is narrow: ${formatDecimal(reason.angleDeg, 0)} degrees (limit ${formatDecimal(reason.limitDeg, 0)}), where bark turns in and wood tears.`;
    case 'water sprout':
      return sproutText(reason, units);
    default:
      return closenessText(reason, units);
  }
}

function sproutText(reason: Extract<Reason, { rule: 'water sprout' }>, units: Units): string {
  const { elevationDeg, limitDeg, lengthM, limitM, internodeM, parentAgeYears } = reason;
  const nodes = internodeM === null ? '' : `, its nodes ${formatLength(internodeM, units)} apart`;
  const long = `${formatLength(lengthM, units)} long (limit ${formatLength(limitM, units)})`;
  const steep = `${formatDecimal(elevationDeg, 0)} degrees above level (limit ${formatDecimal(limitDeg, 0)})`;
  return `A water sprout: ${long}, ${steep}${nodes}, from wood ${parentAgeYears} ${parentAgeYears === 1 ? 'year' : 'years'} older.`;
}

type ClosenessReason = Extract<Reason, { rule: 'crossing' | 'crowding' | 'limb full' | 'pair' | 'tip' }>;

function closenessText(reason: ClosenessReason, units: Units): string {
  switch (reason.rule) {
    case 'crossing':
      return crossingText(reason, units);
    case 'pair':
      return `Spacing: it stands ${formatLength(reason.gapM, units)} from ${named(reason.other)} on the same side, and shoots want ${formatLength(reason.wantedM, units)}; of the two the better placed stays.`;
    case 'limb full':
      return `Room: ${named(reason.limb)} keeps ${reason.kept} shoots without it and carries ${reason.limit} well; fewer grow stronger.`;
    case 'tip':
      return `A heading cut: the tip goes, ${formatLength(reason.lengthM, units)} with ${reason.nodes} ${reason.nodes === 1 ? 'node' : 'nodes'}, at a cost of ${figs(reason.firstCropFigsLost)} of the first crop.${tipWhy(reason.why)}`;
    case 'crowding':
      return crowdingText(reason);
  }
}

function crossingText(
  { other, barkGapM, barkLimitM, overM, keptFor }: Extract<Reason, { rule: 'crossing' }>,
  units: Units,
): string {
  const found =
    barkGapM < 0.0005
      ? `It rubs against ${named(other)}: the barks touch, and lie too near`
      : `It crosses ${named(other)}: bark ${formatLength(barkGapM, units)} apart, too near`;
  return `${found} over ${formatLength(overM, units)} (limit ${formatLength(barkLimitM, units)}).${mayStay(keptFor)}`;
}

function crowdingText(reason: Extract<Reason, { rule: 'crowding' }>): string {
  const { ownShare, figsIfKept, figsForOthers, figsByShade, figsWanted } = reason;
  const ripe = figsIfKept < 0.05 ? 'ripen hardly a fig' : `ripen about ${figs(figsIfKept)}`;
  const own = `Kept, it would get ${percent(ownShare)} of open sky and ${ripe}`;
  const left = figsIfKept - figsForOthers;
  const [byShade = 0, byLoad = 0] = roundedParts([figsByShade, figsForOthers - figsByShade], 1);
  const forOthers = byShade + byLoad;
  if (forOthers < 0.05) return left < figsWanted ? `${own}: too little to keep it for.` : `${own}.`;
  const over = Number(formatDecimal(figsIfKept, 1)) - forOthers;
  const rest =
    left < figsWanted && over > 0.05 ? ` The ${figs(over)} left over are too little to keep it for.` : '';
  if (byLoad < 0.05) return `${own}, and shade away about ${figs(forOthers)} on the others.${rest}`;
  const cost = `${own}, and cost the others about ${figs(forOthers)}`;
  if (byShade < 0.05) return `${cost}, because the pot feeds only so many.${rest}`;
  const parts = `${figs(byShade)} by its shade, ${figs(byLoad)} because the pot feeds only so many`;
  return `${cost}: ${parts}.${rest}`;
}

/** Shoots named, at most. */
const mostNamed = 3;

/** "0.8 figs fewer. 2 shoots fall below fruiting light: ..."; null where neither figs nor those shoots change. */
export function ifKeptText({ figs: change, fallBelow }: IfKept): string | null {
  const isSame = Math.abs(change) < 0.05;
  if (isSame && fallBelow.length === 0) return null;
  const price = isSame ? 'about as many figs' : `${figs(Math.abs(change))} ${change < 0 ? 'fewer' : 'more'}`;
  if (fallBelow.length === 0) return `${price}.`;
  const shoots = fallBelow.slice(0, mostNamed).map(({ name, share, shareIfKept, figsLost }) => {
    const lost = figsLost < 0.05 ? '' : `, ${figs(figsLost)} fewer`;
    return `${name} (from ${percent(share)} to ${percent(shareIfKept)} of open sky${lost})`;
  });
  const more = fallBelow.length > mostNamed ? '; and more' : '';
  const count = fallBelow.length === 1 ? '1 shoot falls' : `${fallBelow.length} shoots fall`;
  return `${price}. ${count} below fruiting light: ${shoots.join('; ')}${more}.`;
}

const tipWhy = (why: Extract<Reason, { rule: 'tip' }>['why']): string =>
  ({
    'too high': ' It stands above the height the tree is kept to.',
    'too wide': ' It stands beyond the width the tree is kept to.',
    'wants a lateral': ' The wood below is long and bare; without its tip it branches.',
  })[why];

const mayStay = (merits: readonly Merit[]): string =>
  merits.length === 0 ? '' : ` The other ${merits.map((merit) => meritText[merit]).join(', ')}.`;
