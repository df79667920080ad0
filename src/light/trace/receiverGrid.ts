/** Receivers as seen from one direction, sorted into the cells of a grid on the plane across it. */
import type { Receiver } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Crossing } from '../tracer.ts';

/**
 * The plane across a direction: a point's place on it is (right, top), both in metres, and `ahead` is how far
 * towards the light it lies. The three are unit vectors at right angles.
 */
export interface BeamFrame {
  readonly right: Vec3;
  readonly top: Vec3;
  readonly ahead: Vec3;
}

/** A frame without a branch near any pole but one: Duff and others 2017, JCGT 6(1), listing 3, axes renamed. */
export function beamFrame(toSky: Vec3): BeamFrame {
  const [x, y, z] = toSky;
  const sign = z >= 0 ? 1 : -1;
  const a = -1 / (sign + z);
  const b = x * y * a;
  return { right: [1 + sign * x * x * a, sign * b, -sign * x], top: [b, sign + y * y * a, -y], ahead: toSky };
}

/**
 * Sorted by cell, row by row, so that the cells from column c to column d of one row are one run of entries:
 * `start[row * columns + c]` to `start[row * columns + d + 1]` (excluded). Of the arrays only the first `count` entries count.
 */
export interface ReceiverGrid {
  readonly count: number;
  readonly columns: number;
  readonly rows: number;
  readonly minRight: number;
  readonly minTop: number;
  /** Cells per metre. */
  readonly cellsPerM: number;
  readonly start: Int32Array;
  /** Place across the beam and along it, metres. */
  readonly right: Float64Array;
  readonly top: Float64Array;
  readonly ahead: Float64Array;
  /** Index of the receiver, and of the surface it lies on (-1 none). */
  readonly receiver: Int32Array;
  readonly onSurface: Int32Array;
}

/**
 * Tests the surfaces of one shape against the receivers of the grid.
 * @param reached per surface: 0 leaves it out; null leaves out none
 */
export type Cover = (
  frame: BeamFrame,
  grid: ReceiverGrid,
  reached: Uint8Array | null,
  crossing: Crossing,
) => void;

/** Cells a receiver, over the whole rectangle: measured best between 0.5 and 2 on a crown of 1,200 receivers. */
const cellsPerReceiver = 1;
/** So that receivers strung along a line do not ask for a grid without end. */
const mostCellsASide = 1024;

/** Receivers as flat arrays, three numbers a point. */
interface FlatReceivers {
  readonly count: number;
  readonly point: Float64Array;
  readonly normal: Float64Array;
  readonly oneSided: Uint8Array;
  readonly onSurface: Int32Array;
}

function flatten(receivers: readonly Receiver[]): FlatReceivers {
  const count = receivers.length;
  const [point, normal] = [new Float64Array(3 * count), new Float64Array(3 * count)];
  receivers.forEach((receiver, i) => {
    point.set(receiver.point, 3 * i);
    normal.set(receiver.normal, 3 * i);
  });
  const oneSided = Uint8Array.from(receivers, (r) => (r.sides === 'one' ? 1 : 0));
  const onSurface = Int32Array.from(receivers, (r) => r.onSurface);
  return { count, point, normal, oneSided, onSurface };
}

/** Places on the plane of the receivers that face the light; `cell` is filled in later. */
interface Places {
  readonly right: Float64Array;
  readonly top: Float64Array;
  readonly ahead: Float64Array;
  readonly receiver: Int32Array;
  readonly cell: Int32Array;
}

const makePlaces = (count: number): Places => ({
  right: new Float64Array(count),
  top: new Float64Array(count),
  ahead: new Float64Array(count),
  receiver: new Int32Array(count),
  cell: new Int32Array(count),
});

/** Place of a point (three numbers from `at` on) along an axis. */
export const along = (values: Float64Array, at: number, axis: Vec3): number =>
  (values[at] as number) * axis[0] +
  (values[at + 1] as number) * axis[1] +
  (values[at + 2] as number) * axis[2];

