// The twin of `cover` and `look` in `src/light/trace/blades.ts`, and of `cover` in `stems.ts` there: the same arithmetic in the same
// order, in double precision, so that the same receivers are met. Two receivers at a time, one a lane. AssemblyScript, not TypeScript.

import { take } from './memory';
import { isInside } from './outline';

const side: f64 = 64;
const border: u8 = 2;
const endOn: f64 = 1e-6;

let bladeCount: i32 = 0;
let stemCount: i32 = 0;
/** Thirteen numbers a blade, and the number of its mask. */
export let gridBladeAt: usize = 0;
export let gridBladeMaskAt: usize = 0;
export let gridBladeSurfaceAt: usize = 0;
/** Eight numbers a stem: its ends and the radius at either. */
export let gridStemAt: usize = 0;
export let gridStemSurfaceAt: usize = 0;
export let gridTexelAt: usize = 0;
export let gridRowStartAt: usize = 0;
export let gridEdgeAt: usize = 0;

/** Balls round blades and stems, by fours in single precision: x of four, y, z, radius. See `lattice/balls.ts` of the twin. */
export let gridBladeBallAt: usize = 0;
export let gridStemBallAt: usize = 0;
/** Numbers of the things that may reach a receiver. */
let gridNearAt: usize = 0;

/** Receivers sorted by cell. */
export let gridRightAt: usize = 0;
export let gridTopAt: usize = 0;
export let gridAheadAt: usize = 0;
export let gridOnSurfaceAt: usize = 0;
export let gridStartAt: usize = 0;
let cellRoom: i32 = 0;

/** What was met: place of the receiver in the grid and number of the blade, or of the stem behind all blades, two entries each. */
export let gridMetAt: usize = 0;
let metCount: i32 = 0;
let metRoom: i32 = 0;

export function setUpGrid(
  blades: i32,
  stems: i32,
  receivers: i32,
  texels: i32,
  rowStarts: i32,
  edges: i32,
): void {
  bladeCount = blades;
  stemCount = stems;
  gridStemAt = take(64 * stems);
  gridStemSurfaceAt = take(4 * stems);
  gridBladeBallAt = take(64 * ((blades + 3) >> 2));
  gridStemBallAt = take(64 * ((stems + 3) >> 2));
  gridNearAt = take(4 * max(blades, stems));
  gridBladeAt = take(104 * blades);
  gridBladeMaskAt = take(4 * blades);
  gridBladeSurfaceAt = take(4 * blades);
  gridTexelAt = take(texels);
  gridRowStartAt = take(4 * rowStarts);
  gridEdgeAt = take(32 * edges);
  // One more, since the last may be read as half of a pair.
  gridRightAt = take(8 * (receivers + 1));
  gridTopAt = take(8 * (receivers + 1));
  gridAheadAt = take(8 * (receivers + 1));
  gridOnSurfaceAt = take(4 * receivers);
  makeMetRoom(4 * receivers);
}

export function makeCellRoom(cells: i32): void {
  if (cells < cellRoom) return;
  cellRoom = 2 * cells + 1;
  gridStartAt = take(4 * (cellRoom + 1));
}

function makeMetRoom(room: i32): void {
  const before = gridMetAt;
  metRoom = room;
  gridMetAt = take(8 * room);
  memory.copy(gridMetAt, before, 8 * metCount);
}

function along(at: usize, x: f64, y: f64, z: f64): f64 {
  return load<f64>(at) * x + load<f64>(at, 8) * y + load<f64>(at, 16) * z;
}

function firstCell(low: f64, gridMin: f64, perM: f64, cells: f64): f64 {
  const at = (low - gridMin) * perM;
  return at > cells ? cells : min(cells - 1, max(0, floor(at)));
}

function lastCell(high: f64, gridMin: f64, perM: f64, cells: f64): f64 {
  return min(cells - 1, floor((high - gridMin) * perM));
}

/** Keeps a receiver in front of whose place the blade's box lies if the blade itself does. */
function meet(k: i32, i: f64, j: f64, blade: i32, mask: i32, surface: i32): void {
  const texel = gridTexelAt + ((<usize>mask) << 12);
  const state = load<u8>(texel + (((<usize>(<i32>j)) << 6) + <usize>(<i32>i)));
  if (state == 0 || load<i32>(gridOnSurfaceAt + ((<usize>k) << 2)) == surface) return;
  if (state == border && !isInside(gridRowStartAt, gridEdgeAt, mask, i, j)) return;
  keep(k, blade);
}

function keep(k: i32, thing: i32): void {
  const at = gridMetAt + ((<usize>metCount) << 3);
  store<i32>(at, k);
  store<i32>(at, thing, 4);
  metCount++;
}

