import { type Mesh, MeshBasicMaterial } from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { describe, expect, it } from 'vitest';
import { type GlbPart, writeGlb } from '../../../src/document/scene/glb.ts';

const part = (name: string, opacity: number, triangles: number): GlbPart => ({
  name,
  extras: { owner: `id of ${name}`, lightFraction: 0.37 },
  positions: Float32Array.from({ length: 9 * triangles }, (_, i) => 0.13 * i - 0.7),
  colours: Float32Array.from({ length: 9 * triangles }, (_, i) => (i % 10) / 9),
  opacity,
});
const parts = [part('Süd-Ast 🍃', 1, 3), part('Far crown', 0.35, 2)];

async function read(bytes: Uint8Array): Promise<Mesh[]> {
  const { scene } = await new GLTFLoader().parseAsync(bytes.slice().buffer, '');
  const meshes: Mesh[] = [];
  scene.traverse((object) => {
    if ('isMesh' in object) meshes.push(object as Mesh);
  });
  return meshes;
}

describe('a binary glTF', () => {
  it('has the header, lengths and padding of glTF 2.0, section 4', () => {
    const bytes = writeGlb('Old fig', parts, {});
    const view = new DataView(bytes.buffer);
    expect(new TextDecoder().decode(bytes.subarray(0, 4))).toBe('glTF');
    expect(view.getUint32(4, true)).toBe(2);
    expect(view.getUint32(8, true)).toBe(bytes.length);
    const jsonBytes = view.getUint32(12, true);
    expect(jsonBytes % 4).toBe(0);
    expect(new TextDecoder().decode(bytes.subarray(16, 20))).toBe('JSON');
    expect(view.getUint32(20 + jsonBytes, true)).toBe(15 * 20);
    expect(new TextDecoder().decode(bytes.subarray(24 + jsonBytes, 28 + jsonBytes))).toBe('BIN\0');
    expect(bytes.length).toBe(28 + jsonBytes + 15 * 20);
  });

  it('is read by another program part for part: names, extras, places and colours', async () => {
    const meshes = await read(writeGlb('Old fig', parts, { seed: 7 }));
    expect(meshes.map(({ userData }) => userData)).toMatchObject(
      parts.map(({ extras, name }) => ({ ...extras, name })),
    );
    meshes.forEach((mesh, i) => {
      const { positions, colours, opacity } = parts[i] as GlbPart;
      const position = mesh.geometry.getAttribute('position');
      const colour = mesh.geometry.getAttribute('color');
      expect(position.count).toBe(positions.length / 3);
      for (let corner = 0; corner < position.count; corner++) {
        expect(position.getX(corner)).toBe(positions[3 * corner]);
        expect(position.getZ(corner)).toBe(positions[3 * corner + 2]);
        expect(colour.getY(corner)).toBeCloseTo(colours[3 * corner + 1] as number, 4);
        expect(colour.getW(corner)).toBeCloseTo(opacity, 4);
      }
      const material = mesh.material as MeshBasicMaterial;
      expect(material).toBeInstanceOf(MeshBasicMaterial);
      expect(material.vertexColors).toBe(true);
      expect(material.transparent).toBe(opacity < 1);
    });
  });

  it('is refused where there is nothing to draw', () => {
    expect(() => writeGlb('Bare', [], {})).toThrow(/^writeGlb: a file needs a triangle at least, got none/);
  });
});
