/** The headless command's way into the process; nothing else here touches it. */
import { createReadStream } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import process from 'node:process';
import { parentPort, workerData } from 'node:worker_threads';
import { version } from '../../package.json';
import { createInPlaceEngine } from '../engine/inPlaceEngine.ts';
import { serveTracer } from '../engine/serveTracer.ts';
import { nodePort, nodeTracers, tracerRole } from './nodeTracers.ts';
import { run } from './run.ts';
import type { Terminal } from './terminal.ts';

async function firstBytes(stream: AsyncIterable<Uint8Array>, mostBytes: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    size += chunk.byteLength;
    if (size >= mostBytes) break;
  }
  return new Uint8Array(Buffer.concat(chunks).subarray(0, mostBytes));
}

/** One line that is written over, and wiped before anything else is printed. */
const showProgress = (doing: string, done: number): void => {
  process.stderr.write(`\r\u001b[K${doing} ${Math.round(100 * done)} %`);
};
const wipe = process.stderr.isTTY ? '\r\u001b[K' : '';

const terminal: Terminal = {
  readFile: (path, mostBytes) => firstBytes(createReadStream(path), mostBytes),
  readInput: (mostBytes) => firstBytes(process.stdin, mostBytes),
  writeFile: (path, bytes) => writeFile(path, bytes),
  out: (text) =>
    new Promise((resolve, reject) => {
      process.stderr.write(wipe);
      process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
    }),
  err: (text) => {
    process.stderr.write(wipe + text);
  },
  showProgress: process.stderr.isTTY ? showProgress : null,
};

async function runCommand(): Promise<void> {
  // Whoever reads the answer may stop early, as `head` does: that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    process.stderr.write(`boughlight: the answer cannot be written (${error.message}).\n`);
    process.exit(1);
  });
  const makeEngine = () => createInPlaceEngine(nodeTracers(new URL(import.meta.url)));
  process.exitCode = await run(process.argv.slice(2), { terminal, makeEngine, version });
}

if (parentPort !== null && workerData === tracerRole) serveTracer(nodePort(parentPort));
else await runCommand();
