/** The skyline as bearings and heights, beside its picture. */
import { changeLand } from '../../../../editor/edits/place.ts';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { freshSkyline } from './fresh.ts';
import { SkylineView } from './SkylineView.tsx';
import { nextPoint, type Skyline } from './skyline.ts';

const words = placeWords.land;

export function SkylineForm() {
  const { editor } = useWorkbench();
  const { skyline } = useFile().site;
  const put = (next: Skyline | null) => void editor.make((file) => changeLand(file, 'skyline', next));
  if (skyline === undefined) {
    return (
      <div className="land-form">
        <p>{words.noSkyline}</p>
        <button type="button" className="button" onClick={() => put(freshSkyline)}>
          {words.enterSkyline}
        </button>
      </div>
    );
  }
  return (
    <div className="land-form">
      <SkylineView skyline={skyline} />
      <p className="quiet small">{words.skylineHow}</p>
      <SkylineTable skyline={skyline} put={put} />
      <div className="button-row">
        <button
          type="button"
          className="button"
          onClick={() => put({ ...skyline, points: [...skyline.points, nextPoint(skyline.points)] })}
        >
          {words.addPoint}
        </button>
        <button type="button" className="button" onClick={() => put(null)}>
          {words.takeSkyline}
        </button>
      </div>
      <NumberField
        label={words.brightness}
        value={skyline.reflectance}
        quantity={quantities.percent}
        onCommit={(reflectance) => put({ ...skyline, reflectance })}
      />
    </div>
  );
}

interface SkylineTableProps {
  readonly skyline: Skyline;
  readonly put: (next: Skyline) => void;
}

function SkylineTable({ skyline, put }: SkylineTableProps) {
  const { points } = skyline;
  const rows = points
    .map((point, index) => ({ point, index }))
    .sort((a, b) => a.point.bearingDeg - b.point.bearingDeg);
  return (
    <table className="rows months">
      <thead>
        <tr>
          <th scope="col" className="figure">
            {words.bearing} °
          </th>
          <th scope="col" className="figure">
            {words.height} °
          </th>
          <th scope="col">
            <span className="unseen">{placeWords.takeAway('')}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ point, index }) => (
          <tr key={index}>
            {(['bearingDeg', 'heightDeg'] as const).map((key) => (
              <td key={key}>
                <NumberField
                  isBare
                  label={`${key === 'bearingDeg' ? words.bearing : words.height}, ${words.point(point.bearingDeg, point.heightDeg)}`}
                  value={point[key]}
                  quantity={quantities[key === 'bearingDeg' ? 'bearing' : 'slope']}
                  onCommit={(v) => put({ ...skyline, points: points.with(index, { ...point, [key]: v }) })}
                />
              </td>
            ))}
            <td>
              <button
                type="button"
                className="button is-small"
                aria-label={words.takePoint(point.bearingDeg)}
                disabled={points.length === 1}
                onClick={() => put({ ...skyline, points: points.toSpliced(index, 1) })}
              >
                ✕
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
