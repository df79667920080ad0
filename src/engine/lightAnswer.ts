/** A traced tree's light over a period, as a report. */
import type { Canopy, LeafBlade } from '../growth/canopy.ts';
import type { CellLight, Direction } from '../light/directions.ts';
import { leafExposure } from '../light/leafExposure.ts';
import type { Exposure } from '../light/ledger.ts';
import { type MeasuredParts, partsOf } from '../light/lightParts.ts';
import { clearShareSteps } from '../light/look/clearShares.ts';
import {
  eachReceiver,
  exposureOf,
  exposureOfWaves,
  type Grouping,
  listShares,
  rowMaker,
  type WaveLight,
  waveLight,
} from '../light/nodeTable.ts';
import { rayWeights, type WaveWeights } from '../light/rayWeights.ts';
import { skyPatches } from '../light/sky/cells.ts';
import { hiddenBy } from '../light/sky/horizon.ts';
import { leafSeason } from '../season/leafSeason.ts';
import { parMolPerMJ, parMolPerMJBand } from '../season/par.ts';
import type { Asked, LightOfPeriod } from './askedLight.ts';
import { energyBasis } from './energyBasis.ts';
import type { LightAnswer } from './engine.ts';
import { lightThresholds } from './lightThresholds.ts';
import type { HourLight, LeafLight, MonthLight, NodeFigures, ShootLight } from './reports.ts';
import type { TracedTree } from './tracedTree.ts';
import { nodesOfShoots, type WaveTables } from './waveTables.ts';

type Steps<Result> = Generator<void, Result, unknown>;

/** As `exposure` of each node, wave by wave. */
function* nodeExposures({ ledger }: TracedTree, light: CellLight): Steps<readonly Exposure[]> {
  const weights = rayWeights(ledger, light);
  const grouping = eachReceiver(ledger.receiverCount);
  const lights: WaveLight[] = [];
  for (const [w, wave] of ledger.waves.entries()) {
    const rowOf = rowMaker(wave, grouping, listShares(wave));
    lights.push(waveLight(weights[w] as WaveWeights, grouping.count, rowOf));
    yield;
  }
  return exposureOfWaves(lights, grouping.count);
}

/** Light, sun and sky of every node, in the order of the canopy. */
function* nodeLights(traced: TracedTree, light: LightOfPeriod): Steps<readonly NodeFigures[]> {
  const { canopy, ledger } = traced;
  const { whole, sunH, poses, horizon } = light;
  const dayH = sunH.reduce((sum, hours) => sum + hours, 0);
  const lights = yield* nodeExposures(traced, whole);
  const sunHours = ({ cell, pose }: Direction): number =>
    (pose === undefined ? sunH : (poses?.[pose]?.sunH ?? sunH))[cell] as number;
  const skySr = ({ cell, pose }: Direction): number =>
    (skyPatches[cell]?.solidAngleSr as number) * (pose === undefined ? 1 : (poses?.[pose]?.daysShare ?? 1));
  const [sun, solidAngle, cosine] = (yield* clearShareSteps(
    ledger,
    [
      (direction) => (direction.kind === 'beam' ? sunHours(direction) : 0),
      (direction) => (direction.kind === 'sky' ? skySr(direction) : 0),
      (direction) => (direction.kind === 'sky' ? skySr(direction) * direction.toSky[1] : 0),
    ],
    { isHidden: ({ toSky }) => horizon !== null && hiddenBy(horizon, toSky) !== null },
  )) as [Float64Array, Float64Array, Float64Array];
  return canopy.nodes.map(({ owner, node, point }, i) => ({
    shootId: canopy.owners[owner]?.id as string,
    node,
    share: (lights[i] as Exposure).share,
    sunHours: dayH * (sun[i] as number),
    openSky: { solidAngle: solidAngle[i] as number, cosine: cosine[i] as number },
    heightM: point[1],
  }));
}

/** Light on every leaf, in the order of the canopy. */
function leafLights({ canopy, leafLedger }: TracedTree, { whole }: LightOfPeriod): readonly LeafLight[] {
  const lights = leafExposure(leafLedger, whole);
  return canopy.leaves.map(({ owner, node }, i) => {
    const { share, standardError } = lights[i] as Exposure;
    return { shootId: canopy.owners[owner]?.id as string, node, share, standardError };
  });
}

/** Which nodes, and so which leaves, each group has. */
function membersOf({ count, group }: Grouping): readonly (readonly number[])[] {
  const members: number[][] = Array.from({ length: count }, () => []);
  group.forEach((g, i) => members[g]?.push(i));
  return members;
}

/** Mean of some leaves by their area. */
function meanLeaf({ leaves }: Canopy, lights: readonly LeafLight[], members: readonly number[]): number {
  let [area, sum] = [0, 0];
  for (const i of members) {
    const { areaM2 } = leaves[i] as LeafBlade;
    area += areaM2;
    sum += areaM2 * (lights[i] as LeafLight).share;
  }
  return sum / area;
}

