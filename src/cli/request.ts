/** What is asked of the command, and how it is read from the words after its name. */
import { parseArgs } from 'node:util';
import type { Units } from '../geometry/measure.ts';
import type { Weather } from '../light/sky/dayLight.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import { type Boldness, boldnesses } from '../plan/choice.ts';
import type { IsoDate, Period } from '../season/site.ts';
import { misuse, type Read } from './read.ts';
import { readDate, readPercent, readPeriod, readSky, readWeather, readWhole, readWord } from './values.ts';

/** Work on one tree file. What is not given is left to the engine. */
export interface WorkRequest {
  readonly command: 'light' | 'day' | 'sky' | 'plan' | 'check' | 'scene';
  /** Path of the tree file, or "-" for standard input. */
  readonly file: string;
  readonly json: boolean;
  readonly units: Units;
  readonly seed?: number;
  readonly leafSeed?: number;
  readonly waves?: number;
  /** Of `light` and `scene`: standard error wanted of the median shoot, share of open sky. */
  readonly error?: number;
  /** Of `light` and `scene`. */
  readonly period?: Period;
  /** Of `light` and `day`: every node in the JSON; of `light`: every leaf. */
  readonly nodes?: boolean;
  readonly leaves?: boolean;
  /** Of `light`, `day`, `plan` and `scene`. */
  readonly weather?: Weather;
  /** Path of an hourly weather file, to be used in place of the tree's own climate. */
  readonly weatherFile?: string;
  readonly sky?: SkyKind;
  /** Of `plan` and `day`. */
  readonly date?: IsoDate;
  /** Of `plan` alone: ways to renew the tree, too. */
  readonly renewal?: boolean;
  /** Of `plan` alone: a close bound on the search. */
  readonly prove?: boolean;
  /** Of `plan` alone: the cuts as a table, as the page saves it. */
  readonly csv?: boolean;
  /** Of `plan` alone. */
  readonly boldness?: Boldness;
  readonly worlds?: number;
  /** Of `sky` alone: id or name of the shoot, and its node. */
  readonly shoot?: string;
  readonly node?: number;
  /** Of `scene` alone: the path to write to. */
  readonly glb?: string;
}

export type Request = WorkRequest | { readonly command: 'help' | 'version' };

const optionsOf = {
  light: [
    'json',
    'units',
    'seed',
    'leaf-seed',
    'waves',
    'error',
    'from',
    'to',
    'weather',
    'sky',
    'nodes',
    'leaves',
  ],
  day: ['json', 'units', 'seed', 'leaf-seed', 'waves', 'date', 'weather', 'nodes'],
  sky: ['json', 'units', 'leaf-seed', 'shoot', 'node'],
  plan: [
    'json',
    'units',
    'seed',
    'leaf-seed',
    'waves',
    'date',
    'weather',
    'sky',
    'renewal',
    'prove',
    'csv',
    'boldness',
    'worlds',
  ],
  check: ['json', 'units'],
  scene: ['json', 'glb', 'seed', 'leaf-seed', 'waves', 'error', 'from', 'to', 'weather', 'sky'],
} as const satisfies Record<WorkRequest['command'], readonly string[]>;

const isCommand = (word: string): word is WorkRequest['command'] => Object.hasOwn(optionsOf, word);

/** Options that stand alone; all others take a value. */
const flags = ['json', 'nodes', 'leaves', 'renewal', 'prove', 'csv', 'help', 'version'];
const spellings = {
  json: { type: 'boolean' },
  nodes: { type: 'boolean' },
  leaves: { type: 'boolean' },
  renewal: { type: 'boolean' },
  prove: { type: 'boolean' },
  csv: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
  units: { type: 'string' },
  seed: { type: 'string' },
  'leaf-seed': { type: 'string' },
  waves: { type: 'string' },
  error: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  date: { type: 'string' },
  boldness: { type: 'string' },
  worlds: { type: 'string' },
  weather: { type: 'string' },
  sky: { type: 'string' },
  glb: { type: 'string' },
  shoot: { type: 'string' },
  node: { type: 'string' },
} as const;

interface Words {
  readonly given: ReadonlyMap<string, string>;
  readonly plain: readonly string[];
}

