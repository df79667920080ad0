/**
 * Compiles `assembly` to WebAssembly and writes its bytes as text to src/light/trace/generated:
 * `node scripts/makeWasm.mjs`.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';
import { readStamp, root } from './fingerprint.mjs';

export const generatedFile = join(root, 'src', 'light', 'trace', 'generated', 'latticeBytes.ts');

const options = [
  '-O3',
  '--converge',
  '--runtime',
  'stub',
  '--enable',
  'simd',
  '--use',
  'abort=',
  '--noAssert',
];

/** The text of the generated file. */
export async function wasmText() {
  /** @type {Uint8Array | undefined} */
  let bytes;
  const { error } = await asc.main(
    ['lattice', 'pointGrid', 'retrace', 'ticks']
      .map((name) => `assembly/${name}.ts`)
      .concat(options, '--baseDir', root, '-o', 'lattice.wasm'),
    {
      writeFile: (_name, contents) => {
        if (typeof contents !== 'string') bytes = contents;
      },
    },
  );
  if (error !== null || bytes === undefined)
    throw new Error(`makeWasm: ${error?.message ?? 'nothing came out'}`);
  return [
    '/** Made by `node scripts/makeWasm.mjs` from `assembly`: the bytes of lattice and point grid as WebAssembly, in base 64. */',
    `export const latticeBytes =\n  '${Buffer.from(bytes).toString('base64')}';`,
    '',
  ].join('\n');
}

/** Writes the file if it is out of date; says whether it was. */
export async function makeWasm() {
  const text = await wasmText();
  if (readStamp(generatedFile) === text.trim()) return false;
  mkdirSync(dirname(generatedFile), { recursive: true });
  writeFileSync(generatedFile, text);
  return true;
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  console.log(`latticeBytes.ts: ${(await makeWasm()) ? 'written' : 'unchanged'}.`);
}
