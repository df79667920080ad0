/** Ids and names that nothing on the tree has yet. */
import type { TreeFile } from '../document/treeFile.ts';

/** `count` ids for new branches. */
export function freshIds(file: TreeFile, count: number): string[] {
  const used = new Set(file.axes.flatMap((axis) => [axis.id, ...axis.buds.map((bud) => bud.id)]));
  const fresh: string[] = [];
  for (let n = file.axes.length + 1; fresh.length < count; n++) {
    // Buds of a new branch are named after it, so its id must lead no other.
    if (!used.has(`added-${n}`) && !used.has(`added-${n}-bud1`)) fresh.push(`added-${n}`);
  }
  return fresh;
}

/** The name, or the name with the first number that makes it new. It is added to `used`. */
export function freshName(used: Set<string>, wanted: string): string {
  const base = wanted.slice(0, 190);
  let name = base;
  for (let n = 2; used.has(name); n++) name = `${base} ${n}`;
  used.add(name);
  return name;
}

export const namesOf = (file: TreeFile): Set<string> => new Set(file.axes.map((axis) => axis.name));
