/** Reading the project's sources as data: files, imports and the calls a pure room must not make. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'vite';

export const projectFolder = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

export interface SourceFile {
  /** Path in `src`, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** All TypeScript of `src`. */
export function readSources(): SourceFile[] {
  const src = join(projectFolder, 'src');
  return readdirSync(src, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
    .map((path) => ({ path, text: readFileSync(join(src, path), 'utf8') }));
}

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

function nodesOf(file: SourceFile): Node[] {
  const { program, errors } = parseSync(file.path, file.text);
  if (errors.length > 0) throw new Error(`nodesOf: ${file.path} cannot be read, got ${errors[0]?.message}`);
  const found: Node[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    else if (isNode(value)) {
      found.push(value);
      for (const child of Object.values(value)) if (typeof child === 'object') walk(child);
    }
  };
  walk(program);
  return found;
}

const importing = new Set([
  'ImportDeclaration',
  'ExportNamedDeclaration',
  'ExportAllDeclaration',
  'ImportExpression',
  'TSImportType',
]);

/** Everything the file imports, as written: values, types, re-exports, `import()` and `new URL(..., import.meta.url)`. */
export function importsOf(file: SourceFile): string[] {
  const wanted: string[] = [];
  for (const node of nodesOf(file)) {
    if (importing.has(node.type) && isNode(node['source'])) wanted.push(wordOf(node['source'], file));
    if (node.type === 'NewExpression' && /import\.meta\.url/.test(textOf(node, file))) {
      const [first] = node['arguments'] as Node[];
      if (first?.type === 'Literal') wanted.push(wordOf(first, file));
    }
  }
  return wanted;
}

function textOf(node: Node, file: SourceFile): string {
  return file.text.slice(node['start'] as number, node['end'] as number);
}

function wordOf(literal: Node, file: SourceFile): string {
  if (typeof literal['value'] !== 'string') {
    throw new Error(
      `importsOf: ${file.path} imports something that is not written out, got ${textOf(literal, file)}`,
    );
  }
  return literal['value'];
}

/** Path in `src` of what a relative import names, without a loader's query; null for a package. */
export function targetOf(file: SourceFile, wanted: string): string | null {
  if (!wanted.startsWith('.')) return null;
  return posix.normalize(posix.join(posix.dirname(file.path), wanted.replace(/\?.*$/, '')));
}

/** Calls for the time of day or for chance, which a pure room must be given instead. */
export function hiddenInputsOf(file: SourceFile): string[] {
  const asks = (text: string) =>
    ['Math.random', 'Date.now', 'performance.now', 'crypto.getRandomValues'].includes(text);
  const found: string[] = [];
  for (const node of nodesOf(file)) {
    const text = textOf(node, file);
    if (node.type === 'MemberExpression' && asks(text)) found.push(text);
    const isDate = isNode(node['callee']) && textOf(node['callee'], file) === 'Date';
    const bare = Array.isArray(node['arguments']) && node['arguments'].length === 0;
    if (isDate && (node.type === 'CallExpression' || (node.type === 'NewExpression' && bare)))
      found.push(text);
  }
  return found;
}
