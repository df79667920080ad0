/** What the core rooms ask of a tree file. */
import type { Stance, Tree } from '../geometry/tree.ts';
import { wrapDeg } from '../geometry/world.ts';
import type { SkySite } from '../light/sky/dayLight.ts';
import { poseDeg, poseOn } from '../light/sky/turns.ts';
import type { IsoDate, Site } from '../season/site.ts';
import type { TreeFile } from './treeFile.ts';

export const treeOf = (file: TreeFile): Tree => ({ axes: file.axes });

/** Where the tree stands, what lies between it and the sky, and how its pot is turned, if it is. */
export function siteOf({
  site,
  standing,
  season,
}: TreeFile): Site & SkySite & { readonly groundReflectance: number } {
  const { quarterTurnEveryWeeks: everyWeeks } = standing;
  return everyWeeks === undefined ? site : { ...site, quarterTurns: { from: season.budBreakOn, everyWeeks } };
}

/** Height of the soil that the trunk grows from, above the ground, metres. */
export function soilHeightM(file: TreeFile): number {
  const { pot } = file.standing;
  return pot === null ? 0 : pot.heightM - pot.soilBelowRimM;
}

export function stanceOf(file: TreeFile): Stance {
  const [eastM, northM] = file.standing.at;
  return { foot: [eastM, soilHeightM(file), -northM], turnedDeg: file.standing.turnedDeg };
}

/** The file with its pot in the pose of a day and not turned any more. */
export function asItStandsOn(file: TreeFile, date: IsoDate): TreeFile {
  const { quarterTurns } = siteOf(file);
  const { quarterTurnEveryWeeks: _, ...standing } = file.standing;
  const turnedBy = quarterTurns === undefined ? 0 : poseDeg(poseOn(quarterTurns, date));
  return { ...file, standing: { ...standing, turnedDeg: wrapDeg(standing.turnedDeg + turnedBy) } };
}

/**
 * The file as one scene can tell it: its pot stands as at bud break, and its walls are dark. What that leaves out, in sentences; whether
 * the light that the walls throw back is to be told beside it.
 */
export function asOneScene(file: TreeFile): {
  readonly file: TreeFile;
  readonly leftOut: readonly string[];
  readonly isThrownBeside: boolean;
} {
  const turns =
    'The pot stands in the scene as at bud break; the light of each shoot is of that, not of the pot turned by quarters.';
  const thrown = 'The walls in the scene are dark: light that they throw back stands apart, under thrown.';
  return {
    file: {
      ...asItStandsOn(file, file.season.budBreakOn),
      site: { ...file.site, wallsThrowLight: false },
    },
    isThrownBeside: file.site.wallsThrowLight === true,
    leftOut: [
      ...(file.standing.quarterTurnEveryWeeks === undefined ? [] : [turns]),
      ...(file.site.wallsThrowLight === true ? [thrown] : []),
    ],
  };
}
