/** The six views of the stage, one tap and one key each, and words for the one it has. */
import { useStore } from 'zustand';
import { commandOf } from '../../editor/commands.ts';
import { useHost } from '../frame/host.ts';
import { pictureAxes } from '../scene/framing.ts';
import type { StageEye, StageView } from '../scene/stageModel.ts';
import { usePreferences, useWorkbench } from '../state/workbench.ts';
import { viewWords as words } from './viewWords.ts';

const views = ['north', 'east', 'south', 'west', 'above', 'free'] as const satisfies readonly StageView[];
const commandIdOf = (view: StageView): string => (view === 'free' ? 'from-front' : `from-${view}`);

const seenBy = (eye: StageEye | null): string =>
  eye === null ? '' : words.seen(eye.side, eye.facing, pictureAxes(eye.facing).right);

export function Views() {
  const { eye } = useWorkbench();
  const side = useStore(eye, ({ now }) => now?.side ?? null);
  const seen = useStore(eye, ({ now }) => seenBy(now));
  return (
    <div className="views-area">
      <p className="view-seen" data-testid="view-seen">
        {seen}
      </p>
      <div className="views" role="group" aria-label={words.looking}>
        {views.map((view) => (
          <ViewButton key={view} view={view} isPressed={view === side} />
        ))}
      </div>
    </div>
  );
}

function ViewButton({ view, isPressed }: { readonly view: StageView; readonly isPressed: boolean }) {
  const { editor } = useWorkbench();
  const host = useHost();
  const { singleKeys } = usePreferences();
  const command = commandOf(commandIdOf(view));
  const key = singleKeys && command.keys[0] !== undefined ? ` (${command.keys[0]})` : '';
  return (
    <button
      type="button"
      className="button is-view"
      aria-pressed={isPressed}
      aria-label={`${words.long[view]}: ${command.help(editor)}`}
      title={`${command.help(editor)}${key}`}
      data-command={command.id}
      onClick={() => command.run(editor, host)}
    >
      <span className="view-long">{words.long[view]}</span>
      <span className="view-short">{words.short[view]}</span>
    </button>
  );
}
