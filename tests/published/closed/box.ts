/** A box open to an even sky above, with leaves in it: what comes in through the opening must be found again inside. */
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { anyPerpendicular, cross, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import type { CellLight } from '../../../src/light/directions.ts';
import { exposure } from '../../../src/light/exposure.ts';
import { leafExposure } from '../../../src/light/leafExposure.ts';
import { beamCells, groundPatches, skyPatches } from '../../../src/light/sky/cells.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { traceLeafWave } from '../../../src/light/trace/leafWave.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { anyDirection, between, type Draw } from '../../light/trace/scene.ts';
import { quickStream } from '../canopy/slab.ts';
import { sheet } from '../viewfactors/scenes.ts';

const [wideM, highM, deepM] = [1, 0.7, 0.8] as const;
const outline = [
  [-0.5, -0.5],
  [0.5, -0.5],
  [0.5, 0.5],
  [-0.5, 0.5],
] as const;

/** A wall or the floor: a corner, its two sides and the normal to the inside. */
interface Side {
  readonly corner: Vec3;
  readonly first: Vec3;
  readonly second: Vec3;
  readonly inward: Vec3;
}

const sides: readonly Side[] = [
  { corner: [0, 0, 0], first: [wideM, 0, 0], second: [0, 0, deepM], inward: [0, 1, 0] },
  { corner: [0, 0, 0], first: [wideM, 0, 0], second: [0, highM, 0], inward: [0, 0, 1] },
  { corner: [0, 0, deepM], first: [wideM, 0, 0], second: [0, highM, 0], inward: [0, 0, -1] },
  { corner: [0, 0, 0], first: [0, 0, deepM], second: [0, highM, 0], inward: [1, 0, 0] },
  { corner: [wideM, 0, 0], first: [0, 0, deepM], second: [0, highM, 0], inward: [-1, 0, 0] },
];

const point = ({ corner, first, second }: Side, a: number, b: number): Vec3 => [
  corner[0] + a * first[0] + b * second[0],
  corner[1] + a * first[1] + b * second[1],
  corner[2] + a * first[2] + b * second[2],
];

const wallOf = (side: Side): Surface =>
  sheet(point(side, 0, 0), point(side, 1, 0), point(side, 1, 1), point(side, 0, 1));

const sensorsASide = 400;

function sensorsOn(side: Side, surface: number, draw: Draw): Receiver[] {
  return Array.from({ length: sensorsASide }, (_, i) => ({
    point: point(side, (Math.floor(i / 20) + draw()) / 20, ((i % 20) + draw()) / 20),
    normal: side.inward,
    sides: 'one',
    onSurface: surface,
  }));
}

/** A leaf that lies wholly inside. */
function leafInside(draw: Draw, transmittance: number): Surface {
  const sideM = 0.06;
  const normal = anyDirection(draw);
  const along = scale(anyPerpendicular(normal), sideM);
  return {
    shape: 'blade',
    owner: 1,
    optics: { transmittance, reflectance: 0 },
    origin: [
      between(draw, 0.05, wideM - 0.05),
      between(draw, 0.05, highM - 0.05),
      between(draw, 0.05, deepM - 0.05),
    ],
    along,
    across: cross(normal, along),
    outline,
  };
}

const evenSky: CellLight = {
  sky: Float64Array.from(skyPatches, ({ solidAngleSr }) => solidAngleSr),
  beam: new Float64Array(beamCells),
  ground: new Float64Array(groundPatches.length),
  openSkyParMolM2Day: Math.PI,
  openBeamParMolM2Day: 0,
  openDiffuseParMolM2Day: Math.PI,
};

const areaM2 = ({ first, second }: Side): number => Math.hypot(...first) * Math.hypot(...second);

/** What floor, walls and leaves take, each over what comes in through the opening. */
export function takenInBox(transmittance: number, seed: number): { sides: number; leaves: number } {
  const draw = quickStream(seed);
  const leaves = Array.from({ length: 400 }, () => leafInside(draw, transmittance));
  const surfaces = [...leaves, ...sides.map(wallOf)];
  const receivers = sides.flatMap((side, i) => sensorsOn(side, leaves.length + i, draw));
  const waves = Array.from({ length: 12 }, (_, wave) => {
    const directions = waveDirections({ latitudeDeg: 0, seed, wave }).filter(({ kind }) => kind === 'sky');
    const group = Int32Array.from(surfaces, (_s, i) => (i < leaves.length ? 0 : -1));
    const input = { surfaces, directions, ownerCount: 2 };
    return {
      sensors: traceWave({ ...input, receivers }),
      leaves: traceLeafWave({ ...input, group, groupCount: 1, spacingM: 0.02, seed, wave }),
    };
  });
  const ledger = { ownerCount: 2, receiverCount: receivers.length, waves: waves.map((w) => w.sensors), seed };
  const leafLedger = { ownerCount: 2, groupCount: 1, waves: waves.map((w) => w.leaves), seed };
  const onSides = exposure(ledger, evenSky, {
    count: sides.length,
    group: Int32Array.from(receivers, (_, r) => Math.floor(r / sensorsASide)),
  });
  const leafAreaM2 = leafLedger.waves[0]?.groupAreaM2[0] ?? Number.NaN;
  const onLeaves = leafExposure(leafLedger, evenSky)[0]?.share ?? Number.NaN;
  const opening = wideM * deepM;
  return {
    sides: onSides.reduce((sum, { share }, i) => sum + share * areaM2(sides[i] as Side), 0) / opening,
    leaves: (onLeaves * leafAreaM2 * (1 - transmittance)) / opening,
  };
}
