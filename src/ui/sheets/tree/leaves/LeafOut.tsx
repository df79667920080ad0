/** The leaves of the whole tree: their size as measured on it, and their number where nobody counted. */
import { useState } from 'react';
import { estimatedShoots, estimateLeaves, measureTreeMidrib } from '../../../../editor/edits/leaves.ts';
import { figValues } from '../../../../species/fig.ts';
import { DateField } from '../../../fields/DateField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { Segments } from '../../../fields/Segments.tsx';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { leafWords as words } from './words.ts';

export function LeafOut() {
  return (
    <details className="leaf-out">
      <summary>{words.head}</summary>
      <div className="branch-form">
        <TreeSize />
        <Estimate />
      </div>
    </details>
  );
}

function TreeSize() {
  const { editor } = useWorkbench();
  const { settings } = useFile();
  const isMeasured = 'leafMidribCm' in settings;
  const set = (midribM: number | null) => editor.make((file) => measureTreeMidrib(file, midribM));
  return (
    <div className="is-wide">
      <NumberField
        label={words.size}
        value={figValues(settings).leafMidribCm / 100}
        quantity={quantities.wood}
        note={isMeasured ? words.sizeIs.measured : words.sizeIs.usual}
        onCommit={set}
      />
      {isMeasured ? (
        <button type="button" className="button" onClick={() => set(null)}>
          {words.forget}
        </button>
      ) : null}
    </div>
  );
}

function Estimate() {
  const { editor } = useWorkbench();
  const file = useFile();
  const [how, setHow] = useState<keyof typeof words.hows>('day');
  const [day, setDay] = useState(file.season.sketchedOn);
  const estimated = estimatedShoots(file);
  const counted = file.axes.filter(({ foliage }) => foliage?.source === 'measured').length;
  return (
    <>
      <p className="is-wide">{words.counts(counted, estimated.length)}</p>
      {estimated.length === 0 ? null : (
        <>
          <div className="is-wide">
            <Segments
              label={words.how}
              value={how}
              options={(['day', 'grown'] as const).map((value) => ({ value, text: words.hows[value] }))}
              onChoose={setHow}
            />
          </div>
          {how === 'grown' ? null : <DateField label={words.day} value={day} onChoose={setDay} />}
          <button
            type="button"
            className="button is-wide"
            onClick={() => editor.make((now) => estimateLeaves(now, estimated, how === 'day' ? day : null))}
          >
            {words.estimate(estimated.length)}
          </button>
        </>
      )}
      <p className="quiet small is-wide">{words.kept}</p>
    </>
  );
}