/** A rectangle on the plane across the beam: its middle and half its sides, metres. */
export interface Rectangle {
  readonly right: number;
  readonly top: number;
  readonly halfRight: number;
  readonly halfTop: number;
}

/** Neighbours in the list of receivers that are left out together: those of one shoot come one after another. */
const run = 12;

/** Balls round runs of receivers: middle x, y, z and radius. */
function ballsOfRuns({ count, point }: FlatReceivers): Float64Array {
  const balls = new Float64Array(4 * Math.ceil(count / run));
  for (let first = 0, at = 0; first < count; first += run, at += 4) {
    const end = Math.min(count, first + run);
    let squared = 0;
    for (const k of [0, 1, 2]) {
      let [low, high] = [Infinity, -Infinity];
      for (let i = first; i < end; i++) {
        low = Math.min(low, point[3 * i + k] as number);
        high = Math.max(high, point[3 * i + k] as number);
      }
      balls[at + k] = (low + high) / 2;
      squared += ((high - low) / 2) ** 2;
    }
    // A hair more than rounding can take away.
    balls[at + 3] = Math.sqrt(squared) * (1 + 1e-9) + 1e-12;
  }
  return balls;
}

/** Fills in the places of those that face the light, of receivers `first` to `end` (excluded); returns how many there are. */
function look(
  { point, normal, oneSided }: FlatReceivers,
  frame: BeamFrame,
  first: number,
  end: number,
  places: Places,
  had: number,
): number {
  let facing = had;
  for (let i = first; i < end; i++) {
    if (oneSided[i] === 1 && !(along(normal, 3 * i, frame.ahead) > 0)) continue;
    places.right[facing] = along(point, 3 * i, frame.right);
    places.top[facing] = along(point, 3 * i, frame.top);
    places.ahead[facing] = along(point, 3 * i, frame.ahead);
    places.receiver[facing++] = i;
  }
  return facing;
}

/** The same for the runs that reach into a rectangle. */
function lookWithin(
  flat: FlatReceivers,
  balls: Float64Array,
  frame: BeamFrame,
  { right, top, halfRight, halfTop }: Rectangle,
  places: Places,
): number {
  let facing = 0;
  for (let first = 0, at = 0; first < flat.count; first += run, at += 4) {
    const radius = balls[at + 3] as number;
    if (!(Math.abs(along(balls, at, frame.right) - right) <= halfRight + radius)) continue;
    if (!(Math.abs(along(balls, at, frame.top) - top) <= halfTop + radius)) continue;
    facing = look(flat, frame, first, Math.min(flat.count, first + run), places, facing);
  }
  return facing;
}

interface Layout {
  readonly columns: number;
  readonly rows: number;
  readonly minRight: number;
  readonly minTop: number;
  readonly cellsPerM: number;
}

function layOut({ right, top }: Places, count: number): Layout {
  if (count === 0) return { columns: 1, rows: 1, minRight: 0, minTop: 0, cellsPerM: 0 };
  let [minRight, maxRight, minTop, maxTop] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let k = 0; k < count; k++) {
    minRight = Math.min(minRight, right[k] as number);
    maxRight = Math.max(maxRight, right[k] as number);
    minTop = Math.min(minTop, top[k] as number);
    maxTop = Math.max(maxTop, top[k] as number);
  }
  const [width, height] = [maxRight - minRight, maxTop - minTop];
  const longest = Math.max(width, height);
  if (!(longest > 0)) return { columns: 1, rows: 1, minRight, minTop, cellsPerM: 0 };
  const wanted = Math.sqrt((cellsPerReceiver * count) / Math.max(width * height, Number.MIN_VALUE));
  const cellsPerM = Math.min(wanted, mostCellsASide / longest);
  const columns = Math.max(1, Math.ceil(width * cellsPerM));
  const rows = Math.max(1, Math.ceil(height * cellsPerM));
  return { columns, rows, minRight, minTop, cellsPerM };
}

