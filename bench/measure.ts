/** One measurement by its name; prints Markdown. */
import { measureCold } from './cold.ts';
import { measureError } from './error.ts';
import { measureGrowth } from './growth.ts';
import { measureMemory } from './memory.ts';
import { measureRate } from './rate.ts';

const steps: Readonly<Record<string, () => string>> = {
  rate: measureRate,
  'cold wasm': () => measureCold('wasm'),
  'cold typescript': () => measureCold('typescript'),
  growth: measureGrowth,
  memory: measureMemory,
  error: measureError,
};
const step = steps[process.argv[2] ?? ''];
if (step === undefined) throw new Error(`measure: there is no step ${process.argv[2]}`);
process.stdout.write(`${step()}\n`);
