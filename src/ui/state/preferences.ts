/** What this person likes, kept on the device and never in a tree file. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Shelf } from '../../editor/keeping.ts';
import type { Units } from '../../geometry/measure.ts';

export const sheetNames = ['place', 'tree', 'light', 'work'] as const;
export type SheetName = (typeof sheetNames)[number];

export const themes = ['paper', 'dusk', 'outdoors'] as const;
export type Theme = (typeof themes)[number];

export interface Preferences {
  readonly units: Units;
  readonly theme: Theme;
  readonly sheet: SheetName;
  /** Keys without Ctrl, Alt or Shift run commands. Speech input may press them unasked (WCAG 2.2, 2.1.4). */
  readonly singleKeys: boolean;
}

const key = 'boughlight.preferences';

/** The one of `allowed` that `value` is, or `otherwise`. */
function oneOf<T extends string>(allowed: readonly T[], value: unknown, otherwise: T): T {
  return allowed.find((one) => one === value) ?? otherwise;
}

function kept(shelf: Shelf): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(shelf.getItem(key) ?? '{}');
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** @param language of the reader, as the browser tells it: US units for American English */
export function createPreferences(shelf: Shelf, language: string): StoreApi<Preferences> {
  const found = kept(shelf);
  const store = createStore<Preferences>(() => ({
    units: oneOf(['metric', 'us'], found.units, language === 'en-US' ? 'us' : 'metric'),
    theme: oneOf(themes, found.theme, 'paper'),
    sheet: oneOf(sheetNames, found.sheet, 'light'),
    singleKeys: found.singleKeys !== false,
  }));
  store.subscribe((preferences) => {
    try {
      shelf.setItem(key, JSON.stringify(preferences));
    } catch {
      // Nothing is lost but a preference: the page goes on with it until it is closed.
    }
  });
  return store;
}
