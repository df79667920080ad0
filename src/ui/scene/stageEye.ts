/** The eye of the stage as the page outside the picture knows it: where things are seen, and what a hand points at. */
import { type Camera, OrthographicCamera, PerspectiveCamera, Vector3 } from 'three';
import { add, dot, normalize, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { flatSides, pictureAxes, viewDirection } from './framing.ts';
import type { PictureSize, StageEye } from './stageModel.ts';
import { pixelsPerMetre } from './useEye.ts';

/** A view turned by no more counts as not turned: cosine of 0.02 degrees. */
const straight = Math.cos((0.02 * Math.PI) / 180);

/** The eye in the sun looks along parallel rays too, but from where nobody stands. */
export const isSunEye = (camera: Camera): boolean => camera.userData['isSun'] === true;

/** The eye as the camera stands now; it is not changed when the camera moves. */
export function stageEyeOf(from: Camera, size: PictureSize): StageEye | null {
  if (isSunEye(from)) return null;
  if (from instanceof OrthographicCamera) return flatEye(from, size);
  return from instanceof PerspectiveCamera ? nearEye(from, size) : null;
}

const vec = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

function projecting(camera: OrthographicCamera | PerspectiveCamera, size: PictureSize): StageEye['project'] {
  const view = camera.matrixWorldInverse.clone();
  const onto = camera.projectionMatrix.clone();
  const { near } = camera;
  return (point) => {
    const at = new Vector3(...point).applyMatrix4(view);
    const depthM = -at.z;
    if (depthM <= near) return null;
    at.applyMatrix4(onto);
    return [((at.x + 1) / 2) * size.width, ((1 - at.y) / 2) * size.height, depthM];
  };
}

const toEyeOf = (camera: Camera): Vec3 => scale(vec(camera.getWorldDirection(new Vector3())), -1);

function flatEye(camera: OrthographicCamera, size: PictureSize): StageEye {
  const toEye = toEyeOf(camera);
  const side = flatSides.find((one) => dot(viewDirection(one, 0), toEye) > straight) ?? null;
  const facing = side === null ? toEye : viewDirection(side, 0);
  const { right, upward } = pictureAxes(facing);
  const { zoom } = camera;
  const eye = vec(camera.position);
  return {
    size,
    facing,
    side,
    project: projecting(camera, size),
    pxPerM: () => zoom,
    sightAt: (x, y) => {
      const [acrossM, upM] = [(x - size.width / 2) / zoom, (size.height / 2 - y) / zoom];
      return {
        from: add(eye, add(scale(right, acrossM), scale(upward, upM))),
        way: scale(facing, -1),
        facing,
      };
    },
  };
}

function nearEye(camera: PerspectiveCamera, size: PictureSize): StageEye {
  const eye = vec(camera.position);
  const facing = toEyeOf(camera);
  const world = camera.matrixWorld.clone();
  const unproject = camera.projectionMatrixInverse.clone();
  const ofOneM = pixelsPerMetre(camera, size.height, 1);
  return {
    size,
    facing,
    side: 'free',
    project: projecting(camera, size),
    pxPerM: (depthM) => ofOneM / depthM,
    sightAt: (x, y) => {
      const at = new Vector3((2 * x) / size.width - 1, 1 - (2 * y) / size.height, 0.5);
      const far = vec(at.applyMatrix4(unproject).applyMatrix4(world));
      return { from: eye, way: normalize(sub(far, eye)), facing };
    },
  };
}
