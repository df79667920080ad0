/** What the grower should know that is no cut. */
import { formatDecimal, formatLength } from '../geometry/measure.ts';
import { shortDay } from '../season/calendar.ts';
import type { IsoDate } from '../season/site.ts';
import type { Reason } from './cut.ts';
import { type FigsLost, whyFewer } from './fewerFigs.ts';
import { listed, reasonText } from './words.ts';

/** A remark as data; names are the grower's. */
export type Remark =
  | { readonly about: 'sick trunk'; readonly condition: 'dead' | 'diseased' | 'damaged' }
  | { readonly about: 'marked trunk' }
  | { readonly about: 'thick fork'; readonly branch: string; readonly reason: Reason }
  | { readonly about: 'doubtful fork'; readonly branch: string; readonly reason: Reason }
  | { readonly about: 'overruled'; readonly branch: string; readonly reason: Reason }
  | { readonly about: 'sucker kept'; readonly branch: string }
  | { readonly about: 'carried figs'; readonly branches: readonly string[] }
  | { readonly about: 'no tip' }
  | { readonly about: 'too high' | 'too wide'; readonly branch: string; readonly byM: number }
  | { readonly about: 'share removed'; readonly share: number; readonly limit: number }
  | { readonly about: 'wood removed'; readonly share: number; readonly limit: number }
  | { readonly about: 'wounds'; readonly share: number; readonly limit: number; readonly hasSick: boolean }
  | { readonly about: 'next year'; readonly branch: string; readonly reason: Reason; readonly limit: number }
  | { readonly about: 'over several years'; readonly limit: number }
  | {
      readonly about: 'beyond the limit';
      readonly limit: number;
      readonly hasSick: boolean;
      readonly hasMarked: boolean;
    }
  | { readonly about: 'no renewal'; readonly limbs: readonly string[] }
  | { readonly about: 'resting'; readonly budBreakOn: IsoDate }
  | { readonly about: 'turned'; readonly turnedDeg: number }
  | { readonly about: 'sketched in leaf' }
  | { readonly about: 'sketch is old'; readonly lastGrownIn: number }
  | { readonly about: 'late for buds'; readonly endedOn: IsoDate }
  | { readonly about: 'late to thin'; readonly endedOn: IsoDate }
  | { readonly about: 'short season'; readonly ripeFigs: number }
  | { readonly about: 'overload'; readonly set: number; readonly held: number }
  | { readonly about: 'fewer figs'; readonly figs: number; readonly why: readonly FigsLost[] }
  | { readonly about: 'limits broken'; readonly text: string }
  | { readonly about: 'nothing to do' };

/** In the grower's words; lengths both ways, since a remark is read on its own. */
export function remarkText(remark: Remark): string {
  switch (remark.about) {
    case 'sick trunk':
      return `The trunk itself is marked as ${remark.condition}. That is past what cuts can mend: have a licensed arborist look at it before you work on it, and keep away from a tree that may fall.`;
    case 'marked trunk':
      return 'The trunk is marked to go. This plan keeps it; felling is another decision.';
    case 'thick fork':
      return `${remark.branch}: ${reasonText(remark.reason, 'metric')} It is too thick to take off at once; shorten it step by step over several winters, or have it looked at.`;
    case 'doubtful fork':
      return `${remark.branch}: the fork is about as narrow as the limit (${reasonText(remark.reason, 'metric')}) A sketch is no truer than that; look whether the bark is turned in.`;
    case 'overruled':
      return `${remark.branch} stays because you marked it or a part of it to be kept. What was found: ${reasonText(remark.reason, 'metric')}`;
    case 'too high':
    case 'too wide':
      return `${remark.branch} stands ${formatLength(remark.byM, 'metric')} (${formatLength(remark.byM, 'us')}) ${remark.about === 'too high' ? 'above the height' : 'beyond the width'} the tree is kept to. A tip cut is not enough: take it back to a lateral, or let the tree be larger.`;
    default:
      return seasonRemark(remark);
  }
}

type SeasonRemark = Exclude<
  Remark,
  {
    about:
      | 'sick trunk'
      | 'marked trunk'
      | 'thick fork'
      | 'doubtful fork'
      | 'overruled'
      | 'too high'
      | 'too wide';
  }
>;

const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;

