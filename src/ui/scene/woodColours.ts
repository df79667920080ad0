/** The colour of the wood of each owner: bark, this year's green wood, grey where dead. */
import type { TreeFile } from '../../document/treeFile.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { type LinearRgb, linearRgbOf, mixRgb } from '../theme/srgb.ts';
import type { StageColours } from './stageModel.ts';

/** Linear colours by owner number. */
export function woodColours(canopy: Canopy, file: TreeFile, colours: StageColours): readonly LinearRgb[] {
  const [bark, plant] = [linearRgbOf(colours.bark), linearRgbOf(colours.plant)];
  const thisYear = mixRgb(bark, plant, 0.55);
  const dead = linearRgbOf(colours.deadWood);
  const year = Number(file.season.sketchedOn.slice(0, 4));
  const axes = new Map(file.axes.map((axis) => [axis.id, axis]));
  return canopy.owners.map((owner) => {
    const axis = owner === null ? undefined : axes.get(owner.id);
    if (owner?.kind === 'bud') return thisYear;
    if (axis === undefined) return bark;
    if (axis.condition === 'dead') return dead;
    return axis.grownIn >= year ? thisYear : bark;
  });
}
