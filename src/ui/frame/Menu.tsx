/** Files, samples and preferences, behind one button. */
import { useRef } from 'react';
import { openSample, samples } from '../files/openFile.ts';
import { themes } from '../state/preferences.ts';
import { usePreferences, useWorkbench } from '../state/workbench.ts';
import { CommandButton } from './CommandButton.tsx';
import { frameWords as words } from './words.ts';

export function Menu() {
  const panel = useRef<HTMLDivElement>(null);
  const close = () => panel.current?.hidePopover();
  return (
    <>
      <button type="button" className="button" popoverTarget="menu">
        {words.menu}
      </button>
      <div id="menu" popover="auto" className="menu" ref={panel} role="dialog" aria-label={words.menu}>
        <section>
          <h2 className="small-head">{words.files}</h2>
          <div className="menu-row">
            <CommandButton id="open" onDone={close} />
            <CommandButton id="save" onDone={close} />
            <CommandButton id="help" onDone={close} />
          </div>
          <div className="menu-row">
            <CommandButton id="start" onDone={close} />
          </div>
        </section>
        <Samples onDone={close} />
        <Look />
      </div>
    </>
  );
}

function Samples({ onDone }: { readonly onDone: () => void }) {
  const { editor } = useWorkbench();
  return (
    <section>
      <h2 className="small-head">{words.samples}</h2>
      <ul className="menu-list">
        {samples.map((sample) => (
          <li key={sample.id}>
            <button
              type="button"
              className="menu-item"
              onClick={() => {
                void openSample(editor, sample.id);
                onDone();
              }}
            >
              <span>{sample.title}</span>
              <span className="quiet small">{sample.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Look() {
  const { preferences: store } = useWorkbench();
  const preferences = usePreferences();
  const set = store.setState;
  return (
    <section className="menu-look">
      <fieldset className="choice-row">
        <legend className="small-head">{words.look}</legend>
        {themes.map((theme) => (
          <label key={theme} className="choice">
            <input
              type="radio"
              name="theme"
              checked={preferences.theme === theme}
              onChange={() => set({ theme })}
            />
            {words.themes[theme]}
          </label>
        ))}
      </fieldset>
      <fieldset className="choice-row">
        <legend className="small-head">{words.units}</legend>
        {(['metric', 'us'] as const).map((units) => (
          <label key={units} className="choice">
            <input
              type="radio"
              name="units"
              checked={preferences.units === units}
              onChange={() => set({ units })}
            />
            {words.unitNames[units]}
          </label>
        ))}
      </fieldset>
      <fieldset className="choice-row">
        <legend className="small-head">{words.keys}</legend>
        <label className="choice">
          <input
            type="checkbox"
            checked={preferences.singleKeys}
            onChange={(event) => set({ singleKeys: event.target.checked })}
          />
          {words.singleKeys}
        </label>
      </fieldset>
    </section>
  );
}
