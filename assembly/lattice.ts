// The twin of `src/light/trace/lattice`: the same arithmetic in the same order, in double precision, so that the hits are
// the same to the last bit. Two lanes at a time: x and y on the plane, i and j on the mask. AssemblyScript, not TypeScript.

import { take } from './memory';
import { isInside } from './outline';

const side: f64 = 64;
const border: u8 = 2;
const endOn: f64 = 1e-6;
const leastSlant: f64 = 1e-3;
const stripMargin: f64 = 1e-6;
/** In columns: far above the rounding of where the box lies, single precision. */
const nearMargin: f64 = 1e-3;

let bladeCount: i32 = 0;
let stemCount: i32 = 0;
/** Ten numbers a blade, eight a stem; see `scene.ts` of the twin. Behind those of the scene come those that are marked by alone. */
export let bladeAt: usize = 0;
export let bladeMaskAt: usize = 0;
export let stemAt: usize = 0;
/** Balls round blades and stems, by fours in single precision: x of four, y, z, radius. See `balls.ts` of the twin. */
export let bladeBallAt: usize = 0;
export let stemBallAt: usize = 0;
/** Numbers of the things that are near the rays followed, where not all are. */
let nearAt: usize = 0;
export let texelAt: usize = 0;
export let rowStartAt: usize = 0;
export let edgeAt: usize = 0;
/** Per thing: kind and fate. */
export let kindAt: usize = 0;
export let fateAt: usize = 0;
/** Stems seen end-on by the last cast, which are left to the caller. */
export let endOnAt: usize = 0;
export let endOnCount: i32 = 0;

/** Hits as they are found. */
export let hitCount: i32 = 0;
export let rayAt: usize = 0;
export let aheadAt: usize = 0;
export let thingAt: usize = 0;
/** Hits sorted by ray, from the light down. */
export let startAt: usize = 0;
export let sortedAheadAt: usize = 0;
export let sortedThingAt: usize = 0;
/** What was collected last: hits, and the ray of each run of them. */
export let outAt: usize = 0;
export let outRayAt: usize = 0;
export let runCount: i32 = 0;
/** First and last column followed in each row. See `sweep.ts` of the twin. */
export let spanLeftAt: usize = 0;
export let spanRightAt: usize = 0;
/** Per ray 1 + the number of its hits, 0 if it is not followed; asked only where not all are. 4 bytes. */
export let followedAt: usize = 0;
let isSparse: bool = false;

let endAt: usize = 0;
let rayRoom: i32 = 0;
let rowRoom: i32 = 0;
let followedRoom: i32 = 0;
let hitRoom: i32 = 0;

/** @param extraBlades and stems behind those of the scene */
export function setUp(
  blades: i32,
  stems: i32,
  extraBlades: i32,
  extraStems: i32,
  things: i32,
  texels: i32,
  rowStarts: i32,
  edges: i32,
): void {
  bladeCount = blades;
  stemCount = stems;
  bladeAt = take(80 * (blades + extraBlades));
  bladeMaskAt = take(4 * (blades + extraBlades));
  stemAt = take(64 * (stems + extraStems));
  bladeBallAt = take(64 * ((blades + 3) >> 2));
  stemBallAt = take(64 * ((stems + 3) >> 2));
  nearAt = take(4 * max(blades, stems));
  texelAt = take(texels);
  rowStartAt = take(4 * rowStarts);
  edgeAt = take(32 * edges);
  kindAt = take(4 * things);
  fateAt = take(things);
  endOnAt = take(4 * (stems + extraStems));
  makeRoom(1 << 14);
}

function makeRoom(hits: i32): void {
  const ray = rayAt;
  const ahead = aheadAt;
  const thing = thingAt;
  hitRoom = hits;
  rayAt = take(4 * hits);
  aheadAt = take(8 * hits);
  thingAt = take(4 * hits);
  sortedAheadAt = take(8 * hits);
  sortedThingAt = take(4 * hits);
  outAt = take(4 * hits);
  memory.copy(rayAt, ray, 4 * hitCount);
  memory.copy(aheadAt, ahead, 8 * hitCount);
  memory.copy(thingAt, thing, 4 * hitCount);
}

export function reserve(more: i32): void {
  if (hitCount + more > hitRoom) makeRoom(max(2 * hitRoom, hitCount + more));
}

/** After hits were written from outside. */
export function setHitCount(count: i32): void {
  hitCount = count;
}

/** How many entries the start array needs: one a ray and one more. */
export function makeRayRoom(rays: i32): void {
  if (rays < rayRoom) return;
  rayRoom = 2 * rays + 1;
  startAt = take(4 * (rayRoom + 1));
  endAt = take(4 * (rayRoom + 1));
  outRayAt = take(4 * (rayRoom + 1));
}

