/** A traced tree's light over a period, as a report. */
import type { Canopy } from '../growth/canopy.ts';
import { eachReceiver, exposure, type Grouping } from '../light/exposure.ts';
import type { Exposure } from '../light/ledger.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import { monthOf, monthsOf } from '../season/calendar.ts';
import type { Period } from '../season/site.ts';
import type { LightAnswer } from './engine.ts';
import type { MonthLight, NodeLight } from './reports.ts';
import type { TracedTree } from './tracedTree.ts';

/** Group s: the nodes of shoot s, each alike. Group (number of shoots + s): its leaves, by their area. */
function groupsOfShoots({ shoots, nodes, leaves }: Canopy): Grouping {
  const shootOf = new Map(shoots.map(({ owner }, s) => [owner, s]));
  const indexOf = ({ owner }: { owner: number }): number => {
    const s = shootOf.get(owner);
    if (s === undefined) throw new Error(`lightAnswer: owner ${owner} has leaves but is no shoot`);
    return s;
  };
  return {
    count: 2 * shoots.length,
    group: Int32Array.from([...nodes.map(indexOf), ...leaves.map((leaf) => shoots.length + indexOf(leaf))]),
    weight: Float64Array.from([...nodes.map(() => 1), ...leaves.map((leaf) => leaf.areaM2)]),
  };
}

function lightOver({ input, ledger }: TracedTree, period: Period, grouping: Grouping) {
  const { site } = input;
  const light = cellLight({ site, groundReflectance: site.groundReflectance, period, skyKind: 'uniform' });
  return { light, groups: exposure(ledger, light, grouping) };
}

function nodeLights(traced: TracedTree, period: Period): readonly NodeLight[] {
  const { canopy, ledger } = traced;
  const { groups } = lightOver(traced, period, eachReceiver(ledger.receiverCount));
  return canopy.nodes.map(({ owner, node }, i) => ({
    shootId: canopy.owners[owner]?.id as string,
    node,
    share: (groups[i] as Exposure).share,
  }));
}

export function lightAnswer(traced: TracedTree, period: Period): LightAnswer {
  const { canopy, ledger } = traced;
  const { shoots } = canopy;
  const grouping = groupsOfShoots(canopy);
  const whole = lightOver(traced, period, grouping);
  const months = monthsOf(period).map((part) => ({
    month: monthOf(part.from),
    ...lightOver(traced, part, grouping),
  }));
  const open = whole.light.openSkyParMolM2Day;
  const byMonth = (s: number): readonly MonthLight[] =>
    months.map(({ month, light, groups }) => {
      const { share } = groups[s] as Exposure;
      return { month, lightFraction: share, parMolM2Day: share * light.openSkyParMolM2Day };
    });
  return {
    report: {
      format: 'boughlight-light',
      version: 1,
      period: { from: period.from, to: period.to },
      openSkyParMolM2Day: open,
      seed: ledger.seed,
      rays: ledger.waves.reduce((sum, { directions }) => sum + directions.length * ledger.receiverCount, 0),
      shoots: shoots.map(({ id, name }, s) => {
        const { share, standardError } = whole.groups[s] as Exposure;
        const leafLightFraction = (whole.groups[shoots.length + s] as Exposure).share;
        return {
          id,
          name,
          lightFraction: share,
          standardError,
          parMolM2Day: share * open,
          leafLightFraction,
          byMonth: byMonth(s),
        };
      }),
    },
    nodes: nodeLights(traced, period),
  };
}
