/** A button that runs a command of the table. */
import { useStore } from 'zustand';
import { type Command, commandOf } from '../../editor/commands.ts';
import { useWorkbench } from '../state/workbench.ts';
import { useHost } from './host.ts';

interface CommandButtonProps {
  readonly id: string;
  readonly className?: string;
  /** Shows the longer words, such as how many branches a deletion takes. */
  readonly isLong?: boolean;
  readonly onDone?: () => void;
}

const keyHint = (command: Command): string => (command.keys[0] === undefined ? '' : ` (${command.keys[0]})`);

export function CommandButton({ id, className = 'button', isLong = false, onDone }: CommandButtonProps) {
  const { editor } = useWorkbench();
  const host = useHost();
  const command = commandOf(id);
  // Whether it is ready, and what it says, may change with anything in the editor.
  useStore(editor.store);
  const help = command.help(editor);
  return (
    <button
      type="button"
      className={className}
      disabled={!command.isReady(editor)}
      title={`${help}${keyHint(command)}`}
      data-command={id}
      onClick={() => {
        command.run(editor, host);
        onDone?.();
      }}
    >
      {isLong ? help : command.title}
    </button>
  );
}