/** How many rows the next sweep has, and how many rays of which each is followed or not. */
export function makeSweepRoom(rows: i32, rays: i32): void {
  if (rays > followedRoom) {
    followedRoom = 2 * rays;
    followedAt = take(4 * followedRoom);
  }
  if (rows > rowRoom) {
    rowRoom = 2 * rows;
    spanLeftAt = take(4 * rowRoom);
    spanRightAt = take(4 * rowRoom);
  }
}

/** The axes, the place of ray (0, 0) on the first two and the spacing, metres. */
let rightX: f64 = 0;
let rightY: f64 = 0;
let rightZ: f64 = 0;
let topX: f64 = 0;
let topY: f64 = 0;
let topZ: f64 = 0;
let aheadX: f64 = 0;
let aheadY: f64 = 0;
let aheadZ: f64 = 0;
let shiftRight: f64 = 0;
let shiftTop: f64 = 0;
let spacing: f64 = 0;

export function setPlane(
  rx: f64,
  ry: f64,
  rz: f64,
  tx: f64,
  ty: f64,
  tz: f64,
  ax: f64,
  ay: f64,
  az: f64,
  right: f64,
  top: f64,
  spacingM: f64,
): void {
  rightX = rx;
  rightY = ry;
  rightZ = rz;
  topX = tx;
  topY = ty;
  topZ = tz;
  aheadX = ax;
  aheadY = ay;
  aheadZ = az;
  shiftRight = right;
  shiftTop = top;
  spacing = spacingM;
}

/** The part of the lattice that is looked at. */
export let firstColumn: i32 = 0;
export let firstRow: i32 = 0;
export let columns: i32 = 0;
export let rows: i32 = 0;
/** The part of that which holds all rays that are followed: first and last column, first and last row. */
let boxLeft: i32 = 0;
let boxRight: i32 = 0;
let boxLow: i32 = 0;
let boxHigh: i32 = 0;

export function setWindow(left: i32, low: i32, columnCount: i32, rowCount: i32): void {
  firstColumn = left;
  firstRow = low;
  columns = columnCount;
  rows = rowCount;
  setBox(left, left + columnCount - 1, low, low + rowCount - 1);
}

export function setBox(left: i32, right: i32, low: i32, high: i32): void {
  boxLeft = left;
  boxRight = right;
  boxLow = low;
  boxHigh = high;
}

/** Before hits are looked for. */
export function begin(onlySome: bool): void {
  isSparse = onlySome;
  hitCount = 0;
  endOnCount = 0;
}

/** Finds the hits of all things on the rays that are followed. */
export function cast(onlySome: bool): void {
  begin(onlySome);
  if (!onlySome) {
    castBlades(0, bladeCount);
    castStems(0, stemCount);
    return;
  }
  // Where few rays are followed most things are far from all of them.
  castBlades(0, listNear(bladeBallAt, bladeCount));
  castStems(0, listNear(stemBallAt, stemCount));
}

/** Lists the balls that may reach some ray of the box; returns how many. */
function listNear(ballAt: usize, count: i32): i32 {
  const middleRight = f32x4.splat(<f32>((<f64>(boxLeft + boxRight) / 2) * spacing + shiftRight));
  const middleTop = f32x4.splat(<f32>((<f64>(boxLow + boxHigh) / 2) * spacing + shiftTop));
  const halfRight = f32x4.splat(<f32>((<f64>(boxRight - boxLeft) / 2 + nearMargin) * spacing));
  const halfTop = f32x4.splat(<f32>((<f64>(boxHigh - boxLow) / 2 + nearMargin) * spacing));
  const rx = f32x4.splat(<f32>rightX);
  const ry = f32x4.splat(<f32>rightY);
  const rz = f32x4.splat(<f32>rightZ);
  const tx = f32x4.splat(<f32>topX);
  const ty = f32x4.splat(<f32>topY);
  const tz = f32x4.splat(<f32>topZ);
  let listed = 0;
  for (let first = 0, at = ballAt; first < count; first += 4, at += 64) {
    const x = v128.load(at);
    const y = v128.load(at, 16);
    const z = v128.load(at, 32);
    const radius = v128.load(at, 48);
    const right = f32x4.add(f32x4.add(f32x4.mul(x, rx), f32x4.mul(y, ry)), f32x4.mul(z, rz));
    const awayRight = f32x4.abs(f32x4.sub(right, middleRight));
    const top = f32x4.add(f32x4.add(f32x4.mul(x, tx), f32x4.mul(y, ty)), f32x4.mul(z, tz));
    const awayTop = f32x4.abs(f32x4.sub(top, middleTop));
    const isNear = v128.and(
      f32x4.le(awayRight, f32x4.add(radius, halfRight)),
      f32x4.le(awayTop, f32x4.add(radius, halfTop)),
    );
    for (let near = i32x4.bitmask(isNear); near != 0; near &= near - 1) {
      store<i32>(nearAt + ((<usize>listed) << 2), first + ctz(near));
      listed++;
    }
  }
  return listed;
}

