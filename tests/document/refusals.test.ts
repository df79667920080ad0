import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { figParameters } from '../../src/species/fig.ts';
import type { Parameter } from '../../src/species/parameter.ts';
import { changedSample, type LooseFile } from './sampleFiles.ts';

type Change = (file: LooseFile) => void;
type Axis = TreeFile['axes'][number];

function refusal(change: Change): { where: string; reason: string } {
  const read = parseTreeFile(changedSample('potted-fig-bud-break', change));
  if (read.ok) throw new Error('the file was accepted');
  return read;
}

const axis = (file: LooseFile, i: number): Axis => file.axes[i] as Axis;

describe('a refusal says what and where', () => {
  const cases: [string, Change, string, RegExp][] = [
    [
      'a place beyond the parent',
      (f) => void (axis(f, 3).atM = 1.73),
      'axes[3].atM (South-east limb, lateral 2)',
      /1\.73 m along.*only 1\.02 m long/,
    ],
    [
      'a bud beyond its branch',
      (f) => void ((axis(f, 1).buds[1] as { atM: number }).atM = 2.2),
      'axes[1].buds[2].atM (South-east limb)',
      /only 1\.02 m long/,
    ],
    [
      'a missing parent',
      (f) => void (axis(f, 2).parentId = 'gone'),
      'axes[2].parentId (South-east limb, lateral 1)',
      /"gone", which is not in the file/,
    ],
    [
      'wood that grows from itself',
      (f) => void (axis(f, 2).parentId = axis(f, 2).id),
      'axes[2].parentId (South-east limb, lateral 1)',
      /circle/,
    ],
    [
      'wood that grows in a circle',
      (f) => {
        axis(f, 1).parentId = axis(f, 2).id;
      },
      'axes[1].parentId (South-east limb)',
      /circle/,
    ],
    [
      'a second trunk',
      (f) => {
        axis(f, 1).kind = 'trunk';
        axis(f, 1).parentId = null;
      },
      'axes[1].kind (South-east limb)',
      /second trunk/,
    ],
    [
      'a trunk with a parent',
      (f) => void (axis(f, 0).parentId = 'se'),
      'axes[0].parentId (Trunk)',
      /must be null/,
    ],
    ['no trunk', (f) => void f.axes.shift(), 'axes', /There is no trunk/],
    [
      'a branch without parent',
      (f) => void (axis(f, 5).parentId = null),
      'axes[5].parentId (North-west limb)',
      /Only the trunk/,
    ],
    [
      'an id used twice',
      (f) => void (axis(f, 6).id = 'se'),
      'axes[6].id (North-west limb, lateral 1)',
      /"se" is used twice/,
    ],
    [
      'a bud with the id of an axis',
      (f) => void ((axis(f, 6).buds[0] as { id: string }).id = 'se'),
      'axes[6].buds[0].id (North-west limb, lateral 1)',
      /used twice/,
    ],
    [
      'a path without length',
      (f) =>
        void (axis(f, 4).path = [
          [0, 0, 0],
          [0, 0.00001, 0],
        ]),
      'axes[4].path (South-east limb, lateral 3)',
      /no length/,
    ],
    [
      'a path far from its parent',
      (f) => void (axis(f, 4).path[0] = [1.3, 0, 0]),
      'axes[4].path[0] (South-east limb, lateral 3)',
      /1\.3 m away/,
    ],
    [
      'centimetres for metres',
      (f) => void (axis(f, 4).path[3] = [17, 33, 5]),
      'axes[4].path[3] (South-east limb, lateral 3)',
      /centimetres/,
    ],
    [
      'a point deep in the soil',
      (f) => void (axis(f, 0).path[4] = [0, -1.7, 0]),
      'axes[0].path[4] (Trunk)',
      /below the soil/,
    ],
    [
      'a tip thicker than the base',
      (f) => void (axis(f, 1).tipDiameterM = 0.044),
      'axes[1].tipDiameterM (South-east limb)',
      /44 mm\).*31 mm/,
    ],
    [
      'a child far thicker than its parent',
      (f) => void (axis(f, 2).baseDiameterM = 0.19),
      'axes[2].baseDiameterM (South-east limb, lateral 1)',
      /190 mm/,
    ],
    [
      'wood of a later year',
      (f) => void (axis(f, 2).grownIn = 2027),
      'axes[2].grownIn (South-east limb, lateral 1)',
      /2027.*2026-04-19/,
    ],
    ['an unknown zone', (f) => void (f.site.timeZone = 'Mars/Olympus'), 'site.timeZone', /"Mars\/Olympus"/],
    [
      'nights warmer than days',
      (f) => void (f.site.climate.minC[6] = 33),
      'site.climate.minC[6]',
      /33.*23\.7/,
    ],
    [
      'a day that no month has',
      (f) => void (f.site.frost = { lastOfSpring: '02-31', firstOfAutumn: '10-24' }),
      'site.frost.lastOfSpring',
      /02-31/,
    ],
    [
      'bud break of another season',
      (f) => void (f.season.budBreakOn = '2023-04-14'),
      'season.budBreakOn',
      /different seasons/,
    ],
    ['a year out of reach', (f) => void (f.season.sketchedOn = '1745-04-14'), 'season.sketchedOn', /1745/],
    [
      'a wall without length',
      (f) => void ((f.site.surroundings[0] as { to: number[] }).to = [-4.1, 1.62]),
      'site.surroundings[0].to (House wall)',
      /ends where it begins/,
    ],
    [
      'a hedge without length',
      (f) =>
        void f.site.surroundings.push({
          kind: 'hedge',
          name: 'Privet',
          from: [2, 3],
          to: [2, 3.004],
          heightM: 1.6,
          thicknessM: 0.7,
          leafAreaDensityM2M3: 3,
        }),
      'site.surroundings[1].to (Privet)',
      /The hedge ends where it begins/,
    ],
    [
      'a ridge below the eaves',
      (f) =>
        void f.site.surroundings.push({
          kind: 'box',
          name: 'Shed',
          centre: [2, 3],
          sizeM: [3, 2, 2.4],
          turnedDeg: 0,
          reflectance: 0.2,
          ridgeHeightM: 2.3,
        }),
      'site.surroundings[1].ridgeHeightM (Shed)',
      /2\.3 m\) is not above the walls \(2\.4 m\)/,
    ],
    [
      'two heights of the skyline at one bearing',
      (f) =>
        void (f.site.skyline = {
          reflectance: 0.2,
          points: [
            { bearingDeg: 0, heightDeg: 7 },
            { bearingDeg: 90, heightDeg: 11 },
            { bearingDeg: 360, heightDeg: 8 },
          ],
        }),
      'site.skyline.points[2].bearingDeg',
      /two heights at 360°/,
    ],
    [
      'a cover with a name of nothing',
      (f) =>
        void (f.site.cover = { name: '\u0000', passedFraction: 0.5, diffusingFraction: 0.3, dates: null }),
      'site.cover.name',
      /no character that can be read/,
    ],
    [
      'a cover on a day that no month has',
      (f) =>
        void (f.site.cover = {
          name: 'Net',
          passedFraction: 0.5,
          diffusingFraction: 0.3,
          dates: { from: '04-31', until: '09-30' },
        }),
      'site.cover.dates.from',
      /04-31/,
    ],
    [
      'turns of a tree in the ground',
      (f) => {
        f.standing.pot = null;
        f.standing.quarterTurnEveryWeeks = 3;
      },
      'standing.quarterTurnEveryWeeks',
      /in the ground cannot be turned/,
    ],
    [
      'soil under the pot',
      (f) => void (f.standing.pot!.soilBelowRimM = 0.45),
      'standing.pot.soilBelowRimM',
      /under the pot/,
    ],
    [
      'a pot narrower than the trunk',
      (f) => {
        f.standing.pot!.topDiameterM = 0.05;
        f.standing.pot!.baseDiameterM = 0.05;
      },
      'standing.pot.topDiameterM',
      /0\.061 m/,
    ],
    [
      'an unknown setting',
      (f) => void (f.settings = { toString: 3 }),
      'settings.toString',
      /No setting.*"toString"/,
    ],
    [
      'a name of nothing but hidden characters',
      (f) => void (axis(f, 1).name = '\u202e\u0000'),
      'axes[1].name',
      /no character that can be read/,
    ],
    [
      'an entry nobody knows',
      (f) => void ((f.site as Record<string, unknown>)['altitude'] = 3),
      'site',
      /"altitude"/,
    ],
    [
      'a missing entry',
      (f) => void delete (axis(f, 1) as Record<string, unknown>)['grownIn'],
      'axes[1].grownIn (South-east limb)',
      /missing; a number is needed/,
    ],
    [
      'text for a number',
      (f) => void ((axis(f, 1) as Record<string, unknown>)['atM'] = '0.45'),
      'axes[1].atM (South-east limb)',
      /must be a number, got "0\.45"/,
    ],
    [
      'a date that is none',
      (f) => void (f.season.budBreakOn = '2026-02-30'),
      'season.budBreakOn',
      /YYYY-MM-DD, got "2026-02-30"/,
    ],
    [
      'a kind nobody knows',
      (f) => void ((axis(f, 1) as Record<string, unknown>)['kind'] = 'root'),
      'axes[1].kind (South-east limb)',
      /"trunk", "scaffold".*got "root"/,
    ],
    [
      'a latitude beyond the polar circle',
      (f) => void (f.site.latitudeDeg = 78.4),
      'site.latitudeDeg',
      /at most 66, got 78\.4/,
    ],
  ];

  it.each(cases)('%s', (_, change, where, reason) => {
    const read = refusal(change);
    expect(read.where).toBe(where);
    expect(read.reason).toMatch(reason);
  });

  it('a setting out of its range, with the range', () => {
    const found = Object.entries(figParameters as Record<string, Parameter>).find(([, p]) => p.adjustable);
    const [name, figure] = found as [string, Parameter];
    const read = refusal((f) => void (f.settings = { [name]: figure.max + 1 }));
    expect(read.where).toBe(`settings.${name}`);
    expect(read.reason).toContain(`${figure.min} to ${figure.max} ${figure.unit}`);
    const atEnd = changedSample('potted-fig-bud-break', (f) => void (f.settings = { [name]: figure.min }));
    expect(parseTreeFile(atEnd)).toMatchObject({ ok: true, file: { settings: { [name]: figure.min } } });
  });

  it('says how many more places do not fit', () => {
    const read = refusal((f) => {
      f.site.latitudeDeg = 90;
      f.site.longitudeDeg = 500;
      f.site.elevationM = 1e5;
    });
    expect(read.reason).toMatch(/2 more places do not fit either/);
  });
});
