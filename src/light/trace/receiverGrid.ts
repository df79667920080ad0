/** Receivers as seen from one direction, sorted into the cells of a grid on the plane across it. */
import type { Receiver } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';

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

/** Cells a receiver, over the whole rectangle: measured best between 0.5 and 2 on a crown of 1,200 receivers. */
const cellsPerReceiver = 1;
/** So that receivers strung along a line do not ask for a grid without end. */
const mostCellsASide = 1024;

/** Prepares receivers once; the result sorts those that face a direction, into arrays it uses again each time. */
export function makeReceiverGrid(receivers: readonly Receiver[]): (frame: BeamFrame) => ReceiverGrid {
  const n = receivers.length;
  const seen = { right: new Float64Array(n), top: new Float64Array(n), ahead: new Float64Array(n) };
  const seenReceiver = new Int32Array(n);
  const cell = new Int32Array(n);
  const sorted = { right: new Float64Array(n), top: new Float64Array(n), ahead: new Float64Array(n) };
  const sortedReceiver = new Int32Array(n);
  const sortedOnSurface = new Int32Array(n);
  const point = Float64Array.from(receivers.flatMap((r) => r.point));
  const normal = Float64Array.from(receivers.flatMap((r) => r.normal));
  const oneSided = Uint8Array.from(receivers, (r) => (r.sides === 'one' ? 1 : 0));
  const onSurface = Int32Array.from(receivers, (r) => r.onSurface);
  let start = new Int32Array(2);

  const along = (values: Float64Array, i: number, axis: Vec3): number =>
    (values[3 * i] as number) * axis[0] +
    (values[3 * i + 1] as number) * axis[1] +
    (values[3 * i + 2] as number) * axis[2];

  function look(frame: BeamFrame): number {
    let count = 0;
    for (let i = 0; i < n; i++) {
      if (oneSided[i] === 1 && !(along(normal, i, frame.ahead) > 0)) continue;
      seen.right[count] = along(point, i, frame.right);
      seen.top[count] = along(point, i, frame.top);
      seen.ahead[count] = along(point, i, frame.ahead);
      seenReceiver[count++] = i;
    }
    return count;
  }

  function countCells(layout: Layout, count: number): void {
    const cells = layout.columns * layout.rows;
    if (start.length < cells + 1) start = new Int32Array(2 * cells + 1);
    start.fill(0, 0, cells + 1);
    for (let k = 0; k < count; k++) {
      const column = ((seen.right[k] as number) - layout.minRight) * layout.cellsPerM;
      const row = ((seen.top[k] as number) - layout.minTop) * layout.cellsPerM;
      const c =
        Math.min(layout.rows - 1, row | 0) * layout.columns + Math.min(layout.columns - 1, column | 0);
      cell[k] = c;
      start[c + 1] = (start[c + 1] as number) + 1;
    }
    for (let c = 0; c < cells; c++) start[c + 1] = (start[c + 1] as number) + (start[c] as number);
  }

  /** Fills each cell from its end downwards, which leaves `start` as it must be one cell on; shifts it back after. */
  function fill(layout: Layout, count: number): void {
    const cells = layout.columns * layout.rows;
    for (let k = count - 1; k >= 0; k--) {
      const c = (cell[k] as number) + 1;
      const at = (start[c] as number) - 1;
      start[c] = at;
      sorted.right[at] = seen.right[k] as number;
      sorted.top[at] = seen.top[k] as number;
      sorted.ahead[at] = seen.ahead[k] as number;
      const receiver = seenReceiver[k] as number;
      sortedReceiver[at] = receiver;
      sortedOnSurface[at] = onSurface[receiver] as number;
    }
    start.copyWithin(0, 1, cells + 1);
    start[cells] = count;
  }

  return (frame) => {
    const count = look(frame);
    const layout = layOut(seen.right, seen.top, count);
    countCells(layout, count);
    fill(layout, count);
    return { count, ...layout, start, ...sorted, receiver: sortedReceiver, onSurface: sortedOnSurface };
  };
}

interface Layout {
  readonly columns: number;
  readonly rows: number;
  readonly minRight: number;
  readonly minTop: number;
  readonly cellsPerM: number;
}

function layOut(right: Float64Array, top: Float64Array, count: number): Layout {
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

/**
 * First column (or row) that a stretch of the plane from `low` to some `high` touches; `cells` when it begins past the grid.
 * The last cell holds the receivers at the very edge too.
 */
export function firstCell(low: number, gridMin: number, cellsPerM: number, cells: number): number {
  const at = (low - gridMin) * cellsPerM;
  return at > cells ? cells : Math.min(cells - 1, Math.max(0, Math.floor(at)));
}

/** Last column (or row) that the stretch touches; below `firstCell`, or below 0, when it touches none. */
export const lastCell = (high: number, gridMin: number, cellsPerM: number, cells: number): number =>
  Math.min(cells - 1, Math.floor((high - gridMin) * cellsPerM));