/** Splits the words into options and the rest; refuses what is no option, is given twice or lacks its value. */
function readWords(args: readonly string[]): Read<Words> {
  const { tokens } = parseArgs({
    args: [...args],
    options: spellings,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given = new Map<string, string>();
  const plain: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') plain.push(token.value);
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    const isFlag = flags.includes(name);
    if (!Object.hasOwn(spellings, name)) return misuse(`there is no option ${rawName}`);
    if (given.has(name)) return misuse(`${rawName} is given twice`);
    if (isFlag && value !== undefined) return misuse(`${rawName} takes no value, got ${value}`);
    if (!isFlag && (value === undefined || value === '')) return misuse(`${rawName} needs a value`);
    given.set(name, value ?? '');
  }
  return { ok: true, value: { given, plain } };
}

/** The options' values, each only when given; the first that cannot be read is the answer. */
function readOptions(given: ReadonlyMap<string, string>): Read<Omit<WorkRequest, 'command' | 'file'>> {
  const units = readWord('--units', given.get('units') ?? 'metric', ['metric', 'us'] as const);
  const seed = readWhole('--seed', given.get('seed'), 0, 4_294_967_295);
  const leafSeed = readWhole('--leaf-seed', given.get('leaf-seed'), 0, 4_294_967_295);
  const waves = readWhole('--waves', given.get('waves'), 2, 1000);
  const error = readPercent('--error', given.get('error'), 0.05, 20);
  const period = readPeriod(given.get('from'), given.get('to'));
  const worlds = readWhole('--worlds', given.get('worlds'), 0, 1000);
  const date = readDate('--date', given.get('date'));
  const node = readWhole('--node', given.get('node'), 1, 1000);
  const [glb, shoot] = [given.get('glb'), given.get('shoot')];
  if (!units.ok) return units;
  const weather = readWeather(given.get('weather'));
  const sky = readSky(given.get('sky'));
  const boldness = readWord('--boldness', given.get('boldness') ?? 'balanced', boldnesses);
  for (const read of [seed, leafSeed, waves, error, period, date, weather, sky, node, boldness, worlds])
    if (!read.ok) return read;
  return {
    ok: true,
    value: {
      json: given.has('json'),
      units: units.value,
      ...(seed.ok && seed.value !== undefined ? { seed: seed.value } : {}),
      ...(leafSeed.ok && leafSeed.value !== undefined ? { leafSeed: leafSeed.value } : {}),
      ...(waves.ok && waves.value !== undefined ? { waves: waves.value } : {}),
      ...(error.ok && error.value !== undefined ? { error: error.value } : {}),
      ...(period.ok && period.value !== undefined ? { period: period.value } : {}),
      ...(weather.ok ? weather.value : {}),
      ...(sky.ok && sky.value !== undefined ? { sky: sky.value } : {}),
      ...(date.ok && date.value !== undefined ? { date: date.value } : {}),
      ...(worlds.ok && worlds.value !== undefined ? { worlds: worlds.value } : {}),
      ...(boldness.ok && given.has('boldness') ? { boldness: boldness.value } : {}),
      ...(glb === undefined ? {} : { glb }),
      ...(shoot === undefined ? {} : { shoot }),
      ...(node.ok && node.value !== undefined ? { node: node.value } : {}),
      ...(given.has('nodes') ? { nodes: true } : {}),
      ...(given.has('leaves') ? { leaves: true } : {}),
      ...(given.has('renewal') ? { renewal: true } : {}),
      ...(given.has('prove') ? { prove: true } : {}),
      ...(given.has('csv') ? { csv: true } : {}),
    },
  };
}

const commands = 'light, day, sky, plan, check or scene';

/** What the words after the command's name ask for. */
export function readRequest(args: readonly string[]): Read<Request> {
  const words = readWords(args);
  if (!words.ok) return words;
  const { given, plain } = words.value;
  if (given.has('help') || plain[0] === 'help') return { ok: true, value: { command: 'help' } };
  if (given.has('version')) return { ok: true, value: { command: 'version' } };
  const [command, file, ...rest] = plain;
  if (command === undefined) return misuse(`say what to do: ${commands}`);
  if (!isCommand(command)) return misuse(`there is no command ${command}: say ${commands}`);
  if (file === undefined || file === '')
    return misuse(`${command} needs a tree file, or - for standard input`);
  if (rest.length > 0) return misuse(`${command} takes one file, got also ${rest.join(' ')}`);
  const allowed: readonly string[] = optionsOf[command];
  const foreign = [...given.keys()].find((name) => !allowed.includes(name));
  if (foreign !== undefined) return misuse(`${command} has no option --${foreign}`);
  if (command === 'scene' && !given.has('json') && !given.has('glb'))
    return misuse('scene needs --json, --glb with the path of a file to write, or both');
  if (command === 'sky' && !(given.has('shoot') && given.has('node')))
    return misuse('sky needs --shoot with the name of a shoot and --node with the number of its node');
  if (given.has('csv') && given.has('json')) return misuse('--csv and --json are two answers: ask for one');
  if ((given.has('nodes') || given.has('leaves')) && !given.has('json'))
    return misuse('--nodes and --leaves go with --json');
  const options = readOptions(given);
  return options.ok ? { ok: true, value: { command, file, ...options.value } } : options;
}
