/** The plain tracer: every receiver against every surface. Slow and obviously right; it is the oracle of the fast one. */
import type { Mesh, Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { MakeTracer } from '../tracer.ts';
import { checkScene, checkUnit } from './checkScene.ts';
import { meetsBlade, meetsStem, meetsTriangle, pathInCloudM } from './meet.ts';

function corner(mesh: Mesh, triangle: number, which: number): Vec3 {
  const at = 9 * triangle + 3 * which;
  return [mesh.triangles[at] as number, mesh.triangles[at + 1] as number, mesh.triangles[at + 2] as number];
}

/** Calls `crossed` for each crossing of one ray with one surface. */
function follow(surface: Surface, from: Vec3, toSky: Vec3, crossed: (passedShare: number) => void): void {
  const { transmittance } = surface.optics;
  switch (surface.shape) {
    case 'mesh':
      for (let i = 0; 9 * i < surface.triangles.length; i++) {
        const met = meetsTriangle(
          corner(surface, i, 0),
          corner(surface, i, 1),
          corner(surface, i, 2),
          from,
          toSky,
        );
        if (met) crossed(transmittance);
      }
      return;
    case 'blade':
      if (meetsBlade(surface, from, toSky)) crossed(transmittance);
      return;
    case 'stem':
      if (meetsStem(surface, from, toSky)) crossed(transmittance);
      return;
    case 'cloud': {
      const pathM = pathInCloudM(surface, from, toSky);
      if (pathM > 0) crossed(Math.exp(-surface.extinctionPerM * pathM));
    }
  }
}

export const bruteForceTracer: MakeTracer = (surfaces, receivers) => {
  checkScene(surfaces, receivers);
  return (toSky, crossing) => {
    checkUnit(toSky, 'bruteForceTracer: toSky');
    receivers.forEach(({ point, normal, sides, onSurface }, receiver) => {
      if (sides === 'one' && !(dot(normal, toSky) > 0)) return;
      surfaces.forEach((surface, index) => {
        if (index === onSurface) return;
        follow(surface, point, toSky, (passedShare) => {
          crossing(receiver, index, passedShare);
        });
      });
    });
  };
};
