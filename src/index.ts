/** The public core, callable without a page. Re-exports, nothing else. */

export * from './geometry/outline.ts';
export * from './geometry/path.ts';
export { hashText, random01, randomNormal } from './geometry/random.ts';
export * from './geometry/surface.ts';
export * from './geometry/tree.ts';
export type { Vec3 } from './geometry/vec.ts';
export { bearingDeg, direction, elevationDeg, fromUprightDeg, turnAboutUpright } from './geometry/world.ts';
export type { CellKind, CellLight, Direction } from './light/directions.ts';
export * from './light/exposure.ts';
export * from './light/irradiance.ts';
export * from './light/leafOptics.ts';
export * from './light/ledger.ts';
export { mergeForSearch, type SearchOptions, type SearchTable } from './light/searchTable.ts';
export { bruteForceTracer } from './light/trace/bruteForce.ts';
export { parallelBeamTracer } from './light/trace/parallelBeam.ts';
export { type TraceWaveInput, traceWave, traceWaveSteps } from './light/trace/wave.ts';
export * from './light/tracer.ts';
