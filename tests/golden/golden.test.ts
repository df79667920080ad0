/**
 * The command's text for every sample tree, word for word. Figures are shown no finer than machines agree on.
 * BOUGHLIGHT_WRITE=1 writes the texts anew: read the difference before you commit it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import { answerOf, exampleText } from '../cli/stand.ts';
import { projectFolder } from '../house/source.ts';

const samples = readdirSync(join(projectFolder, 'public', 'examples'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace(/\.json$/, ''))
  .sort();

const asked = ['light', 'day', 'plan', 'check'] as const;
const options = {
  light: ['--waves', '3', '--seed', '7', '--leaf-seed', '7'],
  day: ['--date', '2027-07-12'],
   plan: ['--waves', '3', '--seed', '7', '--leaf-seed', '7'], check: [] };

describe('the text of the command', { timeout: 120_000 }, () => {
  it('is held for four samples or more', () => {
    expect(samples.length).toBeGreaterThanOrEqual(4);
  });

  it.each(samples.flatMap((sample) => asked.map((command) => [command, sample] as const)))(
    '%s of %s is as it was',
    async (command, sample) => {
      const told = { files: { [`${sample}.json`]: exampleText(sample) }, makeEngine: createInPlaceEngine };
      const { code, out, err } = await answerOf([command, `${sample}.json`, ...options[command]], told);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const path = join(projectFolder, 'tests', 'golden', `${sample}.${command}.txt`);
      if (process.env.BOUGHLIGHT_WRITE === '1') writeFileSync(path, out);
      expect(out).toBe(readFileSync(path, 'utf8'));
    },
  );
});
