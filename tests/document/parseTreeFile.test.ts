import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { changedSample, type LooseFile, sampleFile, sampleIds, sampleText } from './sampleFiles.ts';

type Change = (file: LooseFile) => void;
type Axis = TreeFile['axes'][number];

function accepted(change: Change): { file: TreeFile; notes: readonly string[] } {
  const read = parseTreeFile(changedSample('potted-fig-bud-break', change));
  if (!read.ok) throw new Error(`${read.where}: ${read.reason}`);
  return read;
}

const axis = (file: LooseFile, i: number): Axis => file.axes[i] as Axis;

describe('reading a tree file', () => {
  it.each(sampleIds)('accepts %s as it is, from text and from bytes, without a remark', (id) => {
    const fromText = parseTreeFile(sampleText(id));
    const fromBytes = parseTreeFile(new TextEncoder().encode(sampleText(id)));
    expect(fromText).toMatchObject({ ok: true, notes: [] });
    expect(fromBytes).toEqual(fromText);
  });

  it('accepts a byte order mark before the text', () => {
    const bytes = new TextEncoder().encode(`\ufeff${sampleText('young-whip')}`);
    expect(parseTreeFile(bytes).ok).toBe(true);
    expect(parseTreeFile(`\ufeff${sampleText('young-whip')}`).ok).toBe(true);
  });

  it('puts defaults where an entry may be left out', () => {
    const { file } = accepted((f) => {
      for (const one of f.axes)
        for (const key of ['pin', 'condition', 'foliage']) delete (one as Record<string, unknown>)[key];
      delete (f as Record<string, unknown>)['note'];
    });
    expect(file.axes[3]).toMatchObject({ pin: null, condition: 'live', foliage: null });
    expect(file.note).toBe('');
  });

  it('puts children that come before their parent after it, and says so', () => {
    const { file, notes } = accepted((f) => void f.axes.reverse());
    const seen = new Set<string | null>([null]);
    for (const one of file.axes) {
      expect(seen).toContain(one.parentId);
      seen.add(one.id);
    }
    expect(file.axes).toHaveLength(sampleFile('potted-fig-bud-break').axes.length);
    expect(notes).toEqual(['Branches were put in order, each after the one it grows from.']);
  });

  it('puts buds in order from base to tip, and says so', () => {
    const { file, notes } = accepted((f) => void axis(f, 1).buds.reverse());
    const at = (file.axes[1] as Axis).buds.map((bud) => bud.atM);
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(notes).toEqual(['Buds were put in order from base to tip on one branch.']);
  });

  it('takes hidden and turning characters out of names', () => {
    const { file, notes } = accepted((f) => {
      axis(f, 2).name = 'East\u202e\r\nATTENDEE:\u0000 limb\ud800';
      f.note = 'one\r\ntwo\u2067\tthree\u0007';
    });
    expect(file.axes[2]?.name).toBe('East  ATTENDEE:  limb');
    expect(file.note).toBe('one\ntwo\tthree');
    expect(notes).toEqual(['One name had hidden characters, which were taken out.']);
  });

  it('drops points of a path that lie on the point before', () => {
    const { file, notes } = accepted((f) => {
      const { path } = axis(f, 4);
      path.splice(2, 0, [...(path[1] as [number, number, number])]);
    });
    expect(file.axes[4]?.path).toEqual(sampleFile('potted-fig-bud-break').axes[4]?.path);
    expect(notes).toEqual(['One point of branches lay on the point before and went.']);
  });

  it('sets a place that runs over the end by less than a pencil line to the end', () => {
    const { file } = accepted((f) => {
      axis(f, 1).atM = 0.45;
      const last = axis(f, 1).buds.at(-1) as { atM: number };
      last.atM += 0.004;
    });
    const limb = file.axes[1] as Axis;
    const sketched = sampleFile('potted-fig-bud-break').axes[1]?.buds.at(-1)?.atM ?? Number.NaN;
    expect(limb.buds.at(-1)?.atM).toBeLessThan(sketched + 0.004);
  });

  it('remarks on wood that is entered as older than its parent', () => {
    const { notes } = accepted((f) => void (axis(f, 1).grownIn = 2019));
    expect(notes).toEqual([
      'South-east limb is entered as older than the wood it grows from. Check the years.',
    ]);
  });

  it('remarks on a tree that stands inside a wall or a turned box, and not on one beside it', () => {
    const notesWith = (thing: TreeFile['site']['surroundings'][number]) =>
      accepted((f) => {
        f.standing.at = [1.3, -0.4];
        f.site.surroundings = [thing];
      }).notes;
    const shed = {
      kind: 'box' as const,
      name: 'Shed',
      centre: [0.2, 0.7] as [number, number],
      turnedDeg: 45,
      reflectance: 0.3,
    };
    const inside = 'The foot of the tree stands inside Shed, where no light comes. Check where both stand.';
    // From its middle the foot lies 1.56 m south-east: along the box's long side, which is turned there from the east.
    expect(notesWith({ ...shed, sizeM: [3.3, 0.4, 2] })).toEqual([inside]);
    expect(notesWith({ ...shed, sizeM: [0.4, 3.3, 2] })).toEqual([]);
    const wall = { kind: 'wall', name: 'Shed', heightM: 2, thicknessM: 0.3, reflectance: 0.5 } as const;
    expect(notesWith({ ...wall, from: [0.2, 0.7], to: [2.4, -1.5] })).toEqual([inside]);
    expect(notesWith({ ...wall, from: [0.2, -1.5], to: [2.4, 0.7] })).toEqual([inside]);
    expect(notesWith({ ...wall, from: [0.2, 0.95], to: [2.4, -1.25] })).toEqual([]);
  });

  it('keeps what other programs put into ext', () => {
    const ext = { 'org.example': { b: [1, 0.30000000000000004, null], a: 'x\u202ey', '10': true } };
    const { file } = accepted((f) => void (f.ext = ext));
    expect(JSON.stringify(file.ext)).toBe(JSON.stringify(ext));
  });
});
