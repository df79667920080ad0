/** Ticking owners off and on again, one by one: only the rays that pass them are looked at. */
import type { LeafLedger, LeafWave } from './leafLedger.ts';
import { kindShares, type LeafTable, leafTable } from './leafTable.ts';
import type { KeepSet } from './ledger.ts';
import { shadedRuns } from './shadedRuns.ts';
import { fastestTickedRuns } from './simdTicks.ts';
import type { MakeTickedRuns, TickedRuns } from './tickedRuns.ts';

export interface LeafTicks {
  /** `leafTable` of the owners that stand now: its numbers change with every tick, by rounding within 1e-12 of a new one. */
  readonly table: LeafTable;
  /** Whether an owner above 0 stands from now on. */
  readonly tick: (owner: number, stands: boolean) => void;
}

/** One wave's part of the table, and what each kind of thing lets through. */
class WaveTicks {
  private readonly wave: LeafWave;
  private readonly runs: TickedRuns;
  private readonly shares: Float64Array;
  private readonly sharesBefore: Float64Array;

  constructor(wave: LeafWave, runs: TickedRuns, keep?: KeepSet) {
    this.wave = wave;
    this.runs = runs;
    this.shares = kindShares(wave, keep);
    this.sharesBefore = this.shares.slice();
  }

  tick(owner: number, stands: boolean): void {
    const { kindOwner, kindShare } = this.wave;
    this.sharesBefore.set(this.shares);
    kindOwner.forEach((its, kind) => {
      if (its === owner) this.shares[kind] = stands ? (kindShare[kind] as number) : 1;
    });
    this.runs.change(owner, this.sharesBefore, this.shares);
  }
}

/**
 * Looks at every hit of the ledger, once for all ticks; takes one to two times the memory of the ledger besides. Where rays to the ground
 * are told apart by where they come down, zones stay as bright as they were. Throws on an empty ledger and on a keep-set that does not
 * fit it.
 * @param keep which owners stand at first; all when left out
 */
export function makeLeafTicks(
  ledger: LeafLedger,
  keep?: KeepSet,
  makeRuns: MakeTickedRuns = fastestTickedRuns,
): LeafTicks {
  const { ownerCount, groupCount } = ledger;
  const table = leafTable(ledger, keep);
  const runs = ledger.waves.map((wave, w) =>
    makeRuns(wave, shadedRuns(wave, ownerCount), table.waves[w]?.passed as Float64Array),
  );
  const ticks = ledger.waves.map((wave, w) => new WaveTicks(wave, runs[w] as TickedRuns, keep));
  const waves = table.waves.map((wave, w) => ({ ...wave, passed: (runs[w] as TickedRuns).passed }));
  return {
    table: { groupCount, waves },
    tick: (owner, stands) => {
      if (!(owner > 0 && owner < ownerCount)) {
        throw new Error(`makeLeafTicks: owner must be above 0 and below ${ownerCount}, got ${owner}`);
      }
      for (const wave of ticks) wave.tick(owner, stands);
    },
  };
}
