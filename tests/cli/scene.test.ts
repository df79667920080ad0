import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { BufferAttribute, Mesh } from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { beforeAll, describe, expect, it } from 'vitest';
import type { SceneFile } from '../../src/document/scene/sceneFile.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { LightReport } from '../../src/engine/reports.ts';
import { projectFolder } from '../house/source.ts';
import { answerOf, exampleText } from './stand.ts';

const files = { 'whip.json': exampleText('young-whip') };
const options = ['--waves', '2', '--seed', '9', '--from', '2027-06-03', '--to', '2027-08-19'];

describe('boughlight scene', () => {
  let bytes: Uint8Array;
  let scene: SceneFile;

  beforeAll(async () => {
    const written = new Map<string, Uint8Array>();
    const args = ['scene', 'whip.json', '--json', '--glb', 'out/whip.glb', ...options];
    const { code, out, err } = await answerOf(args, { files, written });
    expect({ code, err, paths: [...written.keys()] }).toEqual({ code: 0, err: '', paths: ['out/whip.glb'] });
    bytes = written.get('out/whip.glb') as Uint8Array;
    scene = JSON.parse(out) as SceneFile;
  }, 30_000);

  it('writes the published shape', () => {
    const path = join(projectFolder, 'public', 'schema', 'boughlight-scene-1.schema.json');
    const schema = JSON.parse(readFileSync(path, 'utf8')) as object;
    const validate = new Ajv2020({ strict: true, validateFormats: false }).compile(schema);
    validate(scene);
    expect(validate.errors).toBeNull();
  });

  it('tells the same light as the command light', async () => {
    const told = await answerOf(['light', 'whip.json', '--json', ...options], {
      files,
      makeEngine: createInPlaceEngine,
    });
    const light = JSON.parse(told.out) as LightReport;
    expect(scene.result).toEqual(
      light.shoots.map(({ id, lightFraction, standardError }) => ({
        shoot: id,
        lightFraction,
        standardError,
      })),
    );
    expect(scene.openSkyParMolM2Day).toBe(light.openSkyParMolM2Day);
    expect(scene.energy).toEqual(light.energy);
    expect(scene.period).toEqual({ from: '2027-06-03', to: '2027-08-19' });
    const owners = new Set(scene.surfaces.map(({ owner }) => owner));
    expect(scene.receivers.every(({ shoot }) => owners.has(shoot))).toBe(true);
  });

  it('draws other leaves for another leaf seed alone, as the help says', async () => {
    const asked = async (...more: string[]) =>
      (await answerOf(['scene', 'whip.json', '--json', ...options.with(3, '10'), ...more], { files })).out;
    const [out, sameLeaves] = [await asked('--leaf-seed', '2'), await asked()];
    const leaves = ({ surfaces }: SceneFile) => surfaces.filter(({ material }) => material.kind === 'leaf');
    const [mine, others] = [leaves(scene), leaves(JSON.parse(out) as SceneFile)];
    expect(mine[0]?.triangles[0]).not.toEqual(others[0]?.triangles[0]);
    expect(mine).toEqual(leaves(JSON.parse(sameLeaves) as SceneFile));
    expect((await answerOf(['help'], { files })).out).toMatch(
      /--leaf-seed N +other leaves by the same rules/,
    );
  });

  it('writes a model that a reader of glTF draws at the same places, brighter where there is more light', async () => {
    const { scene: model } = await new GLTFLoader().parseAsync(bytes.slice().buffer, '');
    const meshes: Mesh[] = [];
    model.traverse((object) => {
      if ('isMesh' in object) meshes.push(object as Mesh);
    });
    const triangles = meshes.reduce((sum, mesh) => sum + mesh.geometry.getAttribute('position').count / 3, 0);
    expect(triangles).toBe(scene.surfaces.reduce((sum, surface) => sum + surface.triangles.length, 0));
    let seen = 0;
    for (const { shoot, lightFraction } of scene.result) {
      const mesh = meshes.find(
        ({ userData }) => userData.owner === shoot && userData.kind === 'wood',
      ) as Mesh;
      expect(mesh.userData.lightFraction).toBe(lightFraction);
      const first = scene.surfaces.find(({ owner, material, triangles: own }) => {
        return owner === shoot && material.kind === 'wood' && own.length > 0;
      })?.triangles[0]?.[0] as readonly number[];
      const position = mesh.geometry.getAttribute('position');
      expect(position.getX(0)).toBeCloseTo(first[0] as number, 6);
      expect(position.getY(0)).toBeCloseTo(first[1] as number, 6);
      expect(position.getZ(0)).toBeCloseTo(first[2] as number, 6);
      const colour = mesh.geometry.getAttribute('color') as BufferAttribute;
      expect(colour.getX(0)).toBeCloseTo(0.99 * Math.min(1, lightFraction), 4);
      seen++;
    }
    expect(seen).toBeGreaterThan(3);
  });

  it('says what it wrote when that is all there is to say', async () => {
    const args = ['scene', 'whip.json', '--glb', 'whip.glb', ...options];
    const { code, out } = await answerOf(args, { files, written: new Map() });
    expect(code).toBe(0);
    expect(out).toMatch(/^whip\.glb: .+ as glTF, \d+\.\d MB\.\n$/);
  });

  it('says that it leaves out turns of the pot, and tells light thrown back by walls apart', async () => {
    const whip = JSON.parse(files['whip.json']) as { site: object; standing: object };
    Object.assign(whip.site, { wallsThrowLight: true });
    Object.assign(whip.standing, { quarterTurnEveryWeeks: 3 });
    const turned = { 'turned.json': JSON.stringify(whip) };
    const { err } = await answerOf(['scene', 'turned.json', '--json', ...options], { files: turned });
    expect(err).toMatch(
      /^boughlight: note: The pot stands in the scene as at bud break; .+\n.+ walls in the scene are dark: .+\n$/,
    );
  });

  it('refuses, in words, a place where no file can be written', async () => {
    const { code, out, err } = await answerOf(['scene', 'whip.json', '--glb', 'no/whip.glb', ...options], {
      files,
    });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('boughlight: no/whip.glb: the file cannot be written (not allowed).\n');
  });
});
