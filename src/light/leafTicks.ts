/** Ticking owners off and on again, one by one: only the rays that pass them are looked at. */
import type { LeafLedger, LeafWave } from './leafLedger.ts';
import { kindShares, type LeafTable, leafTable } from './leafTable.ts';
import type { KeepSet } from './ledger.ts';

export interface LeafTicks {
  /** `leafTable` of the owners that stand now: its numbers change with every tick, by rounding within 1e-12 of a new one. */
  readonly table: LeafTable;
  /** Whether an owner above 0 stands from now on. */
  readonly tick: (owner: number, stands: boolean) => void;
}

/** Runs in which an owner shades leaves. */
interface OwnerRuns {
  /** Those of owner o are entries start[o] to start[o + 1] (excluded), in order. */
  readonly start: Int32Array;
  /** First hit of the run. 4 bytes. */
  readonly hit: Int32Array;
}

/** Calls with each owner above 0 that shades leaves of a run, once a run. */
function eachShade(wave: LeafWave, ownerCount: number, visit: (owner: number, hit: number) => void): void {
  const { hitKind, kindOwner } = wave;
  const lastRun = new Int32Array(ownerCount).fill(-1);
  let run = 0;
  for (let k = 0; k < hitKind.length; k++) {
    const code = hitKind[k] as number;
    if (code < 0) run = k;
    const next = hitKind[k + 1];
    // The last hit of a run is a leaf and shades none.
    if (next === undefined || next < 0) continue;
    const owner = kindOwner[code < 0 ? ~code : code] as number;
    if (owner === 0 || lastRun[owner] === run) continue;
    lastRun[owner] = run;
    visit(owner, run);
  }
}

function ownerRuns(wave: LeafWave, ownerCount: number): OwnerRuns {
  const start = new Int32Array(ownerCount + 1);
  eachShade(wave, ownerCount, (owner) => {
    start[owner + 1] = (start[owner + 1] as number) + 1;
  });
  for (let owner = 0; owner < ownerCount; owner++) {
    start[owner + 1] = (start[owner + 1] as number) + (start[owner] as number);
  }
  const [hit, next] = [new Int32Array(start[ownerCount] as number), start.slice(0, ownerCount)];
  eachShade(wave, ownerCount, (owner, first) => {
    const at = next[owner] as number;
    hit[at] = first;
    next[owner] = at + 1;
  });
  return { start, hit };
}

/** One wave's part of the table, and what it takes to change it. */
class WaveTicks {
  private readonly wave: LeafWave;
  private readonly runs: OwnerRuns;
  private readonly passed: Float64Array;
  private readonly perHit: Float64Array;
  private readonly shares: Float64Array;
  private readonly sharesBefore: Float64Array;

  constructor(wave: LeafWave, passed: Float64Array, ownerCount: number, keep?: KeepSet) {
    const { groupAreaM2, rayAreaM2 } = wave;
    this.wave = wave;
    this.passed = passed;
    this.runs = ownerRuns(wave, ownerCount);
    this.perHit = groupAreaM2.map((areaM2) => (areaM2 > 0 ? rayAreaM2 / areaM2 : 0));
    this.shares = kindShares(wave, keep);
    this.sharesBefore = this.shares.slice();
  }

  tick(owner: number, stands: boolean): void {
    const { wave, shares, sharesBefore, runs } = this;
    sharesBefore.set(shares);
    wave.kindOwner.forEach((its, kind) => {
      if (its === owner) shares[kind] = stands ? (wave.kindShare[kind] as number) : 1;
    });
    const end = runs.start[owner + 1] as number;
    let direction = 0;
    for (let k = runs.start[owner] as number; k < end; k++) {
      const hit = runs.hit[k] as number;
      while (hit >= (wave.hitStart[direction + 1] as number)) direction++;
      this.change(hit, direction * wave.groupCount);
    }
  }

  /** Puts the light on the leaves of a run right; the row of its direction begins at an entry. */
  private change(first: number, row: number): void {
    const { passed, perHit, shares, sharesBefore } = this;
    const { hitKind, hitShare, kindGroup } = this.wave;
    let [before, now, k] = [1, 1, first];
    let kind = ~(hitKind[k] as number);
    do {
      const group = kindGroup[kind] as number;
      if (group >= 0 && before !== now) {
        const gained = (now - before) * (hitShare === null ? 1 : (hitShare[k] as number));
        passed[row + group] = (passed[row + group] as number) + gained * (perHit[group] as number);
      }
      before *= sharesBefore[kind] as number;
      now *= shares[kind] as number;
      kind = hitKind[++k] ?? -1;
    } while (kind >= 0);
  }
}

/**
 * Looks at every hit of the ledger, once for all ticks; the ground is taken as lit alike. Throws on an empty ledger and on a keep-set that does not fit it.
 * @param keep which owners stand at first; all when left out
 */
export function makeLeafTicks(landed: LeafLedger, keep?: KeepSet): LeafTicks {
  const ledger = { ...landed, waves: landed.waves.map(({ landing: _landing, ...wave }): LeafWave => wave) };
  const { ownerCount } = ledger;
  const table = leafTable(ledger, keep);
  const waves = ledger.waves.map(
    (wave, w) => new WaveTicks(wave, table.waves[w]?.passed as Float64Array, ownerCount, keep),
  );
  return {
    table,
    tick: (owner, stands) => {
      if (!(owner > 0 && owner < ownerCount)) {
        throw new Error(`makeLeafTicks: owner must be above 0 and below ${ownerCount}, got ${owner}`);
      }
      for (const wave of waves) wave.tick(owner, stands);
    },
  };
}
