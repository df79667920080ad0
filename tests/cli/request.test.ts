import { describe, expect, it } from 'vitest';
import { readRequest } from '../../src/cli/request.ts';

describe('the words after the command', () => {
  it('are read with every option', () => {
    const args = [
      'light',
      'fig.json',
      '--json',
      '--units=us',
      '--seed',
      '73',
      '--waves',
      '12',
      '--error',
      '0.5',
      '--from',
      '2027-05-03',
    ];
    const light = ['--to', '2027-10-19', '--weather', 'clear', '--sky', '13'];
    expect(readRequest([...args, ...light])).toEqual({
      ok: true,
      value: {
        command: 'light',
        file: 'fig.json',
        json: true,
        units: 'us',
        seed: 73,
        waves: 12,
        error: 0.005,
        period: { from: '2027-05-03', to: '2027-10-19' },
        weather: 'clear',
        sky: 13,
      },
    });
  });

  it('leave to the engine what they do not say', () => {
    const value = { command: 'plan', file: '-', json: false, units: 'metric' };
    expect(readRequest(['plan', '-'])).toEqual({ ok: true, value });
  });

  it.each([
    ['--sky', '16', '--sky must be uniform, overcast, clear, all-weather or a CIE sky from 1 to 15, got 16'],
    [
      '--sky',
      '1.5',
      '--sky must be uniform, overcast, clear, all-weather or a CIE sky from 1 to 15, got 1.5',
    ],
    [
      '--weather',
      'wet',
      '--weather must be normal, clear or the path of a weather file ending in .epw, got wet',
    ],
  ])('refuse what is no sky and no weather: %s %s', (option, value, reason) => {
    expect(readRequest(['light', 'fig.json', option, value])).toMatchObject({ ok: false });
    expect(JSON.stringify(readRequest(['light', 'fig.json', option, value]))).toContain(reason);
  });

  it('name a shoot and a node, and ask for nodes and leaves', () => {
    const place = ['sky', 'a.json', '--shoot', 'East limb, shoot 2', '--node', '7'];
    expect(readRequest(place)).toMatchObject({ value: { shoot: 'East limb, shoot 2', node: 7 } });
    const all = ['light', 'a.json', '--json', '--nodes', '--leaves'];
    expect(readRequest(all)).toMatchObject({ value: { nodes: true, leaves: true, json: true } });
    expect(readRequest(['light', 'a.json', '--json'])).not.toHaveProperty('value.nodes');
  });

  it('may come in any order, and a file may look like an option after --', () => {
    expect(readRequest(['--json', 'check', '--', '--seed'])).toMatchObject({
      value: { file: '--seed', json: true },
    });
  });

  it.each([
    [['--help'], 'help'],
    [['help'], 'help'],
    [['help', 'scene'], 'help'],
    [['light', '-h'], 'help'],
    [['--version'], 'version'],
    [['-v'], 'version'],
  ])('%j ask for %s', (args, command) => {
    expect(readRequest(args)).toEqual({ ok: true, value: { command } });
  });

  it.each([
    [[], 'say what to do'],
    [['prune', 'fig.json'], 'there is no command prune'],
    [['toString', 'fig.json'], 'there is no command toString'],
    [['light'], 'light needs a tree file'],
    [['plan', 'a.json', 'b.json'], 'takes one file, got also b.json'],
    [['light', 'a.json', '--colour'], 'there is no option --colour'],
    [['light', 'a.json', '--date', '2027-01-05'], 'light has no option --date'],
    [['plan', 'a.json', '--from', '2027-01-05', '--to', '2027-02-05'], 'plan has no option --from'],
    [['check', 'a.json', '--seed', '3'], 'check has no option --seed'],
    [['scene', 'a.json'], 'scene needs --json, --glb with the path of a file to write, or both'],
    [['scene', 'a.json', '--json', '--units', 'us'], 'scene has no option --units'],
    [['scene', 'a.json', '--glb'], '--glb needs a value'],
    [['light', 'a.json', '--glb', 'a.glb'], 'light has no option --glb'],
    [['sky', 'a.json', '--node', '3'], 'sky needs --shoot with the name of a shoot and --node'],
    [
      ['sky', 'a.json', '--shoot', 'Low', '--node', '0'],
      '--node must be a whole number from 1 to 1000, got 0',
    ],
    [['day', 'a.json', '--sky', '3'], 'day has no option --sky'],
    [['plan', 'a.json', '--csv', '--json'], '--csv and --json are two answers: ask for one'],
    [['light', 'a.json', '--csv'], 'light has no option --csv'],
    [['light', 'a.json', '--leaves'], '--nodes and --leaves go with --json'],
    [['light', 'a.json', '--seed'], '--seed needs a value'],
    [['light', 'a.json', '--seed', '3.5'], '--seed must be a whole number from 0 to 4294967295, got 3.5'],
    [['light', 'a.json', '--seed', '4294967296'], 'got 4294967296'],
    [['light', 'a.json', '--seed', '1', '--seed', '2'], '--seed is given twice'],
    [['light', 'a.json', '--waves', '1'], '--waves must be a whole number from 2 to 1000, got 1'],
    [['light', 'a.json', '--error', '0.01'], '--error must be a figure in percent from 0.05 to 20, got 0.01'],
    [['plan', 'a.json', '--error', '1'], 'plan has no option --error'],
    [['light', 'a.json', '--json=yes'], '--json takes no value, got yes'],
    [['light', 'a.json', '--units', 'furlongs'], '--units must be metric or us, got furlongs'],
    [['light', 'a.json', '--from', '2027-05-01'], '--from and --to go together'],
    [
      ['light', 'a.json', '--from', '2027-02-30', '--to', '2027-03-01'],
      '--from must be a day of the calendar',
    ],
    [['light', 'a.json', '--from', '2027-06-01', '--to', '2027-05-01'], '--to must not lie before --from'],
    [['light', 'a.json', '--from', '2025-06-01', '--to', '2027-05-01'], 'may span a year at most'],
    [['plan', 'a.json', '--date', '12 March'], '--date must be a day of the calendar such as 2027-04-18'],
  ])('%j are refused: %s', (args, reason) => {
    expect(readRequest(args)).toEqual({ ok: false, reason: expect.stringContaining(reason) });
  });
});
