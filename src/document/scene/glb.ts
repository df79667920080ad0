/**
 * A binary glTF of a scene: glTF 2.0, Khronos Group 2021 (ISO/IEC 12113:2022), with KHR_materials_unlit. Written by hand: the
 * part of the format that is needed is a header, one JSON text and one run of numbers.
 */

/** What is drawn as one. */
export interface GlbPart {
  readonly name: string;
  /** Kept with the part as it is, for whoever reads the file. */
  readonly extras: Readonly<Record<string, unknown>>;
  /** Nine numbers a triangle, metres. Not empty. */
  readonly positions: Float32Array;
  /** Linear red, green and blue a corner, 0 to 1: as many numbers as positions. */
  readonly colours: Float32Array;
  /** 1 for what is solid to the eye. */
  readonly opacity: number;
}

const [floats, shorts, vertexData] = [5126, 5123, 34962];
const colourMost = 65_535;

interface Extent {
  readonly min: number[];
  readonly max: number[];
}

function extentOf(positions: Float32Array): Extent {
  const [min, max] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  positions.forEach((value, i) => {
    min[i % 3] = Math.min(min[i % 3] as number, value);
    max[i % 3] = Math.max(max[i % 3] as number, value);
  });
  return { min, max };
}

/** Letters beyond the plain ones are written by number, so that a character is a byte. */
const plainJson = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[\u007f-\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** The numbers of all parts: first every position, then every colour. */
function binaryOf(parts: readonly GlbPart[], vertexCount: number): Uint8Array {
  const bytes = new Uint8Array(20 * vertexCount);
  const view = new DataView(bytes.buffer);
  let vertex = 0;
  for (const { positions, colours, opacity } of parts) {
    for (let i = 0; i < positions.length; i++) {
      view.setFloat32(12 * vertex + 4 * i, positions[i] as number, true);
      const at = 12 * vertexCount + 8 * (vertex + Math.floor(i / 3)) + 2 * (i % 3);
      view.setUint16(at, Math.round(colourMost * Math.min(1, Math.max(0, colours[i] as number))), true);
    }
    for (let i = 0; i < positions.length / 3; i++) {
      const at = 12 * vertexCount + 8 * (vertex + i) + 6;
      view.setUint16(at, Math.round(colourMost * opacity), true);
    }
    vertex += positions.length / 3;
  }
  return bytes;
}

function accessorsOf(parts: readonly GlbPart[]): object[] {
  let vertex = 0;
  return parts.flatMap(({ positions }) => {
    const count = positions.length / 3;
    const position = { bufferView: 0, byteOffset: 12 * vertex, componentType: floats, count, type: 'VEC3' };
    const colour = { bufferView: 1, byteOffset: 8 * vertex, componentType: shorts, count, type: 'VEC4' };
    vertex += count;
    return [
      { ...position, ...extentOf(positions) },
      { ...colour, normalized: true },
    ];
  });
}

const unlit = { extensions: { KHR_materials_unlit: {} }, doubleSided: true };
/** One for each opacity that is drawn; the colours carry it. */
const materialOf = (opacity: number): object => ({
  name: opacity < 1 ? 'light, seen through' : 'light',
  ...unlit,
  ...(opacity < 1 ? { alphaMode: 'BLEND' } : {}),
});

function describe(name: string, parts: readonly GlbPart[], extras: object, vertexCount: number): object {
  const attributes = { buffer: 0, target: vertexData };
  const opacities = [...new Set(parts.map(({ opacity }) => opacity))];
  return {
    asset: { version: '2.0', generator: 'Boughlight' },
    extensionsUsed: ['KHR_materials_unlit'],
    scene: 0,
    scenes: [{ name, nodes: [0] }],
    nodes: [
      { name, extras, children: parts.map((_, i) => i + 1) },
      ...parts.map((part, mesh) => ({ name: part.name, mesh, extras: part.extras })),
    ],
    meshes: parts.map((part, i) => ({
      name: part.name,
      primitives: [
        {
          attributes: { POSITION: 2 * i, COLOR_0: 2 * i + 1 },
          material: opacities.indexOf(part.opacity),
          mode: 4,
        },
      ],
    })),
    materials: opacities.map(materialOf),
    accessors: accessorsOf(parts),
    bufferViews: [
      { ...attributes, byteOffset: 0, byteLength: 12 * vertexCount, byteStride: 12 },
      { ...attributes, byteOffset: 12 * vertexCount, byteLength: 8 * vertexCount, byteStride: 8 },
    ],
    buffers: [{ byteLength: 20 * vertexCount }],
  };
}

/** A file of these parts under one node. Throws when there is nothing to draw, which the format does not allow. */
export function writeGlb(name: string, parts: readonly GlbPart[], extras: object): Uint8Array {
  const vertexCount = parts.reduce((sum, { positions }) => sum + positions.length / 3, 0);
  if (vertexCount === 0) throw new Error('writeGlb: a file needs a triangle at least, got none');
  const json = plainJson(describe(name, parts, extras, vertexCount));
  const jsonBytes = 4 * Math.ceil(json.length / 4);
  const binary = binaryOf(parts, vertexCount);
  const bytes = new Uint8Array(28 + jsonBytes + binary.length);
  const view = new DataView(bytes.buffer);
  const words = [0x46546c67, 2, bytes.length, jsonBytes, 0x4e4f534a];
  words.forEach((word, i) => {
    view.setUint32(4 * i, word, true);
  });
  bytes.fill(0x20, 20, 20 + jsonBytes);
  for (let i = 0; i < json.length; i++) bytes[20 + i] = json.charCodeAt(i);
  view.setUint32(20 + jsonBytes, binary.length, true);
  view.setUint32(24 + jsonBytes, 0x004e4942, true);
  bytes.set(binary, 28 + jsonBytes);
  return bytes;
}
