/** A way to renew a tree as it is handed to other programs. */
import type { Units } from '../geometry/measure.ts';
import { cautionText } from '../plan/cautions.ts';
import type { RenewalWay } from '../plan/renewal.ts';
import { renewalTitle } from '../plan/renewalWords.ts';
import { placeText, type Viewpoint, whatText } from '../plan/words.ts';
import type { PlanReport } from './outputSchemas.ts';

type Reported = NonNullable<PlanReport['renewal']>[number];

export function renewalReport(way: RenewalWay, units: Units, viewpoint: Viewpoint | null): Reported {
  return {
    way: way.way,
    sucker: way.sucker,
    what: renewalTitle(way),
    when: { ...way.when },
    ripeFigsNow: way.ripeFigsNow,
    years: way.years.map(({ year, cuts, ripeFigs }) => ({
      year,
      cuts: cuts.map((cut) => ({
        kind: cut.kind,
        target: cut.target,
        atM: cut.atM,
        what: whatText(cut),
        where: placeText(cut, units, viewpoint),
        caution: cut.cautions.map((key) => cautionText[key]).join(' '),
      })),
      ripeFigs: { ...ripeFigs },
    })),
  };
}
