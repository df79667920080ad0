/** What the numbers can and cannot tell, and every command with its keys. */
import type { Ref } from 'react';
import { commands } from '../../editor/commands.ts';
import { useWorkbench } from '../state/workbench.ts';
import { helpWords as words } from './words.ts';

export function HelpDialog({ ref }: { readonly ref: Ref<HTMLDialogElement> }) {
  const { editor } = useWorkbench();
  return (
    <dialog ref={ref} className="help" aria-labelledby="help-title">
      <form method="dialog" className="help-head">
        <h2 id="help-title">{words.title}</h2>
        <button type="submit" className="button">
          {words.close}
        </button>
      </form>
      {words.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      <h3 className="small-head">{words.commands}</h3>
      <table className="rows">
        <thead className="unseen">
          <tr>
            <th scope="col">{words.columns.what}</th>
            <th scope="col">{words.columns.keys}</th>
          </tr>
        </thead>
        <tbody>
          {commands.map((command) => (
            <tr key={command.id}>
              <td>{command.help(editor)}</td>
              <td className="keys">{command.keys.map((key) => key.replace('Arrow', '')).join(' or ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </dialog>
  );
}
