/** The fig, Ficus carica: every figure the model reads, with its range and source. */
import { figGrowth } from './fig/growth.ts';
import { figLight } from './fig/light.ts';
import { figPlan } from './fig/plan.ts';
import { figSeason } from './fig/season.ts';
import type { Parameter } from './parameter.ts';

export const figParameters = { ...figSeason, ...figGrowth, ...figLight, ...figPlan } satisfies Record<
  string,
  Parameter
>;

/** Name of a figure, as used in the settings of a tree file. */
export type FigParameterName = keyof typeof figParameters;

/** The value of every figure. */
export type FigValues = { readonly [Name in FigParameterName]: number };

/**
 * The figures with the grower's settings put in.
 * Throws on a name that is no adjustable figure and on a value outside its range; the tree file is checked for both.
 */
export function figValues(settings: Readonly<Record<string, number>>): FigValues {
  const parameters: Record<string, Parameter> = figParameters;
  const values: Record<string, number> = {};
  for (const [name, parameter] of Object.entries(parameters)) values[name] = parameter.value;
  for (const [name, value] of Object.entries(settings)) {
    const parameter = Object.hasOwn(parameters, name) ? parameters[name] : undefined;
    if (!parameter?.adjustable) throw new Error(`figValues: no adjustable figure is called ${name}`);
    if (!(value >= parameter.min && value <= parameter.max)) {
      throw new Error(
        `figValues: ${name} must be ${parameter.min} to ${parameter.max} ${parameter.unit}, got ${value}`,
      );
    }
    values[name] = value;
  }
  return values as FigValues;
}
