/** Whether the fig of a node ripens before the season ends. */
import { firstRipeHeatGdd8, type Ripening, type SeasonDates } from '../season/seasonDates.ts';
import type { FigValues } from '../species/fig.ts';

/**
 * Chance, 0 to 1, that a fig at the so-and-so-many-th bearing node of a shoot (1 the lowest above the blind ones)
 * ripens in time.
 *
 *   ripe(i) = heat to the first ripe fig + (i - 1) x heat per leaf + late        GDD8 after bud break
 *   chance  = logistic((heat at the end of ripening - ripe(i)) / s),  s = spread x sqrt(3) / pi
 *
 * Figs come and ripen from base to tip (Yahata & Nogata 2000); one node follows another by one leaf's heat (derived, no
 * phyllochron of fig was found). The logistic has the standard deviation `seasonEndSpreadGdd8`: years differ. Dropped: slower ripening
 * in shade.
 */
export function ripeChance(
  values: FigValues,
  ripening: Ripening,
  season: SeasonDates,
): (bearingNode: number, lateGdd8?: number) => number {
  const first = firstRipeHeatGdd8(values, ripening);
  const end = season.heat.sumAt(season.ripeningEndsOn);
  const scale = (values.seasonEndSpreadGdd8 * Math.sqrt(3)) / Math.PI;
  return (bearingNode, lateGdd8 = 0) => {
    const ripe = first + (bearingNode - 1) * values.phyllochronGdd8 + lateGdd8;
    return 1 / (1 + Math.exp((ripe - end) / scale));
  };
}
