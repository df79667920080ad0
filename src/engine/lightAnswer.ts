/** A traced tree's light over a period, as a report. */
import type { Canopy } from '../growth/canopy.ts';
import type { CellLight } from '../light/directions.ts';
import { eachReceiver, exposure, type Grouping } from '../light/exposure.ts';
import { leafExposure, leafHits } from '../light/leafExposure.ts';
import { leafExposureParts } from '../light/leafParts.ts';
import type { Exposure } from '../light/ledger.ts';
import { exposureParts, type LightParts } from '../light/lightParts.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import { daysBetween, monthOf, monthsOf } from '../season/calendar.ts';
import type { Period } from '../season/site.ts';
import type { LightAnswer } from './engine.ts';
import type { MonthLight, NodeLight } from './reports.ts';
import type { TracedTree } from './tracedTree.ts';

/** The light that is asked for. */
export interface Asked {
  readonly period: Period;
  readonly weather: Weather;
  readonly sky: SkyKind;
}

/** Group s: the nodes of shoot s, each alike. */
function nodesOfShoots({ shoots, nodes }: Canopy): Grouping {
  const shootOf = new Map(shoots.map(({ owner }, s) => [owner, s]));
  const indexOf = ({ owner }: { owner: number }): number => {
    const s = shootOf.get(owner);
    if (s === undefined) throw new Error(`lightAnswer: owner ${owner} has leaves but is no shoot`);
    return s;
  };
  return { count: shoots.length, group: Int32Array.from(nodes, indexOf) };
}

export function lightOf({ input }: Pick<TracedTree, 'input'>, { period, weather, sky }: Asked): CellLight {
  const { site } = input;
  return cellLight({ site, groundReflectance: site.groundReflectance, period, skyKind: sky, weather });
}

function lightOver(traced: TracedTree, asked: Asked, grouping: Grouping) {
  const light = lightOf(traced, asked);
  return { light, groups: exposure(traced.ledger, light, grouping) };
}

function rayCount({ ledger, leafLedger }: TracedTree): number {
  const atNodes = ledger.waves.reduce((sum, wave) => sum + wave.directions.length * wave.receiverCount, 0);
  return atNodes + leafLedger.waves.reduce((sum, wave) => sum + leafHits(wave), 0);
}

function nodeLights(traced: TracedTree, asked: Asked): readonly NodeLight[] {
  const { canopy, ledger } = traced;
  const { groups } = lightOver(traced, asked, eachReceiver(ledger.receiverCount));
  return canopy.nodes.map(({ owner, node }, i) => ({
    shootId: canopy.owners[owner]?.id as string,
    node,
    share: (groups[i] as Exposure).share,
  }));
}

interface MonthPart {
  readonly month: number;
  readonly days: number;
  readonly light: CellLight;
  readonly groups: readonly Exposure[];
}

/** Each month once, in order of time; one that the period touches in two years is the mean over its days in both. */
function lightByMonth(parts: readonly MonthPart[], s: number): readonly MonthLight[] {
  const sums = new Map<number, { days: number; openMolM2: number; gotMolM2: number }>();
  for (const { month, days, light, groups } of parts) {
    const sum = sums.get(month) ?? { days: 0, openMolM2: 0, gotMolM2: 0 };
    const openMolM2 = days * light.openSkyParMolM2Day;
    sum.days += days;
    sum.openMolM2 += openMolM2;
    sum.gotMolM2 += openMolM2 * (groups[s] as Exposure).share;
    sums.set(month, sum);
  }
  return Array.from(sums, ([month, { days, openMolM2, gotMolM2 }]) => ({
    month,
    lightFraction: openMolM2 === 0 ? 0 : gotMolM2 / openMolM2,
    parMolM2Day: gotMolM2 / days,
  }));
}

export function lightAnswer(traced: TracedTree, asked: Asked): LightAnswer {
  const { period, weather, sky } = asked;
  const { canopy, ledger } = traced;
  const { shoots } = canopy;
  const grouping = nodesOfShoots(canopy);
  const whole = lightOver(traced, asked, grouping);
  const months = monthsOf(period).map((part) => ({
    month: monthOf(part.from),
    days: daysBetween(part.from, part.to) + 1,
    ...lightOver(traced, { ...asked, period: part }, grouping),
  }));
  const leaves = leafExposure(traced.leafLedger, whole.light);
  const { values } = traced.input;
  const parts = exposureParts(ledger, whole.light, values, grouping);
  const leafParts = leafExposureParts(traced.leafLedger, whole.light, values);
  const open = whole.light.openSkyParMolM2Day;
  return {
    report: {
      format: 'boughlight-light',
      version: 1,
      period: { from: period.from, to: period.to },
      weather,
      sky,
      openSkyParMolM2Day: open,
      seed: ledger.seed,
      rays: rayCount(traced),
      shoots: shoots.map(({ id, name }, s) => {
        const { share, standardError } = whole.groups[s] as Exposure;
        const leafLightFraction = (leaves[s] as Exposure).share;
        return {
          id,
          name,
          lightFraction: share,
          standardError,
          parMolM2Day: share * open,
          parts: parts[s] as LightParts,
          leafLightFraction,
          leafParts: leafParts[s] as LightParts,
          byMonth: lightByMonth(months, s),
        };
      }),
    },
    nodes: nodeLights(traced, asked),
  };
}
