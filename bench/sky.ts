/** The light of a season at 43.7 north, for the measurements. */
import type { CellLight } from '../src/light/directions.ts';
import { skyPatches } from '../src/light/sky/cells.ts';
import { waveDirections } from '../src/light/sky/waveDirections.ts';
import { latitudeDeg } from './wave.ts';

/** Half beam, half even sky, and a tenth of it from the ground. */
export function seasonSky(): CellLight {
  const sky = Float64Array.from(skyPatches, (patch) => patch.solidAngleSr);
  const beam = new Float64Array(12 * 36);
  for (const { kind, cell } of waveDirections({ latitudeDeg, seed: 1, wave: 0 }))
    if (kind === 'beam') beam[cell] = 1;
  const ground = new Float64Array(18).fill(0.03);
  const openDiffuseParMolM2Day = Math.PI;
  const openBeamParMolM2Day = Math.PI;
  return {
    sky,
    beam,
    ground,
    openDiffuseParMolM2Day,
    openBeamParMolM2Day,
    openSkyParMolM2Day: openDiffuseParMolM2Day + openBeamParMolM2Day,
  };
}
