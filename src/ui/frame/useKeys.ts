/** Keys run commands, except where they would disturb somebody who is typing. */
import { useEffect } from 'react';
import { commandFor, type Host } from '../../editor/commands.ts';
import type { Editor } from '../../editor/editor.ts';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('input:not([type=checkbox], [type=range]), select, textarea');

/** @param withSingles whether keys without Ctrl, Alt or Shift run commands too */
export function useKeys(editor: Editor, host: Host, withSingles: boolean): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const command = commandFor(event, withSingles);
      const mayDisturb = command !== null && ['open', 'save', 'help'].includes(command.id);
      if (command === null || event.defaultPrevented || !command.isReady(editor)) return;
      if ((isTyping(event.target) && !mayDisturb) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      command.run(editor, host);
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [editor, host, withSingles]);
}
