/** Light at the nodes asked again: another light, another set of shoots. And what the rays take to keep. */
import { fixedOwner } from '../src/geometry/surface.ts';
import { exposure } from '../src/light/exposure.ts';
import type { Ledger, Wave } from '../src/light/ledger.ts';
import { mergeForSearch } from '../src/light/mergeForSearch.ts';
import { exposureOf, nodeTable } from '../src/light/nodeTable.ts';
import { waveDirections } from '../src/light/sky/waveDirections.ts';
import { traceWave } from '../src/light/trace/wave.ts';
import { ownersTogether } from '../src/plan/ownersTogether.ts';
import { median, timeMs } from './clock.ts';
import { nodesOf } from './nodes.ts';
import { seasonSky } from './sky.ts';
import { type VaseTree, vaseTree } from './vaseTree.ts';
import { latitudeDeg } from './wave.ts';

const [leaves, waves, rounds] = [1000, 8, 9];

const directionsOf = (wave: number, every = 1) =>
  waveDirections({ latitudeDeg, seed: 3, wave }).filter(
    ({ kind }, d) => kind !== 'ground' && d % every === 0,
  );

function ledgerOf(tree: VaseTree): Ledger {
  const [receivers, { surfaces, ownerCount }] = [nodesOf(tree), tree];
  const traced = Array.from({ length: waves }, (_, wave) =>
    traceWave({ surfaces, receivers, directions: directionsOf(wave), ownerCount }),
  );
  return { ownerCount, receiverCount: receivers.length, waves: traced, seed: 3 };
}

/** Another light from the table of shoots, against the same from the rays. */
function anotherLight(tree: VaseTree, ledger: Ledger): string {
  const light = seasonSky();
  const grouping = { count: tree.shootCount, group: tree.group.subarray(0, tree.leafCount) };
  let table = nodeTable(ledger, grouping);
  const [made, fromTable, fromRays]: [number[], number[], number[]] = [[], [], []];
  for (let round = 0; round < rounds; round++) {
    made.push(timeMs(() => (table = nodeTable(ledger, grouping))));
    fromTable.push(timeMs(() => exposureOf(table, light)));
    fromRays.push(timeMs(() => exposure(ledger, light, grouping)));
  }
  const [rays, quick] = [Math.min(...fromRays), Math.min(...fromTable)];
  return `A new period of all shoots: **${quick.toFixed(2)} ms** from the table, ${rays.toFixed(1)} ms from the rays (1/${(rays / quick).toFixed(0)}); the table takes ${Math.min(...made).toFixed(0)} ms once. Goal: 5 ms.`;
}

/** Each shoot taken away and put back. */
function tickedOff(ledger: Ledger): string {
  const free = new Uint8Array(ledger.ownerCount).fill(1);
  free[fixedOwner] = 0;
  const keep = new Uint8Array(ledger.ownerCount).fill(1);
  const table = mergeForSearch(ledger, seasonSky(), { free, keep });
  const times = Array.from({ length: ledger.ownerCount - 1 }, () => Infinity);
  for (let round = 0; round < rounds; round++) {
    times.forEach((best, i) => {
      const both = timeMs(() => table.toggle(i + 1)) + timeMs(() => table.toggle(i + 1));
      times[i] = Math.min(best, both / 2);
    });
  }
  const worst = `${Math.max(...times).toFixed(2)} ms for the one that shades most`;
  return `A shoot ticked off or on again, all nodes brought up to date: **${median(times).toFixed(2)} ms** in the median of shoots, ${worst}. Goal: 1 ms.`;
}

/** What grows with the directions. */
function megabytes({ rayList, rayCloudShare, stanceCosine, listStart, listVeil }: Wave): number {
  const arrays = [rayList, rayCloudShare, stanceCosine, listStart, listVeil];
  return arrays.reduce((sum, part) => sum + (part?.byteLength ?? 0), 0) / 1e6;
}

/** A wave of so many nodes; of large trees every so many directions, and as many times the memory told. */
function memoryOf(leafCount: number, every: number): string {
  const tree = vaseTree(leafCount, 7);
  const scene = { surfaces: tree.surfaces, receivers: nodesOf(tree), ownerCount: tree.ownerCount };
  const directions = directionsOf(0, every);
  const scale = directionsOf(0).length / directions.length;
  const apart = scale * megabytes(traceWave({ ...scene, directions }));
  const asAnswered = scale * megabytes(traceWave({ ...ownersTogether(scene), directions }));
  const byRay = (12 * directionsOf(0).length * leafCount) / 1e6;
  return `| ${leafCount} | ${apart.toFixed(1)} | ${asAnswered.toFixed(1)} | ${byRay.toFixed(1)} |`;
}

export function measureNodeTables(): string {
  const tree = vaseTree(leaves, 7);
  const ledger = ledgerOf(tree);
  return [
    '## Light at the nodes asked again',
    '',
    `${leaves} leaves and nodes, ${tree.shootCount} shoots, ${waves} waves of ${directionsOf(0).length} directions; the quickest of ${rounds} interleaved rounds.`,
    '',
    anotherLight(tree, ledger),
    '',
    tickedOff(ledger),
    '',
    'What a wave takes, MB; of the larger trees some directions are traced and the memory of all is told:',
    '',
    '| nodes | every shoot told apart | as the answer keeps it | 12 bytes a ray |',
    '|---:|---:|---:|---:|',
    memoryOf(1000, 1),
    memoryOf(10_000, 20),
    memoryOf(100_000, 120),
    '',
  ].join('\n');
}
