/** Surfaces as flat numbers, for rays on a lattice. */
import type { Blade, Cloud, Mesh, Stem, Surface } from '../../../geometry/surface.ts';
import { cross, sub, type Vec3 } from '../../../geometry/vec.ts';
import { edgeOnSine } from '../../tracer.ts';
import { checkScene } from '../checkScene.ts';
import { type MaskBox, type MaskTable, makeMaskTable } from './masks.ts';

/** Numbers of a blade: mask corner, mask side i, mask side j (x, y, z each), least size of its seen area. */
export const bladeStride = 10;
/** Numbers of a stem: its first end (x, y, z), the vector from there to its other end, radius at either end. */
export const stemStride = 8;
/** Numbers of a triangle: its corners (x, y, z each), least size of its seen area. */
export const triangleStride = 10;

/**
 * What rays can hit, one number each: first all blades, then all stems, then all triangles, in the order of their
 * surfaces. Clouds are no hits; they dim what lies in or behind them.
 */
export interface LatticeScene {
  readonly bladeCount: number;
  readonly stemCount: number;
  readonly triangleCount: number;
  readonly blade: Float64Array;
  /** Mask of each blade. */
  readonly bladeMask: Int32Array;
  readonly masks: MaskTable;
  readonly stem: Float64Array;
  readonly triangle: Float64Array;
  readonly clouds: readonly Cloud[];
  /** Per thing: index of its surface, and its kind. */
  readonly surface: Int32Array;
  readonly kind: Int32Array;
  /** Per kind: group whose light it gathers, -1 for none; owner; share it lets through. */
  readonly kindGroup: Int32Array;
  readonly kindOwner: Int32Array;
  readonly kindShare: Float64Array;
  /** Box round everything that gathers light, and the one-sided area of each group, m2. */
  readonly low: Vec3;
  readonly high: Vec3;
  readonly groupAreaM2: Float64Array;
}

export interface LatticeSceneInput {
  readonly surfaces: readonly Surface[];
  /** Group of each surface, -1 for none. Blades gather light, and meshes, each triangle for itself. */
  readonly group: Int32Array;
  readonly groupCount: number;
}

const axes = [0, 1, 2] as const;

class Things {
  readonly surface: number[] = [];
  readonly kind: number[] = [];
  readonly kindGroup: number[] = [];
  readonly kindOwner: number[] = [];
  readonly kindShare: number[] = [];
  private readonly kinds = new Map<string, number>();
  private last = { group: -2, owner: -1, share: -1, kind: -1 };

  add({ owner, optics }: Surface, surface: number, group: number): void {
    this.surface.push(surface);
    this.kind.push(this.kindOf(Math.max(-1, group), owner, optics.transmittance));
  }

  private kindOf(group: number, owner: number, share: number): number {
    const { last } = this;
    if (last.group === group && last.owner === owner && last.share === share) return last.kind;
    const kind = this.searchKind(group, owner, share);
    this.last = { group, owner, share, kind };
    return kind;
  }

  private searchKind(group: number, owner: number, share: number): number {
    const key = `${group} ${owner} ${share}`;
    const known = this.kinds.get(key);
    if (known !== undefined) return known;
    const kind = this.kinds.size;
    this.kinds.set(key, kind);
    this.kindGroup.push(group);
    this.kindOwner.push(owner);
    this.kindShare.push(share);
    return kind;
  }
}

/** Writes a blade's numbers from `at` on; plain loops, since a large tree has many. */
function putBlade(into: Float64Array, at: number, blade: Blade, box: MaskBox): void {
  const { origin, along, across } = blade;
  for (const k of axes) {
    into[at + k] = origin[k] + along[k] * box[0] + across[k] * box[1];
    into[at + 3 + k] = along[k] * box[2];
    into[at + 6 + k] = across[k] * box[3];
  }
  into[at + 9] = edgeOnSine * box[2] * box[3] * spanM2(blade);
}

/** Area of the parallelogram that the frame of a blade spans. */
function spanM2({ along: a, across: b }: Blade): number {
  const x = a[1] * b[2] - a[2] * b[1];
  const y = a[2] * b[0] - a[0] * b[2];
  const z = a[0] * b[1] - a[1] * b[0];
  return Math.sqrt(x * x + y * y + z * z);
}

const cornersOf = ({ triangles }: Mesh, at: number): [Vec3, Vec3, Vec3] => {
  const corner = (k: number): Vec3 => [
    triangles[at + k] as number,
    triangles[at + k + 1] as number,
    triangles[at + k + 2] as number,
  ];
  return [corner(0), corner(3), corner(6)];
};

/** Gathers boxes and areas of what gathers light. */
class Extent {
  readonly low: [number, number, number] = [Infinity, Infinity, Infinity];
  readonly high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  readonly areaM2: Float64Array;

  constructor(groupCount: number) {
    this.areaM2 = new Float64Array(groupCount);
  }

  add(group: number, areaM2: number, [a, b, c]: readonly [Vec3, Vec3, Vec3]): void {
    this.areaM2[group] = (this.areaM2[group] as number) + areaM2;
    for (const k of axes) this.reach(k, Math.min(a[k], b[k], c[k]), Math.max(a[k], b[k], c[k]));
  }