function seasonRemark(remark: SeasonRemark): string {
  switch (remark.about) {
    case 'sucker kept':
      return `${remark.branch} is kept for layering or renewal, as you asked. It draws on the roots like any other shoot.`;
    case 'carried figs':
      return `These carried figs when the tree was sketched and go with the cuts: ${listed(remark.branches)}. Look for figs before you cut; wait until they are ripe, or mark the branch to be kept.`;
    case 'no tip':
      return 'No tip needs cutting.';
    case 'share removed':
      return `The cuts take ${percent(remark.share)} of the leaves. More than ${percent(remark.limit)} in a year weakens a tree.`;
    case 'wood removed':
      return `The cuts take ${percent(remark.share)} of the buds on the wood. More than ${percent(remark.limit)} in a year weakens a tree.`;
    case 'wounds':
      return `All wounds together are ${percent(remark.share)} of the section of the trunk. Above ${percent(remark.limit)} the work is severe: spread ${remark.hasSick ? 'the sound wood over two or three years; dead and sick wood goes at once' : 'it over two or three years'}.`;
    case 'next year':
      return `${remark.branch} can wait: with it, more than the ${percent(remark.limit)} that a year may take would go. Next year: ${reasonText(remark.reason, 'metric')}`;
    case 'over several years':
      return `No more is taken this year, so that at least ${percent(1 - remark.limit)} of the leaves stay; go on next year.`;
    case 'beyond the limit':
      return beyondText(remark);
    case 'resting':
      return `The tree rests. Buds are rubbed off once they break, about ${shortDay(remark.budBreakOn)}: plan again then.`;
    case 'no renewal':
      return `Nothing grows near the base of ${listed(remark.limbs)} to renew ${remark.limbs.length === 1 ? 'it' : 'them'} from one day. Should a shoot break there, it is worth keeping.`;
    case 'turned':
      return `The pot stands turned by ${formatDecimal(remark.turnedDeg, 0)} degrees since it was sketched. A name that speaks of a side is the one of the sketch; every side given here is that of the tree as it stands now.`;
    case 'sketched in leaf':
      return 'The sketch shows the tree in leaf, and the figures are for that crown. What to rub off, which tips to cut and the first crop can only be told from a sketch of the bare tree.';
    case 'sketch is old':
      return `The youngest wood in the sketch grew in ${remark.lastGrownIn}. Add what has grown since, then plan again.`;
    case 'late for buds':
      return `The time for rubbing off ended about ${shortDay(remark.endedOn)}. A bud on the list is a shoot by now: better sketch the tree in leaf and plan again.`;
    case 'late to thin':
      return `Thinning in leaf ended about ${shortDay(remark.endedOn)}: later cuts cost hardiness before the frost. It waits for winter.`;
    case 'short season':
      return `In a normal year the season here ends before most figs of this kind ripen (about ${formatDecimal(remark.ripeFigs, 0)} would). A warm wall or an earlier kind helps more than any cut.`;
    case 'overload':
      return `With the plan the tree still sets about ${formatDecimal(remark.set, 0)} figs; a pot of this size feeds about ${formatDecimal(remark.held, 0)}. The rest drop, and those that stay ripen later. Fewer figs on each shoot, picked off while they are small, ripen sooner.`;
    case 'fewer figs':
      return `This year the plan ripens about ${formatDecimal(remark.figs, 0)} figs fewer than doing nothing. ${whyFewer(remark.why)}`;
    case 'limits broken':
      return remark.text;
    case 'nothing to do':
      return 'Nothing needs doing on this day.';
  }
}

/** Dead and sick wood does not wait, whatever it carries. */
function beyondText({ limit, hasSick, hasMarked }: Extract<Remark, { about: 'beyond the limit' }>): string {
  const than = `more than the ${percent(limit)} of the leaves that a year may take`;
  const atOnce = 'Dead and sick wood goes at once all the same: left, it spreads or breaks.';
  const marked = 'Spread it over two or three years, the worst first.';
  if (!hasSick) return `What you marked to go carries ${than}. ${marked}`;
  if (!hasMarked)
    return `Dead and sick wood carries ${than}. It goes at once all the same: left, it spreads or breaks.`;
  return `Dead and sick wood and what you marked to go carry ${than}. ${atOnce} What you marked can be spread over two or three years.`;
}
