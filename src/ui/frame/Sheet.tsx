/** The sheet with its four tabs. On a phone it slides up from the bottom in three steps. */
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useRef,
} from 'react';
import { sheetNames } from '../state/preferences.ts';
import { type SheetSize, usePreferences, useView, useWorkbench } from '../state/workbench.ts';
import { frameWords as words } from './words.ts';

const sizes: readonly SheetSize[] = ['peek', 'half', 'full'];

const stepped = (size: SheetSize, by: number): SheetSize =>
  sizes[Math.min(sizes.length - 1, Math.max(0, sizes.indexOf(size) + by))] ?? size;

/** Where a page gives way to another and the focus was on what is gone, the new page takes it: keys go on from there. */
function useKeptFocus(page: RefObject<HTMLElement | null>): void {
  const { sheet } = usePreferences();
  const { isStarting, isGrid } = useView();
  const isFirst = useRef(true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is these that change the page
  useEffect(() => {
    if (!isFirst.current && document.activeElement === document.body)
      page.current?.focus({ preventScroll: true });
    isFirst.current = false;
  }, [page, sheet, isStarting, isGrid]);
}

export function Sheet({ children }: { readonly children: ReactNode }) {
  const { sheetSize } = useView();
  const { sheet } = usePreferences();
  const page = useRef<HTMLDivElement>(null);
  useKeptFocus(page);
  return (
    <main className="sheet" data-size={sheetSize}>
      <Handle />
      <Tabs />
      <div
        className="sheet-page"
        role="tabpanel"
        id={`sheet-${sheet}`}
        aria-labelledby={`tab-${sheet}`}
        // A page that scrolls must be reachable by key.
        tabIndex={0}
        key={sheet}
        ref={page}
      >
        {children}
      </div>
    </main>
  );
}

function Tabs() {
  const { preferences, view } = useWorkbench();
  const { sheet } = usePreferences();
  const list = useRef<HTMLDivElement>(null);
  const show = (to: (typeof sheetNames)[number]) => {
    preferences.setState({ sheet: to });
    if (view.getState().sheetSize === 'peek') view.setState({ sheetSize: 'half' });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    const next = sheetNames[(sheetNames.indexOf(sheet) + by + sheetNames.length) % sheetNames.length];
    if (next === undefined) return;
    event.preventDefault();
    show(next);
    list.current?.querySelector<HTMLElement>(`#tab-${next}`)?.focus();
  };
  return (
    <div className="tabs" role="tablist" aria-label={words.tabs} ref={list}>
      {sheetNames.map((name) => (
        <button
          key={name}
          id={`tab-${name}`}
          type="button"
          role="tab"
          className="tab"
          aria-selected={sheet === name}
          {...(sheet === name ? { 'aria-controls': `sheet-${name}` } : {})}
          tabIndex={sheet === name ? 0 : -1}
          title={words.sheets[name].about}
          onClick={() => show(name)}
          onKeyDown={onKeyDown}
        >
          {words.sheets[name].tab}
        </button>
      ))}
    </div>
  );
}

/** Drag it or press it: up a step, and from the top down again. */
function Handle() {
  const { view } = useWorkbench();
  const { sheetSize } = useView();
  const from = useRef<number | null>(null);
  const isDragged = useRef(false);
  const step = (by: number) => view.setState({ sheetSize: stepped(sheetSize, by) });

  const onPointerDown = (event: PointerEvent) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    from.current = event.clientY;
    isDragged.current = false;
  };
  const onPointerUp = (event: PointerEvent) => {
    const movedPx = from.current === null ? 0 : event.clientY - from.current;
    from.current = null;
    isDragged.current = Math.abs(movedPx) > 24;
    if (isDragged.current) step(movedPx < 0 ? (movedPx < -260 ? 2 : 1) : movedPx > 260 ? -2 : -1);
  };
  return (
    <button
      type="button"
      className="handle"
      aria-label={sheetSize === 'full' ? words.lower : words.taller}
      onPointerDown={onPointerDown}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        from.current = null;
      }}
      onClick={() => {
        if (!isDragged.current)
          view.setState({ sheetSize: sheetSize === 'full' ? 'peek' : stepped(sheetSize, 1) });
        isDragged.current = false;
      }}
    >
      <span className="handle-bar" aria-hidden="true" />
    </button>
  );
}
