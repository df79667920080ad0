/** What a stroke has come over so far, in words. */
import { useStore } from 'zustand';
import { useWorkbench } from '../../state/workbench.ts';
import { markingWords as words } from './words.ts';

export function Marking() {
  const { marks } = useWorkbench();
  const { under, as } = useStore(marks.store);
  if (under === null) return null;
  return (
    <p className="marking" role="status">
      {words.under(under.size, words.marks[as])}
    </p>
  );
}
