/** The list as it is printed: two drawings, the cautions in full, the ticked cuts with boxes to tick by hand. Not seen on the page. */
import { useMemo } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { pinsOf } from '../../../../editor/edits/pin.ts';
import { briefPiece, briefReason, stepTitle } from '../../../../plan/briefWords.ts';
import { cautionText } from '../../../../plan/cautions.ts';
import { figsLostBy } from '../../../../plan/fewerFigs.ts';
import { pinchText } from '../../../../plan/pinchWords.ts';
import type { Plan } from '../../../../plan/plan.ts';
import { longDay } from '../../../fields/dates.ts';
import { useUnits } from '../../../state/workbench.ts';
import { alwaysShown } from '../Cautions.tsx';
import { whenOf } from '../CutRow.tsx';
import { cutWords } from '../cutWords.ts';
import { groupCuts, type NumberedCut, numbered } from '../groups.ts';
import { pinWords } from '../pinWords.ts';
import type { ShownPlan } from '../usePlan.ts';
import { workWords } from '../words.ts';
import { PaperPictures } from './PaperPicture.tsx';
import { paperWords as words } from './paperWords.ts';

interface PaperSheetProps {
  readonly plan: Plan;
  readonly shown: ShownPlan;
  readonly file: TreeFile;
}

export function PaperSheet({ plan, shown, file }: PaperSheetProps) {
  const { ticked, trial, wanted } = shown;
  const made = useMemo(() => numbered(plan).filter(({ cut }) => ticked.has(cut.id)), [plan, ticked]);
  const { plan: all, doNothing } = plan.score;
  const ripe = (trial?.score ?? all).ripeFigs;
  return (
    <article className="paper" aria-hidden="true">
      <p>
        <strong>{workWords.headline(made.length, ripe, doNothing.ripeFigs)}.</strong>{' '}
        {workWords.headlineBy(made.length, ripe - doNothing.ripeFigs, figsLostBy(plan.steps))}{' '}
        {words.work(longDay(wanted.date), wanted.boldness)}
      </p>
      <PaperPictures file={file} cuts={made} />
      <PaperCautions cuts={made} />
      {groupCuts(plan).map(({ step, runs }, i) => (
        <PaperStep key={`${step} ${i}`} runs={runs} ticked={ticked} />
      ))}
      {groupCuts({ cuts: plan.yourCall, steps: [] }, plan.cuts.length + 1).map(({ step, runs }, i) => (
        <PaperStep key={`${step} ${i}`} runs={runs} ticked={ticked} isYourCall />
      ))}
      <PaperNotes plan={plan} file={file} />
    </article>
  );
}

function PaperCautions({ cuts }: { readonly cuts: readonly NumberedCut[] }) {
  const keys = new Set([...alwaysShown, ...cuts.flatMap(({ cut }) => cut.cautions)]);
  return (
    <ul className="paper-cautions">
      {[...keys].map((key) => (
        <li key={key}>{cautionText[key]}</li>
      ))}
    </ul>
  );
}

interface PaperStepProps extends Pick<ReturnType<typeof groupCuts>[number], 'runs'> {
  readonly ticked: ReadonlySet<string>;
  readonly isYourCall?: boolean;
}

function PaperStep({ runs, ticked, isYourCall = false }: PaperStepProps) {
  const units = useUnits();
  const made = runs
    .map(({ branch, cuts }) => ({ branch, cuts: cuts.filter(({ cut }) => ticked.has(cut.id)) }))
    .filter(({ cuts }) => cuts.length > 0);
  const [first] = made[0]?.cuts ?? [];
  if (first === undefined) return null;
  return (
    <table className="paper-cuts">
      <caption>
        {isYourCall ? `${workWords.yourCall}: ` : ''}
        {stepTitle(first.cut)}, {whenOf(first.cut)}
      </caption>
      {made.map(({ branch, cuts }) => (
        <tbody key={cuts[0]?.cut.id}>
          <tr>
            <th colSpan={5} scope="rowgroup">
              {branch}
            </th>
          </tr>
          {cuts.map(({ cut, n }) => (
            <tr key={cut.id}>
              <td className="paper-box">□ {n}</td>
              <td>{briefPiece(cut, units)}</td>
              <td>{cut.reasons[0] === undefined ? '' : briefReason(cut.reasons[0], units)}</td>
              <td className="figure">{cutWords.gainInShort(cut.gain.figs)}</td>
              <td className="figure">{cut.standsIn === null ? '' : cutWords.sure(cut.standsIn)}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

function PaperNotes({ plan, file }: Pick<PaperSheetProps, 'plan' | 'file'>) {
  const units = useUnits();
  const kept = pinsOf(file).filter(({ pin }) => pin === 'keep');
  return (
    <>
      {kept.length === 0 ? null : (
        <p>
          <strong>{words.stays}:</strong> {kept.map((part) => pinWords.name(part, units)).join('; ')}.
        </p>
      )}
      {plan.pinch === null ? null : (
        <p>
          <strong>{words.pinch}:</strong> {pinchText(plan.pinch)}
        </p>
      )}
      {plan.remarks.length === 0 ? null : (
        <p>
          <strong>{words.notes}:</strong> {plan.remarks.join(' ')}
        </p>
      )}
    </>
  );
}
