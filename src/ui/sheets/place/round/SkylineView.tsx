/** The skyline round the compass, with a knob at every point. */
import { changeLand } from '../../../../editor/edits/place.ts';
import { useGrip } from '../../../fields/useGrip.ts';
import { useFile } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { type Draft, useDraft } from './draft.ts';
import { skyAt, skyPixelOf, widthPx } from './frame.ts';
import { SkyRing } from './SkyRing.tsx';
import { movedPoint, type Skyline } from './skyline.ts';

const words = placeWords.land;

export function SkylineView({ skyline }: { readonly skyline: Skyline }) {
  const draft = useDraft();
  return (
    <svg
      className="plan is-sky"
      viewBox={`0 0 ${widthPx} ${widthPx}`}
      role="group"
      aria-label={words.skylinePicture}
    >
      <SkyRing file={draft.shown} />
      {skyline.points.map((_, index) => (
        <SkyKnob key={index} draft={draft} index={index} />
      ))}
    </svg>
  );
}

function SkyKnob({ draft, index }: { readonly draft: Draft; readonly index: number }) {
  const { skyline } = useFile().site;
  const before = skyline?.points[index];
  const now = draft.shown.site.skyline?.points[index] ?? before;
  const put = (bearingDeg: number, heightDeg: number) =>
    draft.show((file) => {
      const old = file.site.skyline ?? skyline;
      return changeLand(
        file,
        'skyline',
        old === undefined ? null : movedPoint(old, index, bearingDeg, heightDeg),
      );
    });
  const grip = useGrip({
    drag: (dx, dy) => {
      if (before === undefined) return;
      const [x, y] = skyPixelOf(before.bearingDeg, before.heightDeg);
      const { bearingDeg, heightDeg } = skyAt(x + dx, y + dy);
      put(bearingDeg, heightDeg);
    },
    step: (right, down) => {
      if (before !== undefined) put(before.bearingDeg + right, before.heightDeg - down);
    },
    done: draft.done,
    drop: draft.drop,
  });
  if (now === undefined) return null;
  const [x, y] = skyPixelOf(now.bearingDeg, now.heightDeg);
  return (
    <g
      {...grip}
      role="button"
      tabIndex={0}
      aria-label={words.point(now.bearingDeg, now.heightDeg)}
      className="plan-knob"
    >
      <circle className="plan-touch" cx={x} cy={y} r={22} />
      <circle className="plan-shape" cx={x} cy={y} r={6} />
    </g>
  );
}
