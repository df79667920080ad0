/** The ground, what hangs above it, and the skyline: three short forms, each with what is so now on its lid. */
import { changeLand, changeSite } from '../../../../editor/edits/place.ts';
import { wind } from '../../../../geometry/world.ts';
import { ChoiceField } from '../../../fields/ChoiceField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { Cover } from './Cover.tsx';
import { freshSlope } from './fresh.ts';
import { SkylineForm } from './SkylineForm.tsx';

const words = placeWords.land;

export function Land() {
  const { cover, skyline } = useFile().site;
  return (
    <section className="land">
      <Ground />
      <details>
        <summary>{words.cover(cover?.name ?? null)}</summary>
        <Cover />
      </details>
      <details>
        <summary>{words.skyline(skyline?.points.length ?? 0)}</summary>
        <SkylineForm />
      </details>
    </section>
  );
}

function Ground() {
  const { editor } = useWorkbench();
  const { groundReflectance, slope, wallsThrowLight } = useFile().site;
  const { percent, angle, bearing } = quantities;
  const tilt = (part: Partial<typeof freshSlope> | null) =>
    editor.make((file) =>
      changeLand(file, 'slope', part === null ? null : { ...freshSlope, ...slope, ...part }),
    );
  const slopeWords =
    slope === undefined
      ? words.level
      : words.falls(angle.write(slope.slopeDeg, 'metric'), wind(slope.fallsToDeg));
  return (
    <details>
      <summary>{words.ground(percent.write(groundReflectance, 'metric'), slopeWords)}</summary>
      <div className="form land-form">
        <div className="is-wide">
          <NumberField
            label={words.reflectance}
            note={words.reflectanceNote}
            value={groundReflectance}
            quantity={percent}
            onCommit={(v) => editor.make((file) => changeSite(file, { groundReflectance: v }))}
          />
        </div>
        <div className="is-wide">
          <ChoiceField
            label={words.slope}
            value={slope === undefined ? 'level' : 'falls'}
            options={[
              { value: 'level', text: words.slopes.level },
              { value: 'falls', text: words.slopes.falls },
            ]}
            onChoose={(choice) => tilt(choice === 'level' ? null : {})}
          />
        </div>
        {slope === undefined ? null : (
          <>
            <NumberField
              label={words.slopeDeg}
              value={slope.slopeDeg}
              quantity={quantities.slope}
              onCommit={(slopeDeg) => tilt({ slopeDeg })}
            />
            <NumberField
              label={words.fallsTo}
              value={slope.fallsToDeg}
              quantity={bearing}
              onCommit={(fallsToDeg) => tilt({ fallsToDeg })}
            />
          </>
        )}
        <div className="is-wide">
          <ChoiceField
            label={words.walls}
            value={wallsThrowLight === true ? 'counted' : 'dark'}
            options={[
              { value: 'dark', text: words.wallsThrow.dark },
              { value: 'counted', text: words.wallsThrow.counted },
            ]}
            onChoose={(choice) =>
              editor.make((file) => changeSite(file, { wallsThrowLight: choice === 'counted' }))
            }
          />
        </div>
      </div>
    </details>
  );
}