/** Leaves in start[c + 1] the number of receivers in all cells up to c, that is where cell c ends. */
function countCells(places: Places, count: number, layout: Layout, start: Int32Array): void {
  const { columns, rows, minRight, minTop, cellsPerM } = layout;
  start.fill(0, 0, columns * rows + 1);
  for (let k = 0; k < count; k++) {
    const column = Math.min(columns - 1, (((places.right[k] as number) - minRight) * cellsPerM) | 0);
    const row = Math.min(rows - 1, (((places.top[k] as number) - minTop) * cellsPerM) | 0);
    const c = row * columns + column;
    places.cell[k] = c;
    start[c + 1] = (start[c + 1] as number) + 1;
  }
  for (let c = 0; c < columns * rows; c++) start[c + 1] = (start[c + 1] as number) + (start[c] as number);
}

/** Counting sort: fills each cell from its end downwards, which turns the ends in `start` into beginnings, one on. */
function sortIntoCells(places: Places, count: number, start: Int32Array, cells: number, into: Places): void {
  for (let k = count - 1; k >= 0; k--) {
    const c = (places.cell[k] as number) + 1;
    const at = (start[c] as number) - 1;
    start[c] = at;
    into.right[at] = places.right[k] as number;
    into.top[at] = places.top[k] as number;
    into.ahead[at] = places.ahead[k] as number;
    into.receiver[at] = places.receiver[k] as number;
  }
  start.copyWithin(0, 1, cells + 1);
  start[cells] = count;
}

/**
 * Prepares receivers once; the result sorts those that face a direction and may lie in the rectangle, if one is given, into arrays it
 * uses again each time.
 */
export function makeReceiverGrid(
  receivers: readonly Receiver[],
): (frame: BeamFrame, within: Rectangle | null) => ReceiverGrid {
  const flat = flatten(receivers);
  const balls = ballsOfRuns(flat);
  const [seen, sorted] = [makePlaces(flat.count), makePlaces(flat.count)];
  const sortedOnSurface = new Int32Array(flat.count);
  let start = new Int32Array(2);
  return (frame, within) => {
    const count =
      within === null
        ? look(flat, frame, 0, flat.count, seen, 0)
        : lookWithin(flat, balls, frame, within, seen);
    const layout = layOut(seen, count);
    const cells = layout.columns * layout.rows;
    if (start.length < cells + 1) start = new Int32Array(2 * cells + 1);
    countCells(seen, count, layout, start);
    sortIntoCells(seen, count, start, cells, sorted);
    for (let k = 0; k < count; k++)
      sortedOnSurface[k] = flat.onSurface[sorted.receiver[k] as number] as number;
    return { count, ...layout, start, ...sorted, onSurface: sortedOnSurface };
  };
}

/**
 * First column (or row) that a stretch of the plane from `low` to some `high` touches; `cells` when it begins past the grid.
 * The last cell holds the receivers at the very edge too.
 */
function firstCell(low: number, gridMin: number, cellsPerM: number, cells: number): number {
  const at = (low - gridMin) * cellsPerM;
  return at > cells ? cells : Math.min(cells - 1, Math.max(0, Math.floor(at)));
}

/** Last column (or row) that the stretch touches; below `firstCell`, or below 0, when it touches none. */
const lastCell = (high: number, gridMin: number, cellsPerM: number, cells: number): number =>
  Math.min(cells - 1, Math.floor((high - gridMin) * cellsPerM));

export const firstColumn = (grid: ReceiverGrid, lowRight: number): number =>
  firstCell(lowRight, grid.minRight, grid.cellsPerM, grid.columns);
export const lastColumn = (grid: ReceiverGrid, highRight: number): number =>
  lastCell(highRight, grid.minRight, grid.cellsPerM, grid.columns);
export const firstRow = (grid: ReceiverGrid, lowTop: number): number =>
  firstCell(lowTop, grid.minTop, grid.cellsPerM, grid.rows);
export const lastRow = (grid: ReceiverGrid, highTop: number): number =>
  lastCell(highTop, grid.minTop, grid.cellsPerM, grid.rows);
