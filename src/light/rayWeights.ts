/** What each direction of a wave counts for under a certain light. */
import type { CellKind, CellLight, Direction, FaceLight } from './directions.ts';
import { groundPatches, skyPatches } from './sky/cells.ts';
import { hiddenBy } from './sky/horizon.ts';
import { poseCount } from './sky/turns.ts';

/** Waves of sensors and of leaves alike. */
interface Waves {
  readonly waves: readonly { readonly directions: readonly Direction[] }[];
}

export interface WaveWeights {
  /**
   * Per direction: what a ray along it adds to a receiver's share of open sky, for a cosine of 1 and nothing in the way.
   * A level sensor with nothing above it and an open horizon sums to 1.
   */
  readonly weight: Float64Array;
  /** Per direction: 1 for the beam, 0 for sky and ground. */
  readonly isBeam: Uint8Array;
  /** Per direction: what a level sensor under open sky gets by it, were nothing hidden; 0 from the ground. */
  readonly open: Float64Array;
  /** Per direction: where its light comes from; ground also where that or a skyline hides the sky. */
  readonly from: readonly CellKind[];
}

/** 0 for what patches throw back, which is no cell's light. */
function energyOf({ kind, cell, pose, thrownBy }: Direction, light: CellLight): number {
  if (thrownBy !== undefined) return 0;
  const inPose = pose === undefined ? undefined : light.poses?.[pose];
  const energy = inPose === undefined ? light[kind][cell] : poseCount * (inPose[kind][cell] ?? Number.NaN);
  if (energy === undefined || !(energy >= 0 && energy < Infinity)) {
    throw new Error(`rayWeights: the light of ${kind} cell ${cell} must be 0 or more, got ${energy}`);
  }
  return energy;
}

