/** Whether the grower's settings are figures of the species that may be set, within their range. */
import { figParameters } from '../../species/fig.ts';
import type { Parameter } from '../../species/parameter.ts';
import { quoted } from '../refusal.ts';
import type { TreeFile } from '../treeFile.ts';
import type { Finding } from './finding.ts';

export function findWrongSetting(settings: TreeFile['settings']): Finding | null {
  const known: Readonly<Record<string, Parameter>> = figParameters;
  for (const [name, value] of Object.entries(settings)) {
    const place = ['settings', name];
    const figure = Object.hasOwn(known, name) ? known[name] : undefined;
    if (!figure?.adjustable) {
      return {
        place,
        reason: `No setting of the fig is called ${quoted(name)}. Take it out; perhaps it comes from a newer Boughlight.`,
      };
    }
    if (!(value >= figure.min && value <= figure.max)) {
      return {
        place,
        reason: `${figure.name} must be ${figure.min} to ${figure.max} ${figure.unit}, got ${value}.`,
      };
    }
  }
  return null;
}
