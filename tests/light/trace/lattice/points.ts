/** Hits of a lattice as points in space, for tests. */
import type { Receiver } from '../../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../../src/geometry/vec.ts';
import type { Direction } from '../../../../src/light/directions.ts';
import { plainCaster } from '../../../../src/light/trace/lattice/caster.ts';
import type { Lattice } from '../../../../src/light/trace/lattice/lattice.ts';
import { makeLatticeScene } from '../../../../src/light/trace/lattice/scene.ts';
import { latticeFor, type TraceLeafWaveInput } from '../../../../src/light/trace/leafWave.ts';

/** The point that a place on the plane across the direction and along it stands for. */
export function pointOf(lattice: Lattice, ray: number, ahead: number): Vec3 {
  const { frame, right, top, spacingM, columns, left, low } = lattice;
  const r = right + (left + (ray % columns)) * spacingM;
  const t = top + (low + Math.floor(ray / columns)) * spacingM;
  const at = (k: 0 | 1 | 2): number => r * frame.right[k] + t * frame.top[k] + ahead * frame.ahead[k];
  return [at(0), at(1), at(2)];
}

/** Receivers where the rays of a direction meet leaves, with the groups they count for. */
export function leafPoints(
  input: TraceLeafWaveInput,
  direction: Direction,
): { receiver: Receiver; group: number }[] {
  const scene = makeLatticeScene(input);
  const lattice = latticeFor(scene, direction, input);
  const { start, ahead, thing } = plainCaster(scene).cast(lattice);
  const points: { receiver: Receiver; group: number }[] = [];
  for (let ray = 0; ray < lattice.columns * lattice.rows; ray++) {
    for (let k = start[ray] as number; k < (start[ray + 1] as number); k++) {
      const onSurface = scene.surface[thing[k] as number] as number;
      const group = input.group[onSurface] as number;
      if (group < 0) continue;
      const point = pointOf(lattice, ray, ahead[k] as number);
      points.push({ receiver: { point, normal: [0, 1, 0], sides: 'both', onSurface }, group });
    }
  }
  return points;
}