/** What hides the sky in a direction brings in place of its cell's light; null where nothing does. */
function hiddenEnergy({ toSky, kind, cell, pose }: Direction, light: CellLight): number | null {
  if (light.hiding === undefined || kind === 'ground') return null;
  const by = hiddenBy(light.hiding.horizon, toSky);
  if (by === null) return null;
  if (kind === 'beam') return 0;
  const inPose = pose === undefined ? undefined : light.poses?.[pose];
  const { groundRadiance, skylineRadiance } = (inPose ?? light).hiding ?? light.hiding;
  const radiance = by === 'slope' ? groundRadiance : skylineRadiance;
  return radiance * (skyPatches[cell]?.solidAngleSr ?? Number.NaN) * (inPose === undefined ? 1 : poseCount);
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
 * Where a skyline or rising ground hides the sky, the beam brings nothing and the sky the light of what hides it; the scales are
 * those of the open sky all the same. Below a cover the closed sums are those below it, in shares of the open sky above. Of a
 * pot that is turned each direction counts for the days of the pose it was traced in, poseCount times.
 *
 * Ground that shade falls on is as bright as its zone: the energy of its cell times what reaches the zone over what would in the open.
 *
 * Light thrown back by patches of walls: reflectance x irradiance of the patch / pi is its radiance, the same to all sides
 * (Lambert), and the irradiance is summed from the patch's own rays in the same light, and what patches send each other.
 *
 * Dropped: where no ray of a wave meets the beam (the sun so low that each beam box drew a place below the
 * horizon) the other waves carry it, and the standard error grows; where no wave has any, its energy is counted as sky.
 * Under no light at all (polar night) all weights are 0.
 */
export function rayWeights(all: Waves, light: CellLight): readonly WaveWeights[] {
  const faces = all.waves.map(({ directions }) => facesOf(directions));
  if (faces.every((one) => one === null)) return plainWeights(all, light);
  const irradiance = patchIrradiance(faces, light);
  const unshaded = shareBelow(light);
  return plainWeights(all, light).map((weights, w) => {
    const directions = all.waves[w]?.directions ?? [];
    const weight = weights.weight.map((value, d) => {
      const { thrownBy: by, onGround } = directions[d] as Direction;
      if (onGround !== undefined && value > 0) {
        return (value * (irradiance[w]?.[onGround.patch] ?? Number.NaN)) / unshaded;
      }
      if (by === undefined) return value;
      return ((by.reflectance * by.solidAngleSr) / Math.PI) * (irradiance[w]?.[by.patch] ?? Number.NaN);
    });
    return { ...weights, weight };
  });
}

function facesOf(directions: readonly Direction[]): FaceLight | null {
  const one = directions.find(({ thrownBy, onGround }) => thrownBy !== undefined || onGround !== undefined);
  return (one?.thrownBy ?? one?.onGround)?.faces ?? null;
}

/** What a level sensor with nothing above it but a cover gets, as share of the open sky. */
function shareBelow({ below, openSkyParMolM2Day }: CellLight): number {
  if (below === undefined) return 1;
  return (below.beamParMolM2Day + below.diffuseParMolM2Day) / openSkyParMolM2Day;
}

/** Light on each patch in each wave, as share of what a level sensor under open sky gets. */
function patchIrradiance(faces: readonly (FaceLight | null)[], light: CellLight): readonly Float64Array[] {
  const weights = plainWeights({ waves: faces.map((one) => ({ directions: one?.directions ?? [] })) }, light);
  return faces.map((one, w) => {
    const { patchCount = 0, received = [] } = one ?? {};
    const sums = new Float64Array(patchCount);
    weights[w]?.weight.forEach((weight, d) => {
      for (let p = 0; p < patchCount; p++) {
        sums[p] = (sums[p] as number) + weight * (received[d * patchCount + p] as number);
      }
    });
    return one === null ? sums : withBounces(sums, one, groundReflectance(light));
  });
}

/** From its own radiance and the light on it; NaN of no light, which asks for no bounce. */
function groundReflectance(light: CellLight): number {
  const level = light.openSkyParMolM2Day * shareBelow(light);
  const radiance = (light.ground[0] as number) / (groundPatches[0]?.solidAngleSr as number);
  return level > 0 ? (Math.PI * radiance) / level : 0;
}

/** Light goes to and fro so often, at most; each time it is less by the reflectance and the share seen. */
const mostBounces = 12;
const leastBounce = 1e-6;

/** The light on each patch with what the patches send each other, again and again. */
function withBounces(direct: Float64Array, faces: FaceLight, ground: number): Float64Array {
  const { between, reflectance, patchCount } = faces;
  if (between === null) return direct;
  const thrown = reflectance.map((share) => (Number.isNaN(share) ? ground : share));
  let all = direct;
  for (let bounce = 0; bounce < mostBounces; bounce++) {
    const next = direct.map((value, p) => {
      let sum = value;
      for (let q = 0; q < patchCount; q++) {
        sum += (between[p * patchCount + q] as number) * (thrown[q] as number) * (all[q] as number);
      }
      return sum;
    });
    const change = next.reduce((most, value, p) => Math.max(most, Math.abs(value - (all[p] as number))), 0);
    all = next;
    if (change < leastBounce) break;
  }
  return all;
}

function plainWeights({ waves }: Waves, light: CellLight): readonly WaveWeights[] {
  const open = light.openSkyParMolM2Day;
  if (!(open >= 0 && open < Infinity)) {
    throw new Error(`rayWeights: openSkyParMolM2Day must be 0 or more, got ${open}`);
  }
  const below = light.below ?? {
    beamParMolM2Day: light.openBeamParMolM2Day,
    diffuseParMolM2Day: light.openDiffuseParMolM2Day,
  };
  const beamSums = waves.map((wave) => openSum(wave.directions, 'beam', light));
  const withBeam = beamSums.filter((sum) => sum > 0).length;
  const openSky = below.diffuseParMolM2Day + (withBeam === 0 ? below.beamParMolM2Day : 0);
  return waves.map(({ directions }, w) => {
    const beamSum = beamSums[w] as number;
    const skySum = openSum(directions, 'sky', light);
    const scale = {
      beam: beamSum > 0 ? (below.beamParMolM2Day * waves.length) / (withBeam * beamSum) : 0,
      sky: skySum > 0 ? openSky / skySum : 0,
      ground: 1,
    };
    const unhidden = Float64Array.from(directions, (direction) =>
      open > 0 ? (energyOf(direction, light) * scale[direction.kind]) / open : 0,
    );
    const hiddenScale = skySum > 0 && below.diffuseParMolM2Day > 0 ? below.diffuseParMolM2Day / skySum : 1;
    const hidden = directions.map((direction) => hiddenEnergy(direction, light));
    return {
      weight: unhidden.map((value, d) => {
        const energy = hidden[d] ?? null;
        if (energy === null) return value;
        return open > 0 ? (energy * hiddenScale) / open : 0;
      }),
      isBeam: Uint8Array.from(directions, ({ kind }) => (kind === 'beam' ? 1 : 0)),
      open: unhidden.map((value, d) => {
        const { kind, toSky } = directions[d] as Direction;
        return kind === 'ground' ? 0 : value * Math.max(0, toSky[1]);
      }),
      from: directions.map(({ kind }, d) => (hidden[d] === null ? kind : 'ground')),
    };
  });
}
