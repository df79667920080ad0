/** The name of the tree, whether it is kept, and the menu. */
import { useFile, useView } from '../state/workbench.ts';
import { Menu } from './Menu.tsx';
import { frameWords as words } from './words.ts';

const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

function KeptState() {
  const { kept } = useView();
  const text =
    kept === null
      ? words.kept.never
      : kept.state === 'kept'
        ? words.keptAt(clock.format(kept.atMs))
        : words.kept[kept.state];
  return (
    <p className={kept?.state === 'failed' ? 'kept is-wrong' : 'kept'} role="status">
      {text}
    </p>
  );
}

export function TopBar() {
  const file = useFile();
  return (
    <header className="top-bar">
      <div className="top-title">
        <h1>{file.name}</h1>
        <KeptState />
      </div>
      <Menu />
    </header>
  );
}