/** Whether some row has a ray that is followed between two columns. */
function hasFollowed(left: i32, right: i32, low: i32, high: i32): bool {
  for (let y = low; y <= high; y++) {
    const at = (<usize>(y - firstRow)) << 2;
    if (load<i32>(spanLeftAt + at) <= right && load<i32>(spanRightAt + at) >= left) return true;
  }
  return false;
}

function add(ray: i32, ahead: f64, thing: i32): void {
  store<i32>(rayAt + ((<usize>hitCount) << 2), ray);
  store<f64>(aheadAt + ((<usize>hitCount) << 3), ahead);
  store<i32>(thingAt + ((<usize>hitCount) << 2), thing);
  hitCount++;
}

function numberOf(next: i32): i32 {
  return isSparse ? load<i32>(nearAt + ((<usize>next) << 2)) : next;
}

/** By what number the hits of a ray go; below 0 if it is not followed. */
function followedAs(ray: i32): i32 {
  return isSparse ? load<i32>(followedAt + ((<usize>ray) << 2)) - 1 : ray;
}

function sum3(at: usize, x: v128, y: v128, z: v128): v128 {
  const first = f64x2.add(f64x2.mul(v128.load64_splat(at), x), f64x2.mul(v128.load64_splat(at, 8), y));
  return f64x2.add(first, f64x2.mul(v128.load64_splat(at, 16), z));
}

/** Blades `first` to `end` (excluded); of those near where not all rays are followed. Lane 0 is the axis to the right, lane 1 the one upwards. */
export function castBlades(first: i32, end: i32): void {
  const perM = 1 / spacing;
  const axisX = f64x2(rightX * perM, topX * perM);
  const axisY = f64x2(rightY * perM, topY * perM);
  const axisZ = f64x2(rightZ * perM, topZ * perM);
  const shift = f64x2(shiftRight * perM, shiftTop * perM);
  const zero = f64x2.splat(0);
  const start = f64x2(boxLeft, boxLow);
  const last = f64x2(boxRight, boxHigh);
  for (let next = first; next < end; next++) {
    const b = numberOf(next);
    const at = bladeAt + <usize>b * 80;
    const corner = f64x2.sub(sum3(at, axisX, axisY, axisZ), shift);
    const sideI = sum3(at + 24, axisX, axisY, axisZ);
    const sideJ = sum3(at + 48, axisX, axisY, axisZ);
    const least = f64x2.add(f64x2.add(corner, f64x2.min(zero, sideI)), f64x2.min(zero, sideJ));
    const most = f64x2.add(f64x2.add(corner, f64x2.max(zero, sideI)), f64x2.max(zero, sideJ));
    const from = f64x2.max(start, f64x2.ceil(least));
    const to = f64x2.min(last, f64x2.floor(most));
    if (v128.any_true(f64x2.lt(to, from))) continue;
    const left = <i32>f64x2.extract_lane(from, 0);
    const low = <i32>f64x2.extract_lane(from, 1);
    const right = <i32>f64x2.extract_lane(to, 0);
    const high = <i32>f64x2.extract_lane(to, 1);
    if (isSparse && !hasFollowed(left, right, low, high)) continue;
    const xi = f64x2.extract_lane(sideI, 0);
    const yi = f64x2.extract_lane(sideI, 1);
    const xj = f64x2.extract_lane(sideJ, 0);
    const yj = f64x2.extract_lane(sideJ, 1);
    const seen = xi * yj - yi * xj;
    if (abs(seen) <= load<f64>(at, 72) * perM * perM) continue;
    const unit = side / seen;
    const perX = f64x2(yj * unit, -yi * unit);
    const perY = f64x2(-xj * unit, xi * unit);
    const a0 = load<f64>(at) * aheadX + load<f64>(at, 8) * aheadY + load<f64>(at, 16) * aheadZ;
    const ai = (load<f64>(at, 24) * aheadX + load<f64>(at, 32) * aheadY + load<f64>(at, 40) * aheadZ) / side;
    const aj = (load<f64>(at, 48) * aheadX + load<f64>(at, 56) * aheadY + load<f64>(at, 64) * aheadZ) / side;
    fill(b, corner, perX, perY, a0, ai, aj, left, right, low, high);
  }
}

