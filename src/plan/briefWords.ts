/** Cuts in few words, for rows and printed lists; whole sentences are made in `words.ts`. */
import { formatDecimal, formatLength, type Units } from '../geometry/measure.ts';
import type { Cut, Place, Reason } from './cut.ts';
import { type StepName, stepOf } from './steps.ts';
import { reasonText } from './words.ts';

const stepTitles: Readonly<Record<StepName, string>> = {
  'before the cuts': 'Before the cuts',
  'marked to go': 'You marked these',
  'dead and sick wood': 'Dead and sick wood',
  suckers: 'Suckers',
  crossing: 'Crossing and rubbing wood',
  'inward and water sprouts': 'Inward wood and water sprouts',
  'narrow forks': 'Narrow forks',
  'below the fork': 'Below the first fork',
  crowding: 'Shoots to thin',
  tips: 'Tips',
};

/** What a step of the work is called over its cuts; of buds that go in two passes, which of them it is. */
export function stepTitle({ kind, reasons, pass }: Pick<Cut, 'kind' | 'reasons' | 'pass'>): string {
  const step = stepOf(kind, reasons);
  const title = step === 'crowding' && kind === 'rub off bud' ? 'Buds to rub off' : stepTitles[step];
  return pass === null ? title : `${title}: ${pass === 1 ? 'sure now' : 'look again'}`;
}

/** "81 cm out, north side": where on its branch, with the tape at the fork. */
export function briefPlace({ fromForkM, forksFrom, face }: Place, units: Units): string {
  if (forksFrom === null && fromForkM < 0.005) return 'from the soil';
  const along = formatLength(fromForkM, units);
  const side = face.endsWith('side') ? face : `${face} side`;
  return forksFrom === null ? `${along} up, ${side}` : `${along} out, ${side}`;
}

/** "Bud 81 cm out, north side", "Shoot 3, 40 cm out, west side": what goes, where its branch is told already. */
export function briefPiece({ kind, place }: Pick<Cut, 'kind' | 'place'>, units: Units): string {
  const { piece, branch } = place;
  const where = briefPlace(place, units);
  if (kind === 'rub off bud') return piece === null ? `Bud ${where}` : `Shoot from the bud ${where}`;
  if (kind === 'tip') return `Tip, cut ${where}`;
  if (piece === null) return `All beyond ${where}`;
  const own = piece.startsWith(`${branch}, `) ? piece.slice(branch.length + 2) : piece;
  return `${own.charAt(0).toUpperCase()}${own.slice(1)}, ${where}`;
}

/** The reason in one plain sentence. */
export function briefReason(reason: Reason, units: Units): string {
  if (reason.rule !== 'crowding') return reasonText(reason, units);
  const { figsIfKept, figsForOthers, ownShare } = reason;
  const own = figsIfKept < 0.05 ? 'ripens hardly a fig' : `ripens about ${formatDecimal(figsIfKept, 1)}`;
  if (figsForOthers < 0.05) return `Kept, it ${own}, in ${formatDecimal(100 * ownShare, 0)} % of open sky.`;
  return `Kept, it ${own} and costs the others ${formatDecimal(figsForOthers, 1)}.`;
}
