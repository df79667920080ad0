/** Starts the page: the tree kept last on this device, else the first sample. */
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './theme/tokens.css';
import './theme/base.css';
import './theme/outdoors.css';
import './frame/frame.css';
import './stage/stage.css';
import './stage/drawing/drawing.css';
import './stage/handles/handles.css';
import './fields/fields.css';
import './sheets/sheets.css';
import './sheets/light/light.css';
import './sheets/work/work.css';
import './theme/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { parseTreeFile } from '../document/parseTreeFile.ts';
import type { TreeFile } from '../document/treeFile.ts';
import { keptText, type Shelf } from '../editor/keeping.ts';
import { createBrowserEngine } from '../engine/browserEngine.ts';
import { App } from './App.tsx';
import { readSample, refusalText } from './files/openFile.ts';
import { createWorkbench, WorkbenchContext } from './state/workbench.ts';

const firstSample = 'potted-fig-in-leaf';

/** Storage may be forbidden altogether; then even naming it throws. */
const shelf: Shelf = {
  getItem: (key) => localStorage.getItem(key),
  setItem: (key, text) => localStorage.setItem(key, text),
};

async function firstTree(): Promise<{ file: TreeFile; refused: string | null }> {
  const text = keptText(shelf);
  if (text === null) return { file: await readSample(firstSample), refused: null };
  const parsed = parseTreeFile(text);
  if (parsed.ok) return { file: parsed.file, refused: null };
  return {
    file: await readSample(firstSample),
    refused: refusalText('The tree kept on this device', parsed.reason, parsed.where),
  };
}

async function start(): Promise<void> {
  const root = document.getElementById('root');
  if (root === null) throw new Error('start: the page has no element with the id root');
  // The worker loads while the tree is read.
  const engine = createBrowserEngine();
  const { file, refused } = await firstTree();
  const bench = createWorkbench(file, engine, shelf, navigator.language);
  if (refused !== null) bench.editor.say({ kind: 'refused', text: refused });
  createRoot(root).render(
    <StrictMode>
      <WorkbenchContext value={bench}>
        <App />
      </WorkbenchContext>
    </StrictMode>,
  );
}

start().catch(() => {
  document
    .getElementById('start')
    ?.replaceChildren('The page could not start. Reload it, or go online once.');
});