/** In shares of a place's size: some ten times what rounding can take away, single precision. */
const nearMargin: f64 = 1e-6;

/** Where the receivers lie on the axes: middle and half of the stretch across, in single precision and no less than it is. */
let middleRight: f32 = 0;
let halfRight: f32 = 0;
let middleTop: f32 = 0;
let halfTop: f32 = 0;
let leastAhead: f32 = 0;

let least: f64 = 0;
let most: f64 = 0;

function stretch(at: usize, receivers: i32): void {
  let low = v128.load64_splat(at);
  let high = low;
  const pairs = at + ((<usize>(receivers >> 1)) << 4);
  for (let pair = at; pair < pairs; pair += 16) {
    const places = v128.load(pair);
    low = f64x2.pmin(low, places);
    high = f64x2.pmax(high, places);
  }
  if ((receivers & 1) != 0) {
    const last = v128.load64_splat(pairs);
    low = f64x2.pmin(low, last);
    high = f64x2.pmax(high, last);
  }
  least = min(f64x2.extract_lane(low, 0), f64x2.extract_lane(low, 1));
  most = max(f64x2.extract_lane(high, 0), f64x2.extract_lane(high, 1));
}

function middleOf(): f32 {
  return <f32>((least + most) / 2);
}

function halfOf(): f32 {
  return <f32>((most - least) / 2 + nearMargin * (abs(least) + abs(most)));
}

function look(receivers: i32): void {
  stretch(gridAheadAt, receivers);
  leastAhead = <f32>(least - nearMargin * abs(least));
  stretch(gridRightAt, receivers);
  middleRight = middleOf();
  halfRight = halfOf();
  stretch(gridTopAt, receivers);
  middleTop = middleOf();
  halfTop = halfOf();
}

/** Lists the balls that lie across the beam where receivers do, and not behind them all; returns how many. */
function listNear(
  ballAt: usize,
  count: i32,
  rx: f64,
  ry: f64,
  rz: f64,
  tx: f64,
  ty: f64,
  tz: f64,
  ax: f64,
  ay: f64,
  az: f64,
): i32 {
  const lowest = f32x4.splat(leastAhead);
  const midRight = f32x4.splat(middleRight);
  const wide = f32x4.splat(halfRight);
  const midTop = f32x4.splat(middleTop);
  const high = f32x4.splat(halfTop);
  const r0 = f32x4.splat(<f32>rx);
  const r1 = f32x4.splat(<f32>ry);
  const r2 = f32x4.splat(<f32>rz);
  const t0 = f32x4.splat(<f32>tx);
  const t1 = f32x4.splat(<f32>ty);
  const t2 = f32x4.splat(<f32>tz);
  const a0 = f32x4.splat(<f32>ax);
  const a1 = f32x4.splat(<f32>ay);
  const a2 = f32x4.splat(<f32>az);
  let listed = 0;
  for (let first = 0, at = ballAt; first < count; first += 4, at += 64) {
    const x = v128.load(at);
    const y = v128.load(at, 16);
    const z = v128.load(at, 32);
    const radius = v128.load(at, 48);
    const right = f32x4.add(f32x4.add(f32x4.mul(x, r0), f32x4.mul(y, r1)), f32x4.mul(z, r2));
    const top = f32x4.add(f32x4.add(f32x4.mul(x, t0), f32x4.mul(y, t1)), f32x4.mul(z, t2));
    const ahead = f32x4.add(f32x4.add(f32x4.mul(x, a0), f32x4.mul(y, a1)), f32x4.mul(z, a2));
    const isAcross = v128.and(
      f32x4.le(f32x4.abs(f32x4.sub(right, midRight)), f32x4.add(radius, wide)),
      f32x4.le(f32x4.abs(f32x4.sub(top, midTop)), f32x4.add(radius, high)),
    );
    const isNear = v128.and(isAcross, f32x4.ge(f32x4.add(ahead, radius), lowest));
    for (let near = i32x4.bitmask(isNear); near != 0; near &= near - 1) {
      store<i32>(gridNearAt + ((<usize>listed) << 2), first + ctz(near));
      listed++;
    }
  }
  return listed;
}

/** The frame of the beam, then the grid; returns how many crossings there are: those of the blades, then those of the stems. */
export function coverGrid(
  rx: f64,
  ry: f64,
  rz: f64,
  tx: f64,
  ty: f64,
  tz: f64,
  ax: f64,
  ay: f64,
  az: f64,
  minRight: f64,
  minTop: f64,
  perM: f64,
  columns: i32,
  rows: i32,
  receivers: i32,
): i32 {
  metCount = 0;
  look(receivers);
  coverBlades(rx, ry, rz, tx, ty, tz, ax, ay, az, minRight, minTop, perM, columns, rows, receivers);
  coverStems(rx, ry, rz, tx, ty, tz, ax, ay, az, minRight, minTop, perM, columns, rows, receivers);
  return metCount;
}

