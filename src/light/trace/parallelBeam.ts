/**
 * The fast tracer. For one direction all rays are parallel: receivers and outlines are projected onto the plane across it,
 * the receivers sorted into a grid, and each shape asks only the receivers in the cells it covers. No tree is walked,
 * and all blockers of every ray come out. The same answers as `bruteForceTracer`, but for rays that graze an edge
 * within rounding (about 1e-13 of the scene's size).
 */
import type { Surface } from '../../geometry/surface.ts';
import type { MakeTracer } from '../tracer.ts';
import { prepareBlades } from './blades.ts';
import { checkScene, checkUnit } from './checkScene.ts';
import { prepareClouds } from './clouds.ts';
import { makeReach, makeShade } from './reach.ts';
import { beamFrame, type Cover, makeReceiverGrid } from './receiverGrid.ts';
import { fastestSolids } from './simdGrid.ts';
import { prepareStems } from './stems.ts';
import { prepareTriangles } from './triangles.ts';

/** @param fastSolids blades and stems in one, or null where each is to be asked by itself */
const makeTracer =
  (fastSolids: (surfaces: readonly Surface[], receiverCount: number) => Cover | null): MakeTracer =>
  (surfaces, receivers) => {
    checkScene(surfaces, receivers);
    const gridFor = makeReceiverGrid(receivers);
    const solids = fastSolids(surfaces, receivers.length);
    const reachOf = solids === null ? makeReach(surfaces, receivers) : () => null;
    const shadeOf = makeShade(surfaces, receivers);
    const covers = [
      prepareTriangles(surfaces),
      ...(solids === null ? [prepareBlades(surfaces), prepareStems(surfaces)] : [solids]),
      prepareClouds(surfaces),
    ];
    return (toSky, crossing) => {
      checkUnit(toSky, 'parallelBeamTracer: toSky');
      const frame = beamFrame(toSky);
      const grid = gridFor(frame, shadeOf(frame));
      if (grid.count === 0) return;
      const reached = reachOf(frame);
      for (const cover of covers) cover(frame, grid, reached, crossing);
    };
  };

/** Blades and stems by WebAssembly with vectors where the platform has it; the same crossings in the same order either way. */
export const parallelBeamTracer: MakeTracer = makeTracer(fastestSolids);

/** The same in TypeScript alone. */
export const plainBeamTracer: MakeTracer = makeTracer(() => null);
