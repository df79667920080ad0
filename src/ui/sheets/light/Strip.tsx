/** The sunflecks of a day: time across, shoots or the nodes of one shoot down. */
import { type CSSProperties, memo, type PointerEvent } from 'react';
import type { DayAnswer, DayNode, DayShoot } from '../../../engine/look.ts';
import { formatDecimal } from '../../../geometry/measure.ts';
import { useSelected, useWorkbench } from '../../state/workbench.ts';
import { dayWords as words } from './dayWords.ts';
import { runsPath, stepAcross, stripRuns } from './stripRuns.ts';

interface StripProps {
  readonly answer: DayAnswer;
  /** Index of the step that the stage shows. */
  readonly step: number;
  readonly onTime: (step: number) => void;
}

const levels = [1, 2, 3] as const;

/** Drawn again only when the sun falls otherwise, not at every turn of the clock. */
const Bar = memo(({ sunlit }: { readonly sunlit: ArrayLike<number> }) => {
  const runs = stripRuns(sunlit);
  return (
    <svg
      className="strip-bar"
      viewBox={`0 0 ${sunlit.length} 1`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {levels.map((level) => (
        <path key={level} className={`sunlit-${level}`} d={runsPath(runs, level)} />
      ))}
    </svg>
  );
});

/** The full hours of the day, as places across. */
function HourMarks({ answer }: { readonly answer: DayAnswer }) {
  const { steps } = answer.report;
  const marks = steps.flatMap(({ clock }, i) => {
    const [hour, minute] = clock.split(':').map(Number);
    const isMark = (minute ?? 0) < 10 && (hour ?? 0) % 3 === 0;
    return isMark ? [{ hour: hour ?? 0, left: (i + 0.5) / steps.length }] : [];
  });
  return (
    <span className="strip-hours" aria-hidden="true">
      {marks.map(({ hour, left }) => (
        <span key={hour} style={{ left: `${left * 100}%` }}>
          {hour}
        </span>
      ))}
    </span>
  );
}

export function Strip({ answer, step, onTime }: StripProps) {
  const { steps, shoots } = answer.report;
  const selected = useSelected();
  const tap = (event: PointerEvent<HTMLElement>): void => {
    const bar = (event.target as Element).closest('.strip-cell');
    if (bar === null || (event.buttons === 0 && event.type === 'pointermove')) return;
    const box = bar.getBoundingClientRect();
    onTime(stepAcross((event.clientX - box.left) / box.width, steps.length));
  };
  const now = { '--now': `${((step + 0.5) / steps.length) * 100}%` } as CSSProperties;
  const inOrder = [...shoots].sort((a, b) => a.sunHours - b.sunHours);
  return (
    <table className="rows strip" style={now} onPointerDown={tap} onPointerMove={tap}>
      <caption className="small-head">{words.strip}</caption>
      <thead>
        <tr>
          <th scope="col">{words.columns.shoot}</th>
          <th scope="col" className="strip-head">
            <span className="unseen">{words.columns.strip}</span>
            <HourMarks answer={answer} />
          </th>
          <th scope="col" className="figure">
            {words.columns.hours}
          </th>
        </tr>
      </thead>
      <tbody>
        {inOrder.flatMap((shoot) => [
          <ShootRow key={shoot.id} shoot={shoot} isSelected={shoot.id === selected} />,
          ...(shoot.id === selected
            ? answer.nodes
                .filter(({ shootId }) => shootId === shoot.id)
                .map((node) => <NodeRow key={`${shoot.id} ${node.node}`} node={node} />)
            : []),
        ])}
      </tbody>
    </table>
  );
}

const hours = (h: number): string => `${formatDecimal(h, 1)} h`;

const ShootRow = memo(({ shoot, isSelected }: { readonly shoot: DayShoot; readonly isSelected: boolean }) => {
  const { editor } = useWorkbench();
  return (
    <tr className={isSelected ? 'is-selected' : ''} data-id={shoot.id}>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          aria-pressed={isSelected}
          onClick={() => editor.select(isSelected ? null : shoot.id)}
        >
          {shoot.name}
        </button>
      </th>
      <td className="strip-cell">
        <Bar sunlit={shoot.sunlit} />
      </td>
      <td className="figure">{hours(shoot.sunHours)}</td>
    </tr>
  );
});

function NodeRow({ node }: { readonly node: DayNode }) {
  return (
    <tr className="strip-node">
      <th scope="row">{words.node(node.node)}</th>
      <td className="strip-cell">
        <Bar sunlit={node.sunlit} />
      </td>
      <td className="figure">{hours(node.sunHours)}</td>
    </tr>
  );
}
