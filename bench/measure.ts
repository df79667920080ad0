/** One measurement by its name; prints Markdown. */
import { measureCold } from './cold.ts';
import { measureError } from './error.ts';
import { measureGrowth } from './growth.ts';
import { measureIncrementalLeaves } from './incrementalLeaves.ts';
import { measureIncrementalNodes } from './incrementalNodes.ts';
import { measureMemory } from './memory.ts';
import { measureNodeTables } from './nodeTables.ts';
import { measurePlanCost } from './planCost.ts';
import { measureRate } from './rate.ts';
import { measureRedraw } from './redraw.ts';
import { measureSearch } from './search.ts';
import { measureStroke } from './stroke.ts';
import { measureWorlds } from './worlds.ts';

const steps: Readonly<Record<string, () => string>> = {
  rate: measureRate,
  'cold wasm': () => measureCold('wasm'),
  'cold typescript': () => measureCold('typescript'),
  'incremental leaves': measureIncrementalLeaves,
  growth: measureGrowth,
  'nodes moved': measureIncrementalNodes,
  'nodes asked again': measureNodeTables,
  memory: measureMemory,
  error: measureError,
  redraw: measureRedraw,
  stroke: measureStroke,
  search: measureSearch,
  worlds: measureWorlds,
  'plan cost': measurePlanCost,
};
const step = steps[process.argv[2] ?? ''];
if (step === undefined) throw new Error(`measure: there is no step ${process.argv[2]}`);
process.stdout.write(`${step()}\n`);
