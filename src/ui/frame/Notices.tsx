/** The last thing said about an edit or a file. What was done leaves by itself; a refusal stays until it is read. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { useWorkbench } from '../state/workbench.ts';
import { frameWords as words } from './words.ts';

const stayMs = 6000;

export function Notices() {
  const { editor } = useWorkbench();
  const notice = useStore(editor.store, (s) => s.notice);
  useEffect(() => {
    if (notice?.kind !== 'done') return undefined;
    const timer = setTimeout(() => editor.say(null), stayMs);
    return () => clearTimeout(timer);
  }, [notice, editor]);
  return (
    <div className="notices">
      <div role="status">{notice?.kind === 'done' ? <p className="notice">{notice.text}</p> : null}</div>
      <div role="alert">
        {notice?.kind === 'refused' ? (
          <div className="notice is-refused">
            <p>{notice.text}</p>
            <button type="button" className="button" onClick={() => editor.say(null)}>
              {words.dismiss}
            </button>
          </div>
        ) : null}
      </div>
    </div>
  );
}
