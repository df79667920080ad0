/** What the plan has to say beside its cuts, folded to one line. */
import { workWords as words } from './words.ts';

export function Remarks({ remarks }: { readonly remarks: readonly string[] }) {
  if (remarks.length === 0) return null;
  return (
    <details>
      <summary>{words.remarks(remarks.length)}</summary>
      <ul className="plain-list">
        {remarks.map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
      </ul>
    </details>
  );
}
