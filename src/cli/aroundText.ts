/** What stands around the tree and what it does to the light, a sentence each. */
import { footprintOf, type Solid, wayTo } from '../document/footprint.ts';
import { leavesExtinctionPerM } from '../document/surroundings.ts';
import type { Surrounding, TreeFile } from '../document/treeFile.ts';
import { soilHeightM } from '../document/views.ts';
import { deg, rad, wind, wrapDeg } from '../geometry/world.ts';
import { horizonOf, skylineHeightDeg } from '../light/sky/horizon.ts';

const metres = (m: number): string => `${m.toFixed(1)} m`;
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** Where it stands as seen from the foot of the tree. */
function whereabouts([east, north]: readonly [number, number]): string {
  const far = Math.hypot(east, north);
  return far < 0.05 ? 'at the tree' : `${metres(far)} to the ${wind(wrapDeg(deg(Math.atan2(east, north))))}`;
}

const heightOf = (solid: Solid): number => (solid.kind === 'box' ? solid.sizeM[2] : solid.heightM);

const throughLeaves = (density: number, thicknessM: number): number =>
  Math.exp(-leavesExtinctionPerM(density) * thicknessM);

function passes(thing: Surrounding, wallsThrowLight: boolean | undefined): string {
  switch (thing.kind) {
    case 'fence':
      return `${percent(thing.openFraction)} of the light passes it square on`;
    case 'hedge':
      return `its leaves pass ${percent(throughLeaves(thing.leafAreaDensityM2M3, thing.thicknessM))} square on`;
    case 'crown': {
      const level = thing.halfSizeM[0] + thing.halfSizeM[1];
      return `its leaves pass ${percent(throughLeaves(thing.leafAreaDensityM2M3, level))} through the middle`;
    }
    case 'wall':
    case 'box': {
      const thrown = `, and it throws back ${percent(thing.reflectance)} of the light that falls on it`;
      return `nothing passes it${wallsThrowLight === true ? thrown : ''}`;
    }
  }
}

const words = { wall: 'wall', fence: 'fence', hedge: 'hedge', box: 'block', crown: 'crown' } as const;

function thingText(thing: Surrounding, { standing, ...file }: TreeFile): string {
  const name = `${thing.name} (${words[thing.kind]})`;
  if (thing.kind === 'crown') {
    const where = whereabouts([thing.centre[0] - standing.at[0], thing.centre[1] - standing.at[1]]);
    return `${name}: its middle ${where}, ${metres(thing.centreHeightM)} up; ${passes(thing, file.site.wallsThrowLight)}.`;
  }
  const way = wayTo(footprintOf(thing), standing.at);
  const aboveSoilM = heightOf(thing) - soilHeightM({ standing, ...file });
  const far = Math.hypot(...way);
  const hides =
    aboveSoilM > 0 && far > 0
      ? `, up to ${Math.round(deg(Math.atan2(aboveSoilM, far)))}° of height from the soil`
      : '';
  return `${name}: ${whereabouts(way)}${hides}; ${passes(thing, file.site.wallsThrowLight)}.`;
}

/** Share of an even sky on the level below a skyline: the mean of the squared sine of its height. */
function hiddenShare(heightAt: (bearing: number) => number): number {
  const bearings = Array.from({ length: 360 }, (_, i) => i + 0.5);
  return bearings.reduce((sum, bearing) => sum + Math.sin(rad(heightAt(bearing))) ** 2, 0) / bearings.length;
}

function skylineText({ skyline }: TreeFile['site']): string[] {
  if (skyline === undefined) return [];
  const points = horizonOf({ skyline })?.skyline ?? [];
  const top = points.reduce((a, b) => (b.heightDeg > a.heightDeg ? b : a), { bearingDeg: 0, heightDeg: 0 });
  const hidden = percent(hiddenShare((bearing) => skylineHeightDeg(points, bearing)));
  return [
    `The skyline hides ${hidden} of an even sky; it is highest in the ${wind(top.bearingDeg)}, ${Math.round(top.heightDeg)}°.`,
  ];
}

function slopeText({ slope }: TreeFile['site']): string[] {
  if (slope === undefined || slope.slopeDeg === 0) return [];
  const hidden = (1 - Math.cos(rad(slope.slopeDeg))) / 2;
  return [
    `The ground falls by ${slope.slopeDeg}° to the ${wind(slope.fallsToDeg)}; where it rises it hides ${(100 * hidden).toFixed(1)} % of an even sky.`,
  ];
}

function coverText({ cover }: TreeFile['site']): string[] {
  if (cover === undefined) return [];
  const { name, passedFraction, diffusingFraction, dates } = cover;
  const when = dates === null ? 'all year' : `from ${dates.from} to ${dates.until} of each year (month-day)`;
  return [
    `${name} above passes ${percent(passedFraction)} of the light ${when}; ${percent(diffusingFraction)} of its sunbeams come down as light of the sky.`,
  ];
}

function turnText(
  { quarterTurnEveryWeeks: weeks }: TreeFile['standing'],
  { budBreakOn }: TreeFile['season'],
) {
  if (weeks === undefined) return [];
  const every = weeks === 1 ? 'week' : `${weeks} weeks`;
  return [`The pot is turned by a quarter, clockwise, every ${every} from ${budBreakOn} on.`];
}

/** Heights count from the soil the trunk grows from. */
export const aroundText = (file: TreeFile): readonly string[] => [
  ...file.site.surroundings.map((thing) => thingText(thing, file)),
  ...skylineText(file.site),
  ...slopeText(file.site),
  ...coverText(file.site),
  ...turnText(file.standing, file.season),
];
