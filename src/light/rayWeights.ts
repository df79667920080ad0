/** What each direction of a wave counts for under a certain light. */
import type { CellLight, Direction } from './directions.ts';

/** Waves of sensors and of leaves alike. */
interface Waves {
  readonly waves: readonly { readonly directions: readonly Direction[] }[];
}

export interface WaveWeights {
  /**
   * Per direction: what a ray along it adds to a receiver's share of open sky, for a cosine of 1 and nothing in the way.
   * A level sensor with nothing above it sums to 1.
   */
  readonly weight: Float64Array;
  /** Per direction: 1 for the beam, 0 for sky and ground. */
  readonly isBeam: Uint8Array;
}

function energyOf({ kind, cell }: Direction, light: CellLight): number {
  const energy = light[kind][cell];
  if (energy === undefined || !(energy >= 0 && energy < Infinity)) {
    throw new Error(`rayWeights: the light of ${kind} cell ${cell} must be 0 or more, got ${energy}`);
  }
  return energy;
}

/** What a level sensor under open sky gets from the wave's rays of one kind. */
function openSum(directions: readonly Direction[], kind: 'sky' | 'beam', light: CellLight): number {
  let sum = 0;
  for (const direction of directions) {
    if (direction.kind === kind) sum += energyOf(direction, light) * Math.max(0, direction.toSky[1]);
  }
  return sum;
}

/**
 * Weights wave by wave. Sampled sky and sampled beam are each scaled so that an open level sensor gets the closed sums
 * `openDiffuseParMolM2Day` and `openBeamParMolM2Day` from every wave: the place of a ray in its cell then cannot
 * brighten or darken the whole (checked against closed view factors; one centre ray a patch is else half a percent out).
 * Ground cells keep their energy as given: an open level sensor never sees them, so there is nothing to scale by; their
 * sampling error stays in the waves' spread.
 *
 * Dropped: where no ray of a wave meets the beam (the sun so low that each beam box drew a place below the
 * horizon) the other waves carry it, and the standard error grows; where no wave has any, its energy is counted as sky.
 * Under no light at all (polar night) all weights are 0.
 */
export function rayWeights({ waves }: Waves, light: CellLight): readonly WaveWeights[] {
  const open = light.openSkyParMolM2Day;
  if (!(open >= 0 && open < Infinity)) {
    throw new Error(`rayWeights: openSkyParMolM2Day must be 0 or more, got ${open}`);
  }
  const beamSums = waves.map((wave) => openSum(wave.directions, 'beam', light));
  const withBeam = beamSums.filter((sum) => sum > 0).length;
  const openSky = light.openDiffuseParMolM2Day + (withBeam === 0 ? light.openBeamParMolM2Day : 0);
  return waves.map(({ directions }, w) => {
    const beamSum = beamSums[w] as number;
    const skySum = openSum(directions, 'sky', light);
    const scale = {
      beam: beamSum > 0 ? (light.openBeamParMolM2Day * waves.length) / (withBeam * beamSum) : 0,
      sky: skySum > 0 ? openSky / skySum : 0,
      ground: 1,
    };
    const weight = Float64Array.from(directions, (direction) =>
      open > 0 ? (energyOf(direction, light) * scale[direction.kind]) / open : 0,
    );
    return { weight, isBeam: Uint8Array.from(directions, ({ kind }) => (kind === 'beam' ? 1 : 0)) };
  });
}
