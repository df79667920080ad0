import { describe, expect, it } from 'vitest';
import { createPreferences } from '../../../src/ui/state/preferences.ts';

const shelfWith = (text: string | null) => {
  let kept = text;
  return { getItem: () => kept, setItem: (_: string, next: string) => void (kept = next), now: () => kept };
};

describe('preferences', () => {
  it('come back as they were left', () => {
    const shelf = shelfWith(null);
    createPreferences(shelf, 'de-DE').setState({
      theme: 'dusk',
      units: 'us',
      sheet: 'work',
      singleKeys: false,
    });
    expect(createPreferences(shelf, 'de-DE').getState()).toEqual({
      theme: 'dusk',
      units: 'us',
      sheet: 'work',
      singleKeys: false,
    });
  });

  it('begin in US units for American English alone', () => {
    expect(createPreferences(shelfWith(null), 'en-US').getState().units).toBe('us');
    expect(createPreferences(shelfWith(null), 'en-GB').getState().units).toBe('metric');
  });

  it.each(['{', '7', 'null', '[]', '{"theme":"neon","units":3,"sheet":null}'])(
    'survive %s on the shelf',
    (text) => {
      expect(createPreferences(shelfWith(text), 'fr').getState()).toEqual({
        theme: 'paper',
        units: 'metric',
        sheet: 'light',
        singleKeys: true,
      });
    },
  );

  it('do without a shelf that refuses', () => {
    const refusing = {
      getItem: () => {
        throw new Error('forbidden');
      },
      setItem: () => {
        throw new Error('forbidden');
      },
    };
    const store = createPreferences(refusing, 'en-GB');
    store.setState({ theme: 'outdoors' });
    expect(store.getState().theme).toBe('outdoors');
  });
});
