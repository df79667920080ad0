/** What three has to say goes to the browser's console, but for one line that the page can do nothing about. */
import { setConsoleFunction } from 'three';

/** Said of the clock that fiber 9.8 still makes for itself. */
const knownTalk = 'Clock: This module has been deprecated';

/** To be called before the first canvas is made. */
export function quietKnownTalk(): void {
  setConsoleFunction((kind: 'log' | 'warn' | 'error', message: string, ...details: unknown[]) => {
    if (!message.includes(knownTalk)) console[kind](message, ...details);
  });
}
