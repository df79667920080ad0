/** What the colours on the tree mean: a small bar, its limits in figures; at a moment of a day, sun and shade. */
import { stageColours } from '../scene/stageColours.ts';
import { dayWords } from '../sheets/light/dayWords.ts';
import { lightWords, limitPercent } from '../sheets/light/words.ts';
import { usePreferences, useView } from '../state/workbench.ts';
import type { LightClass } from '../theme/lightScale.ts';
import { useInsideSaid } from './seeInside.ts';
import { useLightScale } from './useLightScale.ts';
import { useLightAge } from './useStageLight.ts';

export function Legend() {
  const { sheet } = usePreferences();
  const { lookingAt, isFromSun } = useView();
  return sheet === 'light' && lookingAt === 'day' && !isFromSun ? <MomentLegend /> : <ScaleLegend />;
}

function MomentLegend() {
  const { theme } = usePreferences();
  const { lit, shade } = stageColours[theme];
  return (
    <figure className="legend">
      <figcaption>{dayWords.legend}</figcaption>
      <ul className="legend-list">
        {[
          [lit, dayWords.inSunNow],
          [shade, dayWords.inShadeNow],
        ].map(([colour, text]) => (
          <li key={text}>
            <span className="swatch" style={{ backgroundColor: colour }} aria-hidden="true" />
            {text}
          </li>
        ))}
      </ul>
      <Hidden />
      <Age />
    </figure>
  );
}

interface BarProps {
  readonly classes: readonly LightClass[];
}

function Bar({ classes }: BarProps) {
  return (
    <>
      <div className="legend-bar" aria-hidden="true">
        {classes.map((c) => (
          <span key={c.name} style={{ backgroundColor: c.css }} />
        ))}
      </div>
      <div className="legend-figures">
        {classes.slice(1).map((c) => (
          <span key={c.name}>{limitPercent(c.from)}</span>
        ))}
      </div>
    </>
  );
}

/** Each class carries its figures: in bright sun its colour alone is not told for sure. */
function Figured({ classes }: BarProps) {
  return (
    <ul className="legend-bar is-figured">
      {classes.map((c) => (
        <li key={c.name} style={{ backgroundColor: c.css, color: c.inkCss }}>
          {c.to === 1 ? `${limitPercent(c.from)} +` : `< ${limitPercent(c.to)}`}
        </li>
      ))}
    </ul>
  );
}

/** What is not drawn, or only faintly. */
function Hidden() {
  const said = useInsideSaid();
  return said.map((text) => (
    <p key={text} className="legend-hidden">
      {text}
    </p>
  ));
}

/** Says when the colours are not of the tree as it stands there. */
function Age() {
  const age = useLightAge();
  if (age === 'current') return null;
  return (
    <p className="legend-age" data-testid="light-age">
      {age === 'on its way' ? lightWords.onItsWay : lightWords.ofAMomentAgo}
    </p>
  );
}

function ScaleLegend() {
  const { sheet, theme } = usePreferences();
  const { colouring } = useView();
  const title = sheet === 'light' && colouring === 'leaf' ? lightWords.leafLegend : lightWords.legend;
  const { classes } = useLightScale();
  const isInSun = theme === 'outdoors';
  return (
    <figure className="legend" aria-label={title}>
      <figcaption>{title}, %</figcaption>
      {isInSun ? <Figured classes={classes} /> : <Bar classes={classes} />}
      <Hidden />
      <Age />
    </figure>
  );
}
