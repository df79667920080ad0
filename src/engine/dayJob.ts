/** The strip of a day: when direct sun falls on which node, and the light there. */
import type { TreeFile } from '../document/treeFile.ts';
import { asItStandsOn } from '../document/views.ts';
import { bearingDeg, elevationDeg } from '../geometry/world.ts';
import type { Canopy, Shoot } from '../growth/canopy.ts';
import { nodeReceivers } from '../growth/scene.ts';
import type { CellLight } from '../light/directions.ts';
import { exposure } from '../light/exposure.ts';
import type { Wave } from '../light/ledger.ts';
import { type SunDay, type SunStep, sunDay } from '../light/look/sunDay.ts';
import { type SunStrip, sunStripSteps } from '../light/look/sunStrip.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import { horizonOf } from '../light/sky/horizon.ts';
import { waveDirections } from '../light/sky/waveDirections.ts';
import { traceWaveSteps } from '../light/trace/wave.ts';
import { leafSeason } from '../season/leafSeason.ts';
import type { IsoDate } from '../season/site.ts';
import { energyBasis } from './energyBasis.ts';
import { type GrownTree, grownTree } from './grownTree.ts';
import type { Job } from './job.ts';
import type { DayAnswer, DayNode, DayQuestion, DayShoot, DayStep, LookOptions } from './look.ts';
import { progressOf } from './progressOf.ts';

const defaultSkyWaves = 4;
/** Of the work, about: the sun's steps are fewer than the sky's directions. */
const sunPart = 0.2;

/** The day's light from the sky alone, evenly bright, as it would be without a cover. */
function skyOnly({ input: { site } }: GrownTree, date: IsoDate): CellLight {
  const { cover: _cover, quarterTurns: _turns, ...bare } = site;
  const { groundReflectance } = site;
  const period = { from: date, to: date };
  const light = cellLight({ site: bare, groundReflectance, period, skyKind: 'uniform' });
  const open = light.openDiffuseParMolM2Day;
  return { ...light, beam: light.beam.map(() => 0), openBeamParMolM2Day: 0, openSkyParMolM2Day: open };
}

/** Light of the sky at each node, as share of the open sky's. */
function* skyShares(
  grown: GrownTree,
  date: IsoDate,
  waveCount: number,
): Generator<number, readonly number[], void> {
  const { canopy, surfaces, input } = grown;
  const { latitudeDeg } = input.site;
  const receivers = nodeReceivers(canopy);
  const scene = { surfaces, receivers, ownerCount: canopy.owners.length };
  const waves: Wave[] = [];
  for (let wave = 0; wave < waveCount; wave++) {
    const all = waveDirections({ latitudeDeg, seed: input.seed, wave });
    const steps = traceWaveSteps({ ...scene, directions: all.filter(({ kind }) => kind === 'sky') });
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        waves.push(step.value);
        break;
      }
      yield (wave + step.value) / waveCount;
    }
  }
  const ledger = { ...scene, receiverCount: receivers.length, waves, seed: input.seed };
  return exposure(ledger, skyOnly(grown, date)).map(({ share }) => share);
}

const hhmm = (timeZone: string): ((ms: number) => string) => {
  const clock = new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone,
  });
  return (ms) => clock.format(ms);
};

function stepsOf({ steps }: SunDay, timeZone: string): readonly DayStep[] {
  const clock = hhmm(timeZone);
  return steps.map(({ instantMs, hourAngleDeg, toSky, sunH, openParMolM2 }) => ({
    solarHour: 12 + hourAngleDeg / 15,
    clock: clock(instantMs),
    instantMs,
    bearingDeg: bearingDeg(toSky),
    altitudeDeg: elevationDeg(toSky),
    sunHours: sunH,
    openParMolM2,
  }));
}

function nodesOf(
  { nodes, owners }: Canopy,
  steps: readonly SunStep[],
  strip: SunStrip,
  skyShare: readonly number[],
): readonly DayNode[] {
  return nodes.map(({ owner, node }, i) => {
    const [from, to] = [i * steps.length, (i + 1) * steps.length];
    const sunlit = strip.lit.slice(from, to);
    const parMolM2 = strip.passed.slice(from, to).map((passed, s) => {
      const { beamParMolM2, diffuseParMolM2 } = steps[s] as SunStep;
      return passed * beamParMolM2 + (skyShare[i] as number) * diffuseParMolM2;
    });
    return {
      shootId: owners[owner]?.id as string,
      node,
      sunHours: steps.reduce((sum, { sunH }, s) => sum + sunH * (sunlit[s] as number), 0),
      parMolM2Day: parMolM2.reduce((sum, value) => sum + value, 0),
      sunlit,
      parMolM2,
    };
  });
}

function byShoot(nodes: readonly DayNode[]): ReadonlyMap<string, readonly DayNode[]> {
  const found = new Map<string, DayNode[]>();
  for (const node of nodes) {
    const known = found.get(node.shootId);
    if (known === undefined) found.set(node.shootId, [node]);
    else known.push(node);
  }
  return found;
}

function shootOf({ id, name }: Shoot, nodes: readonly DayNode[], steps: number): DayShoot {
  const mean = (of: (node: DayNode) => number): number =>
    nodes.reduce((sum, node) => sum + of(node), 0) / nodes.length;
  const perStep = (of: (node: DayNode) => Float32Array): number[] =>
    Array.from({ length: steps }, (_, s) => mean((node) => of(node)[s] as number));
  return {
    id,
    name,
    sunHours: mean(({ sunHours }) => sunHours),
    parMolM2Day: mean(({ parMolM2Day }) => parMolM2Day),
    sunlit: perStep(({ sunlit }) => sunlit),
    parMolM2: perStep(({ parMolM2 }) => parMolM2),
  };
}

/**
 * Sun: a ray from each node to where the sun stands in each ten minutes, not to the broad boxes of the light report. Sky: its share at
 * each node from waves of rays, one for the whole day, under an evenly bright sky.
 */
export function* dayJob(file: TreeFile, question: DayQuestion, options: LookOptions): Job<DayAnswer> {
  const doing = 'Following the sun through the day';
  yield { done: 0, doing };
  const { date, weather = 'normal' } = question;
  const grown = grownTree(asItStandsOn(file, date), options);
  const { canopy, surfaces, input } = grown;
  const day = sunDay(input.site, date, weather);
  const toSun = day.steps.map(({ toSky }) => toSky);
  const strip = yield* progressOf(
    sunStripSteps({ surfaces, receivers: nodeReceivers(canopy), toSun, horizon: horizonOf(input.site) }),
    (done) => ({ done: sunPart * done, doing }),
  );
  const skyShare = yield* progressOf(skyShares(grown, date, options.waves ?? defaultSkyWaves), (done) => ({
    done: sunPart + (1 - sunPart) * done,
    doing,
  }));
  const nodes = nodesOf(canopy, day.steps, strip, skyShare);
  const ofShoot = byShoot(nodes);
  const steps = stepsOf(day, input.site.timeZone);
  return {
    report: {
      format: 'boughlight-day',
      version: 1,
      date,
      weather,
      energy: energyBasis(input.site.climate, weather),
      leafSeason: leafSeason(grown.season, input.site, { from: date, to: date }),
      timeZone: input.site.timeZone,
      seed: input.seed,
      dayLengthH: day.dayLengthH,
      openParMolM2Day: steps.reduce((sum, { openParMolM2 }) => sum + openParMolM2, 0),
      steps,
      shoots: canopy.shoots.map((shoot) => shootOf(shoot, ofShoot.get(shoot.id) ?? [], steps.length)),
    },
    nodes,
  };
}
