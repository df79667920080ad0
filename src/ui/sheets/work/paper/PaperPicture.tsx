/** Two line drawings of the tree with the numbered cuts, made from the tree and not from the stage: sharp on any printer. */
import { useMemo } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { metresPer } from '../../../../geometry/measure.ts';
import { wind } from '../../../../geometry/world.ts';
import type { Cut } from '../../../../plan/cut.ts';
import { drawnCanopy } from '../../../stage/drawnCanopy.ts';
import { placeMarks } from '../../../stage/placeMarks.ts';
import { useUnits } from '../../../state/workbench.ts';
import { type PaperView, paperPicture, tagSize } from './paperPlot.ts';
import { paperWords as words } from './paperWords.ts';

const frame = { width: 340, height: 260, margin: 26 } as const;

interface PaperPicturesProps {
  readonly file: TreeFile;
  readonly cuts: readonly { readonly cut: Cut; readonly n: number }[];
}

export function PaperPictures({ file, cuts }: PaperPicturesProps) {
  const { viewpoint } = file.site;
  const side = viewpoint?.bearingDeg ?? 180;
  const from = wind(side);
  return (
    <div className="paper-pictures">
      <Drawing
        file={file}
        cuts={cuts}
        view={side}
        title={viewpoint === null ? words.fromSide(from) : words.fromPlace(viewpoint.name, from)}
      />
      <Drawing file={file} cuts={cuts} view="above" title={words.fromAbove} />
    </div>
  );
}

function Drawing({ file, cuts, view, title }: PaperPicturesProps & { view: PaperView; title: string }) {
  const units = useUnits();
  const picture = useMemo(() => {
    const canopy = drawnCanopy(file, 'as sketched');
    const marks = cuts.map(({ cut, n }) => ({ ...cut, text: `${n}` }));
    return paperPicture(canopy, placeMarks(file, canopy, marks), view, frame, file.standing.pot);
  }, [file, cuts, view]);
  const bar = units === 'us' ? { m: metresPer.ft, text: words.foot } : { m: 0.5, text: words.halfMetre };
  const barY = frame.height - 6;
  return (
    <figure>
      <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={title}>
        {picture.groundY === null ? null : (
          <line className="paper-ground" x1={0} x2={frame.width} y1={picture.groundY} y2={picture.groundY} />
        )}
        {picture.pot === null ? null : <polygon className="paper-pot" points={picture.pot} />}
        {picture.wood.map(({ x1, y1, x2, y2, width }, i) => (
          <line key={i} className="paper-wood" x1={x1} y1={y1} x2={x2} y2={y2} strokeWidth={width} />
        ))}
        {picture.tags.map(({ x, y, tagX, tagY, text }) => (
          <g key={text} className="paper-tag">
            <line x1={x} y1={y} x2={tagX} y2={tagY} />
            <circle cx={x} cy={y} r={1.6} />
            <rect
              x={tagX - tagSize.width / 2}
              y={tagY - tagSize.height / 2}
              width={tagSize.width}
              height={tagSize.height}
            />
            <text x={tagX} y={tagY + 3} textAnchor="middle">
              {text}
            </text>
          </g>
        ))}
        <line className="paper-bar" x1={6} x2={6 + bar.m * picture.perM} y1={barY} y2={barY} />
        <text x={10 + bar.m * picture.perM} y={barY + 3}>
          {bar.text}
        </text>
        {view === 'above' ? (
          <text x={frame.width - 6} y={14} textAnchor="end">
            {words.northUp}
          </text>
        ) : null}
      </svg>
      <figcaption>{title}</figcaption>
    </figure>
  );
}