function coverBlades(
  rx: f64,
  ry: f64,
  rz: f64,
  tx: f64,
  ty: f64,
  tz: f64,
  ax: f64,
  ay: f64,
  az: f64,
  minRight: f64,
  minTop: f64,
  perM: f64,
  columns: i32,
  rows: i32,
  receivers: i32,
): void {
  const zero = f64x2.splat(0);
  const sides = f64x2.splat(side);
  const near = listNear(gridBladeBallAt, bladeCount, rx, ry, rz, tx, ty, tz, ax, ay, az);
  for (let next = 0; next < near; next++) {
    const b = load<i32>(gridNearAt + ((<usize>next) << 2));
    const at = gridBladeAt + 104 * <usize>b;
    if (abs(along(at + 72, ax, ay, az)) <= load<f64>(at, 96)) continue;
    const r0 = along(at, rx, ry, rz);
    const ri = along(at + 24, rx, ry, rz);
    const rj = along(at + 48, rx, ry, rz);
    const leftmost = firstCell(r0 + min<f64>(0, ri) + min<f64>(0, rj), minRight, perM, columns);
    const rightmost = lastCell(r0 + max<f64>(0, ri) + max<f64>(0, rj), minRight, perM, columns);
    if (rightmost < leftmost) continue;
    const t0 = along(at, tx, ty, tz);
    const ti = along(at + 24, tx, ty, tz);
    const tj = along(at + 48, tx, ty, tz);
    const lowest = firstCell(t0 + min<f64>(0, ti) + min<f64>(0, tj), minTop, perM, rows);
    const highest = lastCell(t0 + max<f64>(0, ti) + max<f64>(0, tj), minTop, perM, rows);
    if (highest < lowest) continue;
    if (metCount + receivers > metRoom) makeMetRoom(max(2 * metRoom, metCount + receivers));
    const unit = side / (ri * tj - rj * ti);
    const iRight = f64x2.splat(tj * unit);
    const iTop = f64x2.splat(-rj * unit);
    const jRight = f64x2.splat(-ti * unit);
    const jTop = f64x2.splat(ri * unit);
    const a0 = f64x2.splat(along(at, ax, ay, az));
    const aheadI = f64x2.splat(along(at + 24, ax, ay, az) / side);
    const aheadJ = f64x2.splat(along(at + 48, ax, ay, az) / side);
    const fromRight = f64x2.splat(r0);
    const fromTop = f64x2.splat(t0);
    const mask = load<i32>(gridBladeMaskAt + ((<usize>b) << 2));
    const surface = load<i32>(gridBladeSurfaceAt + ((<usize>b) << 2));
    const left = <i32>leftmost;
    const right = <i32>rightmost;
    const high = <i32>highest;
    for (let row = <i32>lowest; row <= high; row++) {
      const start = gridStartAt + ((<usize>(row * columns)) << 2);
      const end = load<i32>(start + ((<usize>(right + 1)) << 2));
      for (let k = load<i32>(start + ((<usize>left) << 2)); k < end; k += 2) {
        const place = (<usize>k) << 3;
        const r = f64x2.sub(v128.load(gridRightAt + place), fromRight);
        const t = f64x2.sub(v128.load(gridTopAt + place), fromTop);
        const i = f64x2.add(f64x2.mul(r, iRight), f64x2.mul(t, iTop));
        const j = f64x2.add(f64x2.mul(r, jRight), f64x2.mul(t, jTop));
        const inI = v128.and(f64x2.ge(i, zero), f64x2.lt(i, sides));
        const inJ = v128.and(f64x2.ge(j, zero), f64x2.lt(j, sides));
        const inBox = v128.and(inI, inJ);
        if (!v128.any_true(inBox)) continue;
        const depth = f64x2.add(f64x2.add(a0, f64x2.mul(i, aheadI)), f64x2.mul(j, aheadJ));
        const isMet = v128.and(inBox, f64x2.gt(depth, v128.load(gridAheadAt + place)));
        const lanes = i64x2.bitmask(isMet);
        if ((lanes & 1) != 0) meet(k, f64x2.extract_lane(i, 0), f64x2.extract_lane(j, 0), b, mask, surface);
        if ((lanes & 2) != 0 && k + 1 < end)
          meet(k + 1, f64x2.extract_lane(i, 1), f64x2.extract_lane(j, 1), b, mask, surface);
      }
    }
  }
}

