/** Whether the place can be: its zone, its climate, its walls, the pot. */
import { footprintOf, wayTo } from '../footprint.ts';
import { quoted } from '../refusal.ts';
import type { Surrounding, TreeFile } from '../treeFile.ts';
import { findBadClimate } from './climate.ts';
import { type Finding, inM } from './finding.ts';

function isTimeZone(name: string): boolean {
  try {
    return Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

function findBadSurrounding(file: TreeFile): Finding | null {
  for (const [i, thing] of file.site.surroundings.entries()) {
    if (thing.kind === 'crown') continue;
    if (thing.kind === 'box') {
      const [heightM, ridgeM] = [thing.sizeM[2], thing.ridgeHeightM ?? Infinity];
      if (ridgeM > heightM) continue;
      return {
        place: ['site', 'surroundings', i, 'ridgeHeightM'],
        reason: `The ridge of the roof (${inM(ridgeM)}) is not above the walls (${inM(heightM)}). Both are heights above the ground; leave the ridge out for a flat roof.`,
      };
    }
    const lengthM = Math.hypot(thing.to[0] - thing.from[0], thing.to[1] - thing.from[1]);
    if (lengthM < 0.01) {
      return {
        place: ['site', 'surroundings', i, 'to'],
        reason: `The ${thing.kind} ends where it begins. Give its two ends, in metres east and north.`,
      };
    }
  }
  return null;
}

/** 0 and 360 degrees are one bearing. */
function findBadSkyline({ skyline }: TreeFile['site']): Finding | null {
  const seen = new Set<number>();
  for (const [i, { bearingDeg }] of (skyline?.points ?? []).entries()) {
    if (seen.has(bearingDeg % 360)) {
      return {
        place: ['site', 'skyline', 'points', i, 'bearingDeg'],
        reason: `The skyline has two heights at ${bearingDeg}° from north. For a steep edge give bearings a little apart.`,
      };
    }
    seen.add(bearingDeg % 360);
  }
  return null;
}

function findBadPot({ pot }: TreeFile['standing'], axes: TreeFile['axes']): Finding | null {
  if (pot === null) return null;
  if (pot.soilBelowRimM >= pot.heightM) {
    return {
      place: ['standing', 'pot', 'soilBelowRimM'],
      reason: `The soil would lie under the pot: ${inM(pot.soilBelowRimM)} below a rim that stands ${inM(pot.heightM)} high.`,
    };
  }
  const trunkM = axes.find((axis) => axis.kind === 'trunk')?.baseDiameterM ?? 0;
  if (trunkM < pot.topDiameterM) return null;
  return {
    place: ['standing', 'pot', 'topDiameterM'],
    reason: `The pot is ${inM(pot.topDiameterM)} wide, but the trunk in it is ${inM(trunkM)} thick. Thickness and width are diameters in metres.`,
  };
}

function findBadTurns({ pot, quarterTurnEveryWeeks }: TreeFile['standing']): Finding | null {
  if (pot !== null || quarterTurnEveryWeeks === undefined) return null;
  return {
    place: ['standing', 'quarterTurnEveryWeeks'],
    reason: 'A tree in the ground cannot be turned. Leave the turns out, or give the pot.',
  };
}

export function findWrongPlace(file: TreeFile): Finding | null {
  const { timeZone, climate } = file.site;
  if (!isTimeZone(timeZone)) {
    return {
      place: ['site', 'timeZone'],
      reason: `No time zone is called ${quoted(timeZone)}. Use a name such as Europe/Paris or Asia/Tokyo.`,
    };
  }
  return (
    findBadClimate(climate) ??
    findBadSurrounding(file) ??
    findBadSkyline(file.site) ??
    findBadPot(file.standing, file.axes) ??
    findBadTurns(file.standing)
  );
}

/** A tree whose foot stands inside a wall, a box or a hedge gets little light or none: surely the place was entered wrongly. */
export function oddPlaces({ site, standing }: TreeFile): string[] {
  const isInside = (thing: Surrounding): boolean =>
    thing.kind !== 'crown' && Math.hypot(...wayTo(footprintOf(thing), standing.at)) === 0;
  const inside = site.surroundings.find(isInside);
  if (!inside) return [];
  const light = inside.kind === 'hedge' || inside.kind === 'fence' ? 'little light' : 'no light';
  return [`The foot of the tree stands inside ${inside.name}, where ${light} comes. Check where both stand.`];
}
