/**
 * Light in endless slabs of small leaves with all orders of scattering, by adding and doubling: an independent solver to hold
 * the model against. Streams at Gauss points of the cosine, thin layers by single scattering, then doubled (van de
 * Hulst 1980, Multiple light scattering, chapter 4; for leaves Ross 1981, The radiation regime and architecture of plant
 * stands). Leaves throw back and pass on light evenly to all sides (Lambert); the ground is black.
 */

/** Rows of columns: [to][from]. */
type Matrix = readonly (readonly number[])[];

export interface Slab {
  readonly pose: 'level' | 'spherical';
  readonly leafAreaIndex: number;
  readonly reflectance: number;
  readonly transmittance: number;
  /** Cosine of the zenith angle of a beam; null for an even sky. */
  readonly beamCosine: number | null;
}

const identity = (n: number): Matrix =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
const combine = (a: Matrix, b: Matrix, times: number): Matrix =>
  a.map((row, i) => row.map((value, j) => value + times * (b[i]?.[j] ?? Number.NaN)));
const product = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) =>
    row.map((_, j) => row.reduce((sum, value, k) => sum + value * (b[k]?.[j] ?? Number.NaN), 0)),
  );

/** 1 + m + m^2 + ...: what goes to and fro between two layers; m throws back well under half. */
function allOrders(m: Matrix): Matrix {
  let [sum, power] = [identity(m.length), identity(m.length)];
  for (let order = 0; order < 30; order++) {
    power = product(power, m);
    sum = combine(sum, power, 1);
  }
  return sum;
}

/** Gauss-Legendre points and weights on 0 to 1, by Newton's method on the polynomial. */
export function gaussPoints(n: number): readonly { x: number; weight: number }[] {
  return Array.from({ length: n }, (_, i) => {
    let z = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 60; step++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= n; k++) [p, before] = [((2 * k - 1) * z * p - (k - 1) * before) / k, p];
      slope = (n * (z * p - before)) / (z * z - 1);
      z -= p / slope;
    }
    return { x: (1 + z) / 2, weight: 1 / ((1 - z * z) * slope * slope) };
  });
}

const streams = gaussPoints(12);
const azimuths = 48;

/** Projection of leaf area on the plane across a direction. */
const projection = ({ pose }: Slab, cosine: number): number => (pose === 'level' ? cosine : 0.5);

/**
 * Scattering per leaf area from cosine `from` to `to`, mean over azimuth, up to a factor: level leaves by what side they
 * show; spherical ones in closed form (Ross 1981).
 */
function phase(
  { pose, reflectance, transmittance }: Slab,
  from: number,
  to: number,
  isAhead: boolean,
): number {
  if (pose === 'level') return (isAhead ? transmittance : reflectance) * from;
  const sines = Math.sqrt((1 - from * from) * (1 - to * to));
  let sum = 0;
  for (let k = 0; k < azimuths; k++) {
    const turn = Math.cos((2 * Math.PI * (k + 0.5)) / azimuths);
    const cosBeta = Math.max(-1, Math.min(1, (isAhead ? 1 : -1) * from * to + sines * turn));
    const beta = Math.acos(cosBeta);
    const albedo = reflectance + transmittance;
    sum += (albedo / (3 * Math.PI)) * (Math.sin(beta) - beta * cosBeta) + (transmittance / 3) * cosBeta;
  }
  return sum / azimuths;
}

interface Layer {
  readonly back: Matrix;
  readonly through: Matrix;
}

/** Cosines of the streams; the beam, when there is one, is a last one that nothing is scattered into. */
const cosinesOf = ({ beamCosine }: Slab): number[] => [
  ...streams.map(({ x }) => x),
  ...(beamCosine === null ? [] : [beamCosine]),
];

/** A layer thin enough to be met once. */
function thinLayer(slab: Slab, leafAreaIndex: number): Layer {
  const cosines = cosinesOf(slab);
  const columns = cosines.map((from) => {
    const met = (projection(slab, from) / from) * leafAreaIndex;
    const shares = [true, false].map((isAhead) =>
      cosines.map((to, i) => phase(slab, from, to, isAhead) * to * (streams[i]?.weight ?? 0)),
    );
    const all = shares.flat().reduce((sum, value) => sum + value, 0);
    const thrownOn = met * (slab.reflectance + slab.transmittance);
    return { met, ahead: shares[0] ?? [], back: shares[1] ?? [], scale: all > 0 ? thrownOn / all : 0 };
  });
  const n = cosines.length;
  const matrix = (side: 'ahead' | 'back', straight: boolean): Matrix =>
    Array.from({ length: n }, (_, i) =>
      columns.map(
        (column, j) => column.scale * (column[side][i] ?? 0) + (straight && i === j ? 1 - column.met : 0),
      ),
    );
  return { back: matrix('back', false), through: matrix('ahead', true) };
}

const doublings = 18;

function slabLayer(slab: Slab): Layer {
  let layer = thinLayer(slab, slab.leafAreaIndex / 2 ** doublings);
  for (let k = 0; k < doublings; k++) {
    const { back, through } = layer;
    const between = allOrders(product(back, back));
    const down = product(through, between);
    layer = {
      through: product(down, through),
      back: combine(back, product(product(down, back), through), 1),
    };
  }
  return layer;
}

function entering({ beamCosine }: Slab): number[] {
  return beamCosine === null ? streams.map(({ x, weight }) => 2 * x * weight) : [...streams.map(() => 0), 1];
}

const applied = (m: Matrix, v: readonly number[]): number[] =>
  m.map((row) => row.reduce((sum, value, j) => sum + value * (v[j] ?? Number.NaN), 0));
const total = (v: readonly number[]): number => v.reduce((sum, value) => sum + value, 0);

export interface Solved {
  /** Light on a level sensor under the slab, on black ground, as share of what enters. */
  readonly under: number;
  /** The same where as many leaves again stand below it. */
  readonly within: number;
  /** Share of what enters that leaves by the top. */
  readonly thrownBack: number;
}

export function solve(slab: Slab): Solved {
  const { back, through } = slabLayer(slab);
  const enters = entering(slab);
  const under = applied(through, enters);
  return {
    under: total(under),
    within: total(applied(allOrders(product(back, back)), under)),
    thrownBack: total(applied(back, enters)),
  };
}