/** A stem seen end-on is told with ~number for every receiver in its cells: whether it is met is for the caller to find. */
function coverStems(
  rx: f64,
  ry: f64,
  rz: f64,
  tx: f64,
  ty: f64,
  tz: f64,
  ax: f64,
  ay: f64,
  az: f64,
  minRight: f64,
  minTop: f64,
  perM: f64,
  columns: i32,
  rows: i32,
  receivers: i32,
): void {
  const zero = f64x2.splat(0);
  const one = f64x2.splat(1);
  const two = f64x2.splat(2);
  const near = listNear(gridStemBallAt, stemCount, rx, ry, rz, tx, ty, tz, ax, ay, az);
  for (let next = 0; next < near; next++) {
    const n = load<i32>(gridNearAt + ((<usize>next) << 2));
    const at = gridStemAt + 64 * <usize>n;
    const right = along(at, rx, ry, rz);
    const dRight = along(at + 24, rx, ry, rz) - right;
    const r0 = load<f64>(at, 48);
    const r1 = load<f64>(at, 56);
    const toRight = right + dRight;
    const leftmost = firstCell(min(right - r0, toRight - r1), minRight, perM, columns);
    const rightmost = lastCell(max(right + r0, toRight + r1), minRight, perM, columns);
    if (rightmost < leftmost) continue;
    const top = along(at, tx, ty, tz);
    const dTop = along(at + 24, tx, ty, tz) - top;
    const toTop = top + dTop;
    const lowest = firstCell(min(top - r0, toTop - r1), minTop, perM, rows);
    const highest = lastCell(max(top + r0, toTop + r1), minTop, perM, rows);
    if (highest < lowest) continue;
    if (metCount + receivers > metRoom) makeMetRoom(max(2 * metRoom, metCount + receivers));
    const ahead = along(at, ax, ay, az);
    const dAhead = along(at + 24, ax, ay, az) - ahead;
    const farthest = max(ahead + r0, ahead + dAhead + r1);
    const dRadius = r1 - r0;
    const a = dRight * dRight + dTop * dTop - dRadius * dRadius;
    const isEndOn = a <= endOn * (dRight * dRight + dTop * dTop + dAhead * dAhead);
    const perA = f64x2.splat(a);
    const tilt = f64x2.splat(dAhead / sqrt(a * (a + dAhead * dAhead)));
    const squaredRadius = f64x2.splat(r0 * r0);
    const ofRadius = f64x2.splat(r0 * dRadius);
    const surface = load<i32>(gridStemSurfaceAt + ((<usize>n) << 2));
    for (let row = <i32>lowest; row <= <i32>highest; row++) {
      const start = gridStartAt + ((<usize>(row * columns)) << 2);
      const end = load<i32>(start + ((<usize>(<i32>rightmost + 1)) << 2));
      for (let k = load<i32>(start + ((<usize>(<i32>leftmost)) << 2)); k < end; k += 2) {
        const place = (<usize>k) << 3;
        const placeAhead = v128.load(gridAheadAt + place);
        let isMet = f64x2.lt(placeAhead, f64x2.splat(farthest));
        if (!isEndOn) {
          const r = f64x2.sub(v128.load(gridRightAt + place), f64x2.splat(right));
          const t = f64x2.sub(v128.load(gridTopAt + place), f64x2.splat(top));
          const across = f64x2.add(f64x2.mul(r, f64x2.splat(dRight)), f64x2.mul(t, f64x2.splat(dTop)));
          const b = f64x2.add(across, ofRadius);
          const c = f64x2.sub(f64x2.sub(squaredRadius, f64x2.mul(r, r)), f64x2.mul(t, t));
          const squared = f64x2.add(c, f64x2.div(f64x2.mul(b, b), perA));
          isMet = v128.and(isMet, f64x2.gt(squared, zero));
          if (!v128.any_true(isMet)) continue;
          const peak = f64x2.add(f64x2.div(b, perA), f64x2.mul(tilt, f64x2.sqrt(squared)));
          const s = f64x2.min(one, f64x2.max(zero, peak));
          const q = f64x2.add(c, f64x2.mul(s, f64x2.sub(f64x2.mul(two, b), f64x2.mul(perA, s))));
          const centre = f64x2.add(f64x2.splat(ahead), f64x2.mul(s, f64x2.splat(dAhead)));
          const isBehind = f64x2.gt(f64x2.add(centre, f64x2.sqrt(q)), placeAhead);
          isMet = v128.and(isMet, v128.and(f64x2.gt(q, zero), isBehind));
        }
        const lanes = i64x2.bitmask(isMet);
        const thing = isEndOn ? ~(bladeCount + n) : bladeCount + n;
        if ((lanes & 1) != 0 && load<i32>(gridOnSurfaceAt + ((<usize>k) << 2)) != surface) keep(k, thing);
        if ((lanes & 2) != 0 && k + 1 < end && load<i32>(gridOnSurfaceAt + ((<usize>k) << 2), 4) != surface)
          keep(k + 1, thing);
      }
    }
  }
}