function fill(
  b: i32,
  corner: v128,
  perX: v128,
  perY: v128,
  a0: f64,
  ai: f64,
  aj: f64,
  left: i32,
  right: i32,
  low: i32,
  high: i32,
): void {
  const x0 = f64x2.extract_lane(corner, 0);
  const y0 = f64x2.extract_lane(corner, 1);
  const zero = f64x2.splat(0);
  const sides = f64x2.splat(side);
  const rays = (right - left + 1) * (high - low + 1);
  if (hitCount + rays > hitRoom) reserve(rays);
  const mask = load<i32>(bladeMaskAt + ((<usize>b) << 2));
  const texel = texelAt + ((<usize>mask) << 12);
  for (let y = low; y <= high; y++) {
    const row = f64x2.mul(f64x2.splat(<f64>y - y0), perY);
    const spanAt = (<usize>(y - firstRow)) << 2;
    const ray = (y - firstRow) * columns - firstColumn;
    const end = min(right, load<i32>(spanRightAt + spanAt));
    for (let x = max(left, load<i32>(spanLeftAt + spanAt)); x <= end; x++) {
      const followed = followedAs(ray + x);
      if (followed < 0) continue;
      const ij = f64x2.add(f64x2.mul(f64x2.splat(<f64>x - x0), perX), row);
      const isIn = v128.and(f64x2.ge(ij, zero), f64x2.lt(ij, sides));
      if (!i64x2.all_true(isIn)) continue;
      const whole = i32x4.trunc_sat_f64x2_s_zero(ij);
      const at = (i32x4.extract_lane(whole, 1) << 6) + i32x4.extract_lane(whole, 0);
      const state = load<u8>(texel + <usize>at);
      if (state == 0) continue;
      const i = f64x2.extract_lane(ij, 0);
      const j = f64x2.extract_lane(ij, 1);
      if (state == border && !isInside(rowStartAt, edgeAt, mask, i, j)) continue;
      add(followed, a0 + i * ai + j * aj, b);
    }
  }
}

/** Stems, likewise. */
export function castStems(first: i32, endStem: i32): void {
  const axisX = f64x2(rightX, topX);
  const axisY = f64x2(rightY, topY);
  const axisZ = f64x2(rightZ, topZ);
  const shift = f64x2(shiftRight, shiftTop);
  const perM = f64x2.splat(1 / spacing);
  const start = f64x2(boxLeft, boxLow);
  const last = f64x2(boxRight, boxHigh);
  for (let next = first; next < endStem; next++) {
    const n = numberOf(next);
    const at = stemAt + <usize>n * 64;
    const base = f64x2.sub(sum3(at, axisX, axisY, axisZ), shift);
    const way = sum3(at + 24, axisX, axisY, axisZ);
    const r0 = v128.load64_splat(at, 48);
    const r1 = v128.load64_splat(at, 56);
    const tip = f64x2.add(base, way);
    const least = f64x2.mul(f64x2.min(f64x2.sub(base, r0), f64x2.sub(tip, r1)), perM);
    const most = f64x2.mul(f64x2.max(f64x2.add(base, r0), f64x2.add(tip, r1)), perM);
    const from = f64x2.max(start, f64x2.ceil(least));
    const to = f64x2.min(last, f64x2.floor(most));
    if (v128.any_true(f64x2.lt(to, from))) continue;
    const left = <i32>f64x2.extract_lane(from, 0);
    const right = <i32>f64x2.extract_lane(to, 0);
    const low = <i32>f64x2.extract_lane(from, 1);
    const high = <i32>f64x2.extract_lane(to, 1);
    if (isSparse && !hasFollowed(left, right, low, high)) continue;
    const dRight = f64x2.extract_lane(way, 0);
    const dTop = f64x2.extract_lane(way, 1);
    const dAhead = load<f64>(at, 24) * aheadX + load<f64>(at, 32) * aheadY + load<f64>(at, 40) * aheadZ;
    const radius = load<f64>(at, 48);
    const dRadius = load<f64>(at, 56) - radius;
    const a = dRight * dRight + dTop * dTop - dRadius * dRadius;
    if (a <= endOn * (dRight * dRight + dTop * dTop + dAhead * dAhead)) {
      store<i32>(endOnAt + ((<usize>endOnCount) << 2), n);
      endOnCount++;
      continue;
    }
    const tilt = dAhead / sqrt(a * (a + dAhead * dAhead));
    const ahead0 = load<f64>(at) * aheadX + load<f64>(at, 8) * aheadY + load<f64>(at, 16) * aheadZ;
    const right0 = f64x2.extract_lane(base, 0);
    const top0 = f64x2.extract_lane(base, 1);
    const rays = (right - left + 1) * (high - low + 1);
    if (hitCount + rays > hitRoom) reserve(rays);
    const length = sqrt(dRight * dRight + dTop * dTop);
    const isAcross = abs(dTop) > leastSlant * length;
    const wide = max(radius, radius + dRadius);
    const halfX = isAcross ? (wide * length) / abs(dTop) / spacing + stripMargin : f64.MAX_VALUE;
    const slopeX = isAcross ? dRight / dTop : 0;
    const midX = (right0 - top0 * slopeX) / spacing;
    for (let y = low; y <= high; y++) {
      const top = <f64>y * spacing - top0;
      const mid = midX + <f64>y * slopeX;
      const fromX = <i32>max<f64>(left, ceil(mid - halfX));
      const toX = <i32>min<f64>(right, floor(mid + halfX));
      const spanAt = (<usize>(y - firstRow)) << 2;
      const ray = (y - firstRow) * columns - firstColumn;
      const end = min(toX, load<i32>(spanRightAt + spanAt));
      for (let x = max(fromX, load<i32>(spanLeftAt + spanAt)); x <= end; x++) {
        const followed = followedAs(ray + x);
        if (followed < 0) continue;
        const across = <f64>x * spacing - right0;
        const half = across * dRight + top * dTop + radius * dRadius;
        const c = radius * radius - across * across - top * top;
        const squared = c + (half * half) / a;
        if (!(squared > 0)) continue;
        const s = min<f64>(1, max<f64>(0, half / a + tilt * sqrt(squared)));
        const q = c + s * (2 * half - a * s);
        if (q > 0) add(followed, ahead0 + (s * dAhead + sqrt(q)), bladeCount + n);
      }
    }
  }
}