  /** The numbers of a blade begin at `at`. */
  addBlade(group: number, areaM2: number, blade: Float64Array, at: number): void {
    this.areaM2[group] = (this.areaM2[group] as number) + areaM2;
    for (const k of axes) {
      const corner = blade[at + k] as number;
      const i = blade[at + 3 + k] as number;
      const j = blade[at + 6 + k] as number;
      this.reach(k, corner + Math.min(0, i) + Math.min(0, j), corner + Math.max(0, i) + Math.max(0, j));
    }
  }

  private reach(k: 0 | 1 | 2, low: number, high: number): void {
    this.low[k] = Math.min(this.low[k], low);
    this.high[k] = Math.max(this.high[k], high);
  }
}

type OfShape<S extends Surface['shape']> = Extract<Surface, { shape: S }>;

function ofShape<S extends Surface['shape']>(surfaces: readonly Surface[], shape: S): [OfShape<S>, number][] {
  const found: [OfShape<S>, number][] = [];
  surfaces.forEach((surface, i) => {
    if (surface.shape === shape) found.push([surface as OfShape<S>, i]);
  });
  return found;
}

function checkGroups({ surfaces, group, groupCount }: LatticeSceneInput): void {
  if (group.length !== surfaces.length) {
    throw new Error(
      `makeLatticeScene: group needs one entry for each of ${surfaces.length} surfaces, got ${group.length}`,
    );
  }
  surfaces.forEach(({ shape, owner }, i) => {
    const g = group[i] as number;
    if (g >= groupCount)
      throw new Error(`makeLatticeScene: group of surface ${i} must be below ${groupCount}, got ${g}`);
    if (g >= 0 && shape !== 'blade' && shape !== 'mesh')
      throw new Error(`makeLatticeScene: only blades and meshes gather light, got a ${shape} (surface ${i})`);
    if (shape === 'cloud' && owner !== 0)
      throw new Error(`makeLatticeScene: a cloud must be fixed (owner 0), got ${owner} at surface ${i}`);
  });
}

/** Gathers the things of a scene in their order. */
class Builder {
  readonly masks: MaskTable;
  readonly things = new Things();
  readonly extent: Extent;
  readonly blade: Float64Array;
  readonly bladeMask: number[] = [];
  readonly stem: number[] = [];
  readonly triangle: number[] = [];

  constructor(groupCount: number, blades: number, masks: MaskTable) {
    this.masks = masks;
    this.extent = new Extent(groupCount);
    this.blade = new Float64Array(bladeStride * blades);
  }

  addBlade(blade: Blade, surface: number, group: number): void {
    const mask = this.masks.maskOf(blade.outline);
    if (mask < 0) return;
    const at = bladeStride * this.bladeMask.length;
    putBlade(this.blade, at, blade, this.masks.boxOf(mask));
    this.bladeMask.push(mask);
    this.things.add(blade, surface, group);
    if (group >= 0) this.extent.addBlade(group, this.masks.areaOf(mask) * spanM2(blade), this.blade, at);
  }

  addStem(stem: Stem, surface: number): void {
    const { from, to, fromRadiusM, toRadiusM } = stem;
    this.stem.push(...from, ...sub(to, from), fromRadiusM, toRadiusM);
    this.things.add(stem, surface, -1);
  }

  addMesh(mesh: Mesh, surface: number, group: number): void {
    for (let at = 0; at < mesh.triangles.length; at += 9) {
      const corners = cornersOf(mesh, at);
      const normalSize = Math.hypot(...cross(sub(corners[1], corners[0]), sub(corners[2], corners[0])));
      this.triangle.push(...corners.flat(), edgeOnSine * normalSize);
      this.things.add(mesh, surface, group);
      if (group >= 0) this.extent.add(group, normalSize / 2, corners);
    }
  }
}

/**
 * Throws on an unsound scene (`checkScene`), on groups that do not fit, and on clouds that could be cut.
 * @param masks those of a scene with the same outlines, where there is one
 */
export function makeLatticeScene(input: LatticeSceneInput, masks = makeMaskTable()): LatticeScene {
  const { surfaces, group, groupCount } = input;
  checkScene(surfaces, []);
  checkGroups(input);
  const blades = ofShape(surfaces, 'blade');
  const built = new Builder(groupCount, blades.length, masks);
  for (const [blade, i] of blades) built.addBlade(blade, i, group[i] as number);
  for (const [stem, i] of ofShape(surfaces, 'stem')) built.addStem(stem, i);
  for (const [mesh, i] of ofShape(surfaces, 'mesh')) built.addMesh(mesh, i, group[i] as number);
  const { things, extent } = built;
  return {
    bladeCount: built.bladeMask.length,
    stemCount: built.stem.length / stemStride,
    triangleCount: built.triangle.length / triangleStride,
    blade: built.blade,
    bladeMask: Int32Array.from(built.bladeMask),
    masks: built.masks,
    stem: Float64Array.from(built.stem),
    triangle: Float64Array.from(built.triangle),
    clouds: ofShape(surfaces, 'cloud').map(([cloud]) => cloud),
    surface: Int32Array.from(things.surface),
    kind: Int32Array.from(things.kind),
    kindGroup: Int32Array.from(things.kindGroup),
    kindOwner: Int32Array.from(things.kindOwner),
    kindShare: Float64Array.from(things.kindShare),
    low: extent.low,
    high: extent.high,
    groupAreaM2: extent.areaM2,
  };
}
