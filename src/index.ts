/** The public core, callable without a page. Re-exports, nothing else. */

export { climateFromEpw, type EpwClimate } from './document/climateFromEpw.ts';
export { parseTreeFile } from './document/parseTreeFile.ts';
// The tree file
export { surroundingSurfaces } from './document/surroundings.ts';
export { type Surrounding, type TreeFile, treeFileSchema } from './document/treeFile.ts';
export { siteOf, soilHeightM, stanceOf, treeOf } from './document/views.ts';
export { withEpw } from './document/withEpw.ts';
export { writeTreeFile } from './document/writeTreeFile.ts';

// Jobs on a tree file
export type { LightAnswer, LightOptions, PlanOptions } from './engine/engine.ts';
export { finishJob, type Job, type Progress } from './engine/job.ts';
export { lightJob } from './engine/lightJob.ts';
export * from './engine/look.ts';
export { lookJob } from './engine/lookJob.ts';
export { planInputOf } from './engine/planInput.ts';
export * from './engine/reports.ts';

// Bare geometry
export * from './geometry/distance.ts';
export * from './geometry/outline.ts';
export * from './geometry/path.ts';
export { hashText, random01, randomNormal } from './geometry/random.ts';
export * from './geometry/surface.ts';
export * from './geometry/tree.ts';
export type { Vec3 } from './geometry/vec.ts';
export { bearingDeg, direction, elevationDeg, fromUprightDeg, turnAboutUpright } from './geometry/world.ts';

// What a bud becomes
export * from './growth/canopy.ts';
export { type GrowthInput, growCanopy } from './growth/growCanopy.ts';
export { leafAreaM2 } from './growth/leafArea.ts';
export { ownersLeft } from './growth/owners.ts';
export { canopyReceivers, canopySurfaces, nodeReceivers } from './growth/scene.ts';

// Light on bare geometry
export type { CellKind, CellLight, Direction } from './light/directions.ts';
export { eachReceiver, exposure, type Grouping, listShares } from './light/exposure.ts';
export * from './light/irradiance.ts';
export { leafExposure, leafExposureOf } from './light/leafExposure.ts';
export { type LeafLedger, type LeafWave, regrouped } from './light/leafLedger.ts';
export * from './light/leafOptics.ts';
export { leafExposureParts, leafPartsTable, measuredLeafParts } from './light/leafParts.ts';
export { type LeafTable, leafTable } from './light/leafTable.ts';
export { type LeafTicks, makeLeafTicks } from './light/leafTicks.ts';
export * from './light/ledger.ts';
export {
  exposureParts,
  type LightParts,
  type MeasuredParts,
  measuredParts,
  type PartsTable,
  partsOf,
  partsTable,
} from './light/lightParts.ts';
// Looking at it
export * from './light/look/clearShares.ts';
export * from './light/look/skyRaster.ts';
export * from './light/look/sunDay.ts';
export { mergeForSearch, mergeRows, type RowSource } from './light/mergeForSearch.ts';
export { exposureOf, type NodeTable, nodeTable, type TableWave } from './light/nodeTable.ts';
export type { SearchOptions, SearchTable } from './light/searchTable.ts';
// Sun and sky
export * from './light/sky/cellLight.ts';
export type { Weather } from './light/sky/dayLight.ts';
export * from './light/sky/luminance.ts';
export * from './light/sky/openSkyDay.ts';
export { type Patch, reinhartPatches, tregenzaPatches } from './light/sky/patches.ts';
export * from './light/sky/skyDirections.ts';
export type { SkyKind } from './light/sky/skyEnergy.ts';
export { waveDirections } from './light/sky/waveDirections.ts';
export * from './light/sun.ts';
export { bruteForceTracer } from './light/trace/bruteForce.ts';
export { type TraceLeafWaveInput, traceLeafWave, traceLeafWaveSteps } from './light/trace/leafWave.ts';
export { parallelBeamTracer } from './light/trace/parallelBeam.ts';
export {
  type LeafRetracingInput,
  leafRetracing,
  type RetraceLeafWaveInput,
  retraceLeafWave,
  retraceLeafWaveSteps,
} from './light/trace/retraceLeafWave.ts';
export {
  type RetraceWaveInput,
  type RetracingInput,
  retraceWave,
  retraceWaveSteps,
  waveRetracing,
} from './light/trace/retraceWave.ts';
export { type TraceWaveInput, traceWave, traceWaveSteps } from './light/trace/wave.ts';
export * from './light/tracer.ts';

// The plan
export { applyCuts } from './plan/applyCuts.ts';
export type { Cut, CutKind, Gain, Reason } from './plan/cut.ts';
export type { PlanInput } from './plan/input.ts';
export type { Plan } from './plan/plan.ts';
export { type PlanResult, planJob } from './plan/planJob.ts';
export type { Score } from './plan/score.ts';
export { tryCuts } from './plan/trial.ts';

// Season and radiation
export * from './season/calendar.ts';
export * from './season/clearSky.ts';
export * from './season/dayRadiation.ts';
export * from './season/diffuseShare.ts';
export * from './season/extraterrestrial.ts';
export * from './season/globalRadiation.ts';
export * from './season/guessClimate.ts';
export * from './season/heat.ts';
export * from './season/hourShares.ts';
export * from './season/par.ts';
export * from './season/seasonDates.ts';
export * from './season/site.ts';

// The fig
export { type FigValues, figParameters, figValues } from './species/fig.ts';
