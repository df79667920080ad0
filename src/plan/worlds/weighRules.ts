/** The rules' cuts in the worlds: whether each measurement still passes its limit there. */
import { hashText } from '../../geometry/random.ts';
import type { CutToMake } from '../applyCuts.ts';
import type { Reason } from '../cut.ts';
import type { JobSteps } from '../errand.ts';
import { type FoundWork, findWork } from '../findWork.ts';
import { goneIds } from '../gone.ts';
import { idsBeyond } from '../idsBeyond.ts';
import type { PlanInput } from '../input.ts';
import type { Proposal } from '../proposal.ts';
import { deviate, type World } from './deviate.ts';
import type { StandsIn } from './standsIn.ts';
import { worldInput } from './worldInput.ts';

/** The work before the search, and in how many worlds each cut of the rules stands, by its id. */
export interface WeighedWork extends FoundWork {
  readonly standsIn: ReadonlyMap<string, StandsIn>;
}

/** What is seen, or was said by the grower, and not measured. */
const onSight: ReadonlySet<Reason['rule']> = new Set(['dead', 'diseased', 'damaged', 'pinned']);

const isMeasured = ({ reasons }: Pick<Proposal, 'reasons'>): boolean =>
  reasons.length > 0 && reasons.every(({ rule }) => !onSight.has(rule));

/**
 * Of a gap between two barks, metres; our choice. It is compared with its limit as it was found, not on the world's tree: whether two
 * branches rub is seen, and errors of slope and bearing would pull them apart by more than a hand.
 */
const gapErrorM = 0.015;
const gapWord = 41;

const isCrossing = (reason: Reason): boolean => reason.rule === 'crossing';

function stillCrosses({ target, reasons }: Proposal, world: World): boolean {
  const errorM = gapErrorM * deviate(world, gapWord, hashText(target));
  return reasons.some((one) => one.rule === 'crossing' && one.barkGapM + errorM < one.barkLimitM);
}

/** By id of the cut; cuts made on sight have no entry, and none has where no worlds are asked for. A cut inside wood that goes whole there stands, too. */
export function* weighRules(
  input: PlanInput,
  work: FoundWork,
  worlds: number,
): JobSteps<ReadonlyMap<string, StandsIn>> {
  if (worlds === 0) return new Map();
  const measured = [...work.settled, ...work.tips].filter(isMeasured);
  const counts = new Map(measured.map(({ id }) => [id, 0]));
  for (let number = 0; number < worlds && measured.length > 0; number++) {
    yield { done: number / worlds, doing: 'Measuring anew, with the errors of tape and eye' };
    const world = { number, seed: input.leafSeed };
    const there = worldInput(input, work.year.season.budBreakOn, world);
    const found = yield* findWork(there.input, { year: work.year });
    const asked = standing([...found.settled, ...found.tips], there.input);
    for (const one of measured) {
      const stands = stillCrosses(one, world) || (!one.reasons.every(isCrossing) && asked(one));
      if (stands) counts.set(one.id, (counts.get(one.id) ?? 0) + 1);
    }
  }
  return new Map([...counts].map(([id, stands]) => [id, { worlds, stands, rival: null }]));
}

function standing(made: readonly CutToMake[], { tree }: PlanInput): (cut: CutToMake) => boolean {
  const asked = new Set(made.map(({ kind, target }) => `${kind} ${target}`));
  const whole = made.filter(({ kind, atM }) => kind === 'remove' && atM === 0);
  const gone = new Set([...goneIds(tree, made), ...whole.flatMap((cut) => [...idsBeyond(tree, cut)])]);
  return ({ kind, target }) => asked.has(`${kind} ${target}`) || gone.has(target);
}
