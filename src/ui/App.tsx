/** The page: the stage, and the sheet beside it or over it. */
import { type DragEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { Host } from '../editor/commands.ts';
import { openFromDevice } from './files/openFile.ts';
import { isWeatherFile, takeWeatherFromDevice } from './files/openWeather.ts';
import { saveFile } from './files/saveFile.ts';
import { HostContext } from './frame/host.ts';
import { Notices } from './frame/Notices.tsx';
import { isNarrow } from './frame/narrow.ts';
import { Sheet } from './frame/Sheet.tsx';
import { TopBar } from './frame/TopBar.tsx';
import { useKeys } from './frame/useKeys.ts';
import { frameWords as words } from './frame/words.ts';
import { HelpDialog } from './help/HelpDialog.tsx';
import { LightSheet } from './sheets/light/LightSheet.tsx';
import { PlaceSheet } from './sheets/place/PlaceSheet.tsx';
import { TreeSheet } from './sheets/tree/TreeSheet.tsx';
import { WorkSheet } from './sheets/work/WorkSheet.tsx';
import { StageArea } from './stage/StageArea.tsx';
import { usePreferences, useView, useWorkbench, type View } from './state/workbench.ts';

const sheets = { place: PlaceSheet, tree: TreeSheet, light: LightSheet, work: WorkSheet } as const;

/** On a phone the sheet makes room for the tree while the hand draws, and comes back after. */
function handChanged({ hand, sheetSize }: View): Partial<View> {
  const next = hand === 'look' ? 'draw' : 'look';
  if (!isNarrow()) return { hand: next };
  if (next === 'draw') return { hand: next, sheetSize: 'peek' };
  return { hand: next, sheetSize: sheetSize === 'peek' ? 'half' : sheetSize };
}

export function App() {
  const bench = useWorkbench();
  const { sheet, theme, singleKeys } = usePreferences();
  const { sheetSize } = useView();
  const picker = useRef<HTMLInputElement>(null);
  const help = useRef<HTMLDialogElement>(null);
  const host = useMemo<Host>(
    () => ({
      openFile: () => picker.current?.click(),
      saveFile: () => bench.editor.say({ kind: 'done', text: `Saved ${saveFile(bench.editor.file())}` }),
      showSheet: (to) => bench.preferences.setState({ sheet: to }),
      view: (side) => bench.stage.current?.view(side),
      showHelp: () => help.current?.showModal(),
      toggleHand: () => bench.view.setState(handChanged),
      startTree: () => {
        bench.preferences.setState({ sheet: 'tree' });
        const { sheetSize } = bench.view.getState();
        bench.view.setState({ isStarting: true, sheetSize: sheetSize === 'peek' ? 'half' : sheetSize });
      },
    }),
    [bench],
  );
  useKeys(bench.editor, host, singleKeys);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  // Another sheet ends the choice of a form.
  useEffect(() => {
    if (sheet !== 'tree') bench.view.setState({ isStarting: false });
  }, [bench, sheet]);
  const Page = sheets[sheet];
  return (
    <HostContext value={host}>
      <DropArea>
        <div className="page" data-size={sheetSize}>
          <TopBar />
          <StageArea />
          <Sheet>
            <Page />
          </Sheet>
          <Notices />
        </div>
      </DropArea>
      <HelpDialog ref={help} />
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label="Tree file"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) void openFromDevice(bench.editor, file);
          event.target.value = '';
        }}
      />
    </HostContext>
  );
}

/** A tree file or a weather file may be dropped anywhere. */
function DropArea({ children }: { readonly children: ReactNode }) {
  const bench = useWorkbench();
  const [isOver, setOver] = useState(false);
  const holdsFile = (event: DragEvent) => event.dataTransfer.types.includes('Files');
  return (
    <div
      className="drop-area"
      onDragOver={(event) => {
        if (!holdsFile(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (event.currentTarget === event.target) setOver(false);
      }}
      onDrop={(event) => {
        setOver(false);
        const file = event.dataTransfer.files[0];
        if (file === undefined) return;
        event.preventDefault();
        if (isWeatherFile(file.name)) void takeWeatherFromDevice(bench, file);
        else void openFromDevice(bench.editor, file);
      }}
    >
      {children}
      {isOver ? <p className="drop-note">{words.drop}</p> : null}
    </div>
  );
}
