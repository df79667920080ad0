/** What is seen of a stroke besides the branch itself: its plane, and what its tip settles on. */
import { useStore } from 'zustand';
import type { StageEye } from '../../scene/stageModel.ts';
import type { ShownStroke } from '../../state/drawWork.ts';
import { useUnits, useWorkbench } from '../../state/workbench.ts';
import { planeGrid } from './planeGrid.ts';
import { drawingWords as words } from './words.ts';

export function Drawing() {
  const { eye, draws } = useWorkbench();
  const stroke = useStore(draws.store, (state) => state.stroke);
  const now = useStore(eye, (state) => state.now);
  if (stroke === null || now === null) return null;
  return (
    <div className="drawing">
      <svg className="drawing-lines" aria-hidden="true">
        <Grid stroke={stroke} eye={now} />
        <Course stroke={stroke} eye={now} />
        <SnapLine stroke={stroke} eye={now} />
        <HandWords stroke={stroke} eye={now} />
      </svg>
      <p className="drawing-plane" role="status">
        {words.plane(stroke.plane.words)}
        {stroke.refusal === null ? null : <span className="drawing-refusal">{stroke.refusal}</span>}
      </p>
    </div>
  );
}

interface PartProps {
  readonly stroke: ShownStroke;
  readonly eye: StageEye;
}

const px = (value: number): string => value.toFixed(1);

function Grid({ stroke, eye }: PartProps) {
  const grid = planeGrid(stroke.plane, eye, useUnits());
  if (grid === null) return null;
  const d = grid.lines.map(([a, b]) => `M${px(a[0])} ${px(a[1])}L${px(b[0])} ${px(b[1])}`).join('');
  return <path className="drawing-grid" d={d} />;
}

/** The branch as it would be, plain over leaves and thin wood. */
function Course({ stroke: { course }, eye }: PartProps) {
  const seen = course?.path.map((point) => eye.project(point)) ?? [];
  const points = seen.map((pixel) => (pixel === null ? '' : `${px(pixel[0])},${px(pixel[1])}`));
  return points.includes('') ? null : <polyline className="drawing-course" points={points.join(' ')} />;
}

/** From the start through the tip and on, so that the direction is plain. */
function SnapLine({ stroke: { course, plane }, eye }: PartProps) {
  if (course === null || course.snap === null) return null;
  const [from, tip] = [eye.project(plane.through), eye.project(course.snap.tip)];
  if (from === null || tip === null) return null;
  if (course.snap.kind === 'branch')
    return <circle className="drawing-snap" cx={tip[0]} cy={tip[1]} r={11} />;
  const [onX, onY] = [tip[0] + (tip[0] - from[0]) * 0.35, tip[1] + (tip[1] - from[1]) * 0.35];
  return <path className="drawing-snap" d={`M${px(from[0])} ${px(from[1])}L${px(onX)} ${px(onY)}`} />;
}

/** Over the hand, where a finger does not cover it. */
const overPx = 46;
const edgePx = 60;

function HandWords({ stroke: { course, at }, eye }: PartProps) {
  const said = course?.snap?.words;
  if (said === undefined) return null;
  const x = Math.min(eye.size.width - edgePx, Math.max(edgePx, at[0]));
  return (
    <text className="drawing-words" x={x} y={Math.max(24, at[1] - overPx)}>
      {said}
    </text>
  );
}
