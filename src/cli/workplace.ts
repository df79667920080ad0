import type { Engine } from '../engine/engine.ts';
import type { Terminal } from './terminal.ts';

/** What a command works with. */
export interface Workplace {
  readonly terminal: Terminal;
  readonly makeEngine: () => Engine;
  /** Of the package. */
  readonly version: string;
}
