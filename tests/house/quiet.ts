/** A test that prints a warning or an error fails: whoever expects one takes it with a spy of their own. */
import { afterEach, beforeEach, vi } from 'vitest';

let printed: string[] = [];

beforeEach(() => {
  printed = [];
  for (const level of ['warn', 'error'] as const) {
    vi.spyOn(console, level).mockImplementation((...words: unknown[]) => {
      printed.push(`console.${level}: ${words.map(String).join(' ')}`);
    });
  }
});

afterEach(() => {
  vi.restoreAllMocks();
  if (printed.length > 0) throw new Error(`a test must not print warnings, got ${printed.join('; ')}`);
});
