/** A plan as it is handed to other programs. */
import type { TreeFile } from '../document/treeFile.ts';
import type { EnergyBasis } from '../engine/energyBasis.ts';
import type { Units } from '../geometry/measure.ts';
import { cautionText } from '../plan/cautions.ts';
import type { Cut } from '../plan/cut.ts';
import { pinchText } from '../plan/pinchWords.ts';
import type { Plan } from '../plan/plan.ts';
import { ifKeptText, placeText, reasonText, type Viewpoint, whatText } from '../plan/words.ts';
import type { PlanReport } from './outputSchemas.ts';
import { renewalReport } from './renewalReport.ts';

export function planReport(plan: Plan, file: TreeFile, units: Units, energy: EnergyBasis): PlanReport {
  const { viewpoint } = file.site;
  return {
    format: 'boughlight-plan',
    version: 1,
    date: plan.date,
    energy: { ...energy },
    cuts: plan.cuts.map((cut) => cutReport(cut, units, viewpoint)),
    yourCall: plan.yourCall.map((cut) => cutReport(cut, units, viewpoint)),
    confidence: plan.confidence,
    search: { ...plan.search },
    choice: plan.choice.map((point) => ({ ...point, reads: [...point.reads] })),
    steps: plan.steps.map((step) => ({ ...step })),
    ...(plan.renewal && { renewal: plan.renewal.map((way) => renewalReport(way, units, viewpoint)) }),
    pinch:
      plan.pinch === null
        ? null
        : { what: pinchText(plan.pinch), ...plan.pinch, weeks: [...plan.pinch.weeks] },
    score: {
      doNothing: { ...plan.score.doNothing },
      plan: { ...plan.score.plan },
      withYourCall: plan.score.withYourCall && { ...plan.score.withYourCall },
    },
    remarks: [...plan.remarks],
  };
}

const cutReport = (cut: Cut, units: Units, viewpoint: Viewpoint | null): PlanReport['cuts'][number] => ({
  id: cut.id,
  kind: cut.kind,
  target: cut.target,
  atM: cut.atM,
  what: whatText(cut),
  where: placeText(cut, units, viewpoint),
  reasons: cut.reasons.map((reason) => reasonText(reason, units)),
  when: { ...cut.when },
  pass: cut.pass,
  gain: { ...cut.gain, lights: cut.gain.lights.map((light) => ({ ...light })) },
  ifKept: {
    what: ifKeptText(cut.ifKept),
    figs: cut.ifKept.figs,
    fallBelow: cut.ifKept.fallBelow.map((shoot) => ({ ...shoot })),
  },
  standsIn: cut.standsIn,
  caution: cut.cautions.map((key) => cautionText[key]).join(' '),
  place: { ...cut.place },
  evidence: cut.reasons.map((reason) => ({ ...reason })),
});
