import { expect, it } from 'vitest';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { answerOf, exampleText } from './stand.ts';

function changed(change: (file: TreeFile) => void): string {
  const file = JSON.parse(exampleText('potted-fig-in-leaf')) as TreeFile;
  file.site.surroundings = [];
  file.standing.at = [0.5, -1];
  change(file);
  return JSON.stringify(file);
}

const linesOf = async (text: string): Promise<string[]> => {
  const { code, out, err } = await answerOf(['check', 'fig.json'], { files: { 'fig.json': text } });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out.trimEnd().split('\n').slice(1);
};

it('boughlight check tells of a tree in the open nothing more', async () => {
  expect(await linesOf(changed(() => {}))).toEqual([]);
});

it('boughlight check tells where each thing stands, how high and what passes it', async () => {
  const text = changed(({ site, standing }) => {
    standing.pot = null;
    const ends: { from: [number, number]; to: [number, number] } = { from: [-9, 2], to: [9, 2] };
    site.surroundings.push(
      { kind: 'wall', name: 'Barn', ...ends, heightM: 3, thicknessM: 0.4, reflectance: 0.3 },
      { kind: 'fence', name: 'Battens', ...ends, heightM: 1.8, thicknessM: 0.04, openFraction: 0.35 },
      { kind: 'hedge', name: 'Beech', ...ends, heightM: 2, thicknessM: 1, leafAreaDensityM2M3: 4 },
    );
    site.surroundings.push({
      kind: 'crown',
      name: 'Plum',
      centre: [4.5, -5],
      centreHeightM: 2.5,
      halfSizeM: [1, 1, 2],
      leafAreaDensityM2M3: 1.5,
    });
  });
  expect(await linesOf(text)).toEqual([
    'Barn (wall): 2.8 m to the north, up to 47° of height from the soil; nothing passes it.',
    'Battens (fence): 3.0 m to the north, up to 31° of height from the soil; 35 % of the light passes it square on.',
    'Beech (hedge): 2.5 m to the north, up to 39° of height from the soil; its leaves pass 14 % square on.',
    'Plum (crown): its middle 5.7 m to the south-east, 2.5 m up; its leaves pass 22 % through the middle.',
  ]);
});

it('boughlight check tells what a wall throws back where that is counted', async () => {
  const text = changed(({ site, standing }) => {
    standing.pot = null;
    site.wallsThrowLight = true;
    const ends: { from: [number, number]; to: [number, number] } = { from: [-9, 2], to: [9, 2] };
    site.surroundings.push({
      kind: 'wall',
      name: 'Barn',
      ...ends,
      heightM: 3,
      thicknessM: 0.4,
      reflectance: 0.62,
    });
  });
  expect(await linesOf(text)).toEqual([
    'Barn (wall): 2.8 m to the north, up to 47° of height from the soil; nothing passes it, and it throws back 62 % of the light that falls on it.',
  ]);
});

it('boughlight check tells of skyline, slope, cover and turns', async () => {
  const text = changed(({ site, standing, season }) => {
    site.skyline = { reflectance: 0.2, points: [{ bearingDeg: 225, heightDeg: 30 }] };
    site.slope = { slopeDeg: 12, fallsToDeg: 170 };
    site.cover = {
      name: 'Shade net',
      passedFraction: 0.55,
      diffusingFraction: 0.2,
      dates: { from: '06-10', until: '08-20' },
    };
    standing.quarterTurnEveryWeeks = 2;
    season.budBreakOn = '2026-04-14';
  });
  expect(await linesOf(text)).toEqual([
    'The skyline hides 25 % of an even sky; it is highest in the south-west, 30°.',
    'The ground falls by 12° to the south; where it rises it hides 1.1 % of an even sky.',
    'Shade net above passes 55 % of the light from 06-10 to 08-20 of each year (month-day); 20 % of its sunbeams come down as light of the sky.',
    'The pot is turned by a quarter, clockwise, every 2 weeks from 2026-04-14 on.',
  ]);
});
