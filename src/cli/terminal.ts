/** What the command sees of the world, so that tests can be its world. */
export interface Terminal {
  /** The first bytes of a file, at most so many. Rejects as node does. */
  readFile(path: string, mostBytes: number): Promise<Uint8Array>;
  /** The same of standard input. */
  readInput(mostBytes: number): Promise<Uint8Array>;
  /** Writes a file whole, over one that is there. Rejects as node does. */
  writeFile(path: string, bytes: Uint8Array): Promise<void>;
  /** To standard output; resolves when it is written. */
  out(text: string): Promise<void>;
  /** To standard error. */
  err(text: string): void;
  /** Shows how far the work is, on one line that is written over; null when nobody looks. */
  readonly showProgress: ((doing: string, done: number) => void) | null;
}
