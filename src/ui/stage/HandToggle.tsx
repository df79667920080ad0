/** Whether a hand on the stage only looks, or draws and pulls branches. */
import { commandOf } from '../../editor/commands.ts';
import { useHost } from '../frame/host.ts';
import { usePreferences, useView, useWorkbench } from '../state/workbench.ts';

export function HandToggle() {
  const { editor } = useWorkbench();
  const host = useHost();
  const { hand } = useView();
  const { singleKeys } = usePreferences();
  const command = commandOf('draw');
  return (
    <button
      type="button"
      className="button hand-toggle"
      aria-pressed={hand === 'draw'}
      title={`${command.help(editor)}${singleKeys ? ` (${command.keys[0] ?? ''})` : ''}`}
      data-command={command.id}
      onClick={() => command.run(editor, host)}
    >
      {command.title}
    </button>
  );
}