export function sort(rays: i32): void {
  memory.fill(endAt, 0, 4 * rays);
  for (let k: usize = 0; k < <usize>hitCount; k++) {
    const at = endAt + ((<usize>load<i32>(rayAt + (k << 2))) << 2);
    store<i32>(at, load<i32>(at) + 1);
  }
  let sum = 0;
  for (let ray: usize = 0; ray < <usize>rays; ray++) {
    const here = load<i32>(endAt + (ray << 2));
    store<i32>(startAt + (ray << 2), sum);
    store<i32>(endAt + (ray << 2), sum);
    sum += here;
  }
  store<i32>(startAt + ((<usize>rays) << 2), sum);
  for (let k: usize = 0; k < <usize>hitCount; k++) place(k);
}

/** Puts a hit behind those of its ray that lie nearer the light. */
function place(k: usize): void {
  const ray = (<usize>load<i32>(rayAt + (k << 2))) << 2;
  const ahead = load<f64>(aheadAt + (k << 3));
  const from = <usize>load<i32>(startAt + ray);
  let to = <usize>load<i32>(endAt + ray);
  store<i32>(endAt + ray, <i32>to + 1);
  for (; to > from; to--) {
    const before = load<f64>(sortedAheadAt + ((to - 1) << 3));
    if (!(before < ahead)) break;
    store<f64>(sortedAheadAt + (to << 3), before);
    store<i32>(sortedThingAt + (to << 2), load<i32>(sortedThingAt + ((to - 1) << 2)));
  }
  store<f64>(sortedAheadAt + (to << 3), ahead);
  store<i32>(sortedThingAt + (to << 2), load<i32>(thingAt + (k << 2)));
}

/** Writes the rays from `outAt` on, each down to its last leaf; returns how many entries. See `collect.ts` of the twin. */
export function collect(rays: i32): i32 {
  let count = 0;
  runCount = 0;
  for (let ray = 0; ray < rays; ray++) {
    const startOf = startAt + ((<usize>ray) << 2);
    const end = <usize>load<i32>(startOf, 4);
    const first = count;
    let to = count;
    for (let k = <usize>load<i32>(startOf); k < end; k++) {
      const thing = <usize>load<i32>(sortedThingAt + (k << 2));
      const fate = load<u8>(fateAt + thing);
      if (fate == 2) break;
      const kind = load<i32>(kindAt + (thing << 2));
      store<i32>(outAt + ((<usize>to) << 2), to == first ? ~kind : kind);
      to++;
      if (fate != 0) count = to;
      if (fate > 2) break;
    }
    if (count == first) continue;
    store<i32>(outRayAt + ((<usize>runCount) << 2), ray);
    runCount++;
  }
  return count;
}
