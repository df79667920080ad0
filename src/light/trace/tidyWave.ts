/** Drops from a wave what no ray needs. */
import { numbersFor, type Wave } from '../ledger.ts';
import { OwnerLists } from './ownerLists.ts';

/** Lists that some ray has. */
function listsInUse({ rayList, listStart }: Wave): number {
  const isUsed = new Uint8Array(listStart.length - 1);
  let count = 0;
  for (const list of rayList) {
    if (isUsed[list] === 1) continue;
    isUsed[list] = 1;
    count++;
  }
  return count;
}

/**
 * Whether more than half of the lists are of no use. Only looked into when their number passes a step (each a fifth more than the
 * last), so that it costs little in a long drag.
 * @param had lists of the wave before
 */
export function isUntidy(wave: Wave, had: number): boolean {
  const step = (lists: number): number => Math.floor(4 * Math.log2(lists));
  const lists = wave.listStart.length - 1;
  return step(lists) > step(had) && 2 * listsInUse(wave) < lists;
}

/** The same wave with each list once, in the order the rays meet them: as `traceWave` writes it. */
export function tidyWave(wave: Wave): Wave {
  const { rayList, listStart, listVeil, veilOwner, veilShare } = wave;
  const lists = new OwnerLists();
  const after = new Int32Array(listStart.length - 1).fill(-1);
  const numbers = new Int32Array(rayList.length);
  for (let ray = 0; ray < rayList.length; ray++) {
    const list = rayList[ray] as number;
    if ((after[list] as number) < 0) {
      for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
        const veil = listVeil[i] as number;
        lists.put(veilOwner[veil] as number, veilShare[veil] as number);
      }
      after[list] = lists.close();
    }
    numbers[ray] = after[list] as number;
  }
  const tidy = numbersFor(lists.count - 1, rayList.length);
  tidy.set(numbers);
  return { ...wave, rayList: tidy, ...lists.veiled() };
}
