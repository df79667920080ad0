/** Which leaves are left out of the picture so that one sees into the crown. Whole leaves go: none is cut through. */
import { type Camera, type MeshLambertMaterial, Vector2, Vector3, Vector4 } from 'three';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { SeeInside } from './stageModel.ts';

/** Below this the eye looks so steeply down that the lower edge of the picture tells which half is near. */
const steep = 0.35;
/** Higher than any tree, metres. */
const farM = 1e4;

/** The level unit vector towards the eye; seen from above, towards the lower edge of the picture. */
export function nearSideOf(toEye: Vec3, up: Vec3): Vec3 {
  const level = Math.hypot(toEye[0], toEye[2]);
  const [x, z] = level > steep ? [toEye[0], toEye[2]] : [-up[0], -up[2]];
  const length = Math.hypot(x, z);
  return length === 0 ? [0, 0, 1] : [x / length, 0, z / length];
}

export class LeafSlice {
  /** What is left out lies beyond `w` along x, y, z; and outside these heights. */
  private readonly face = { value: new Vector4(0, 0, 0, 1) };
  private readonly heights = { value: new Vector2(-farM, farM) };
  private isCutAway = false;

  set({ isCutAway, heightsM }: Pick<SeeInside, 'isCutAway' | 'heightsM'>): void {
    this.isCutAway = isCutAway;
    if (!isCutAway) this.face.value.set(0, 0, 0, 1);
    this.heights.value.set(...(heightsM ?? ([-farM, farM] as const)));
  }

  /** Turns the cut towards the eye; to be done before each picture. */
  turnTo(camera: Camera, trunk: Vec3): void {
    if (!this.isCutAway) return;
    const [right, up, back] = [new Vector3(), new Vector3(), new Vector3()];
    camera.matrixWorld.extractBasis(right, up, back);
    const near = nearSideOf([back.x, back.y, back.z], [up.x, up.y, up.z]);
    this.face.value.set(...near, dot(near, trunk));
  }

  /** Whether a leaf whose middle is there is left out. */
  hides([x, y, z]: Vec3): boolean {
    const { x: a, y: b, z: c, w } = this.face.value;
    return a * x + b * y + c * z > w || y < this.heights.value.x || y > this.heights.value.y;
  }

  /** Makes an instanced material heed it; `middle` is that of an instance, in its own frame. */
  applyTo(material: MeshLambertMaterial, middle: Vec3): void {
    const before = material.onBeforeCompile;
    material.onBeforeCompile = (shader, renderer) => {
      before.call(material, shader, renderer);
      shader.uniforms['sliceFace'] = this.face;
      shader.uniforms['sliceHeights'] = this.heights;
      shader.vertexShader = shader.vertexShader
        .replace(
          '#include <common>',
          '#include <common>\nuniform vec4 sliceFace;\nuniform vec2 sliceHeights;',
        )
        .replace(
          '#include <project_vertex>',
          `#include <project_vertex>
          vec3 middle = (instanceMatrix * vec4(${middle.map((n) => n.toFixed(3)).join(', ')}, 1.0)).xyz;
          bool isOut = dot(sliceFace.xyz, middle) > sliceFace.w || middle.y < sliceHeights.x || middle.y > sliceHeights.y;
          // Before the nearest that is drawn.
          if (isOut) gl_Position = vec4(0.0, 0.0, -2.0, 1.0);`,
        );
    };
    material.customProgramCacheKey = () => `slice ${middle.join(' ')} ${before.toString()}`;
  }
}