/** Mean of some nodes. */
function meanNode(nodes: readonly NodeFigures[]): Pick<ShootLight, 'sunHours' | 'openSky' | 'heightM'> {
  const mean = (of: (node: NodeFigures) => number): number =>
    nodes.reduce((sum, node) => sum + of(node), 0) / nodes.length;
  return {
    sunHours: mean(({ sunHours }) => sunHours),
    openSky: {
      solidAngle: mean(({ openSky }) => openSky.solidAngle),
      cosine: mean(({ openSky }) => openSky.cosine),
    },
    heightM: mean(({ heightM }) => heightM),
  };
}

/** A part of the period and what the groups get of its light. */
interface Part {
  readonly light: CellLight;
  readonly groups: readonly Exposure[];
}

const shareIn = ({ groups }: Part, s: number): number => (groups[s] as Exposure).share;

/** Each month once, in order of time; one that the period touches in two years is the mean over its days in both. */
function byMonth(
  parts: readonly (Part & { readonly month: number; readonly days: number })[],
  s: number,
): readonly MonthLight[] {
  const sums = new Map<number, { days: number; openMolM2: number; gotMolM2: number }>();
  for (const part of parts) {
    const sum = sums.get(part.month) ?? { days: 0, openMolM2: 0, gotMolM2: 0 };
    const openMolM2 = part.days * part.light.openSkyParMolM2Day;
    sum.days += part.days;
    sum.openMolM2 += openMolM2;
    sum.gotMolM2 += openMolM2 * shareIn(part, s);
    sums.set(part.month, sum);
  }
  return Array.from(sums, ([month, { days, openMolM2, gotMolM2 }]) => ({
    month,
    lightFraction: openMolM2 === 0 ? 0 : gotMolM2 / openMolM2,
    parMolM2Day: gotMolM2 / days,
  }));
}

const byHour = (parts: readonly (Part & { readonly solarHour: number })[], s: number): readonly HourLight[] =>
  parts.map((part) => ({
    solarHour: part.solarHour,
    lightFraction: shareIn(part, s),
    parMolM2: shareIn(part, s) * part.light.openSkyParMolM2Day,
  }));

/** The figures of each shoot, in the order of the canopy. */
function shootLights(
  { canopy, tables }: TracedTree,
  light: LightOfPeriod,
  nodes: readonly NodeFigures[],
  leaves: readonly LeafLight[],
): readonly ShootLight[] {
  const grouping = nodesOfShoots(canopy);
  const [groupCount, allMembers] = [grouping.count, membersOf(grouping)];
  const tableOf = <K extends keyof WaveTables>(part: K) => ({
    groupCount,
    waves: tables.map((table) => table[part]),
  });
  const table = tableOf('nodes');
  const inPart = <P extends { readonly light: CellLight }>(part: P): P & Part => ({
    ...part,
    groups: exposureOf(table, part.light),
  });
  const [months, hours] = [light.months.map(inPart), light.hours.map(inPart)];
  const groups = exposureOf(table, light.whole);
  const parts = partsOf(tableOf('parts'), light.whole);
  const leafParts = partsOf(tableOf('leafParts'), light.whole);
  return canopy.shoots.map(({ id, name }, s) => {
    const members = allMembers[s] as readonly number[];
    const { share, standardError } = groups[s] as Exposure;
    return {
      id,
      name,
      lightFraction: share,
      standardError,
      parMolM2Day: share * light.whole.openSkyParMolM2Day,
      parts: (parts[s] as MeasuredParts).parts,
      leafLightFraction: meanLeaf(canopy, leaves, members),
      leafParts: (leafParts[s] as MeasuredParts).parts,
      byMonth: byMonth(months, s),
      byHour: byHour(hours, s),
      ...meanNode(members.map((i) => nodes[i] as NodeFigures)),
    };
  });
}

/**
 * Hands over after each wave.
 * @param light `lightOfPeriodSteps` of what is asked
 */
export function* lightAnswerSteps(
  traced: TracedTree,
  asked: Asked,
  light: LightOfPeriod,
): Steps<LightAnswer> {
  const { period, weather, sky, solarHour } = asked;
  const nodes = yield* nodeLights(traced, light);
  const leaves = leafLights(traced, light);
  yield;
  return {
    report: {
      format: 'boughlight-light',
      version: 1,
      period: { from: period.from, to: period.to },
      weather,
      sky,
      solarHour,
      energy: energyBasis(traced.input.site.climate, weather),
      leafSeason: leafSeason(traced.season, traced.input.site, period),
      parFactor: { molPerMJ: parMolPerMJ, ...parMolPerMJBand },
      openSkyParMolM2Day: light.whole.openSkyParMolM2Day,
      dayLengthH: light.sunH.reduce((sum, inBox) => sum + inBox, 0),
      thresholds: lightThresholds(traced.input.values),
      seed: traced.ledger.seed,
      rays: traced.tables.reduce((sum, { rays }) => sum + rays, 0),
      shoots: shootLights(traced, light, nodes, leaves),
    },
    nodes,
    leaves,
  };
}
