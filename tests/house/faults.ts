/** What is wrong with a set of sources by the rules of the house; empty when nothing is. */
import { emptyNames, rooms } from './rooms.ts';
import { hiddenInputsOf, importsOf, type SourceFile, targetOf } from './source.ts';

const roomOf = (path: string): string =>
  path.includes('/') ? (path.split('/')[0] as string) : path.replace(/\.ts$/, '');

const matches = (wanted: string, allowed: string): boolean =>
  allowed.endsWith('*') ? wanted.startsWith(allowed.slice(0, -1)) : wanted === allowed;

function faultOfImport(file: SourceFile, wanted: string): string | null {
  const name = roomOf(file.path);
  const room = rooms[name];
  if (room === undefined) return `${file.path}: there is no room ${name}`;
  const target = targetOf(file, wanted);
  if (target === null) {
    const allowed = [...room.packages, ...(room.packagesOfOneFile?.[file.path] ?? [])];
    return allowed.some((pattern) => matches(wanted, pattern))
      ? null
      : `${file.path}: may not use the package ${wanted}`;
  }
  if (room.outsideOfOneFile?.[file.path]?.includes(target) === true) return null;
  if (target.startsWith('..')) return `${file.path}: imports ${wanted} from outside src`;
  const other = roomOf(target);
  return other === name || room.mayImport.includes(other)
    ? null
    : `${file.path}: ${name} may not import ${other}`;
}

/** Imports that the table of rooms does not allow. */
export function wrongImports(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) =>
    importsOf(file)
      .map((wanted) => faultOfImport(file, wanted))
      .filter((fault) => fault !== null),
  );
}

/** Circles of files that import each other, types included, each as "a > b > a". */
export function circles(files: readonly SourceFile[]): string[] {
  const targets = new Map(
    files.map((file) => [file.path, importsOf(file).map((wanted) => targetOf(file, wanted))] as const),
  );
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    const before = trail.indexOf(path);
    if (before >= 0) found.push([...trail.slice(before), path].join(' > '));
    if (before >= 0 || done.has(path)) return;
    for (const target of targets.get(path) ?? []) if (target !== null) visit(target, [...trail, path]);
    done.add(path);
  };
  for (const { path } of files) visit(path, []);
  return found;
}

const pureRooms = ['geometry', 'species', 'season', 'growth', 'light', 'plan', 'document'];

/** Places where a pure room asks for the time or for chance by itself. */
export function hiddenInputs(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => pureRooms.includes(roomOf(path)))
    .flatMap((file) => hiddenInputsOf(file).map((call) => `${file.path}: ${call}`));
}

/** Paths with a folder or file whose name says nothing. */
export function emptyNamesIn(paths: readonly string[]): string[] {
  return paths.filter((path) =>
    path.split('/').some((part) => emptyNames.includes(part.replace(/\..*$/, ''))),
  );
}

/** Files longer than a file may be; the species' tables of figures may grow. */
export function overlong(files: readonly SourceFile[], mostLines = 300): string[] {
  return files
    .filter(({ path }) => roomOf(path) !== 'species')
    .map(({ path, text }) => ({ path, lines: text.replace(/\n$/, '').split('\n').length }))
    .filter(({ lines }) => lines > mostLines)
    .map(({ path, lines }) => `${path}: ${lines} lines`);
}
