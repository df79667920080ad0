/** What the figures mean, and what they cannot tell. */
import { lightWords as words } from './words.ts';

export function Meaning() {
  return (
    <details>
      <summary>{words.meaning}</summary>
      {words.meanings.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
    </details>
  );
}
