/** Turns, moves and frames the camera: by hand, and on request from outside. */
import { OrbitControls } from '@react-three/drei';
import { useFrame, useThree } from '@react-three/fiber';
import {
  type ComponentRef,
  type Ref,
  useCallback,
  useEffect,
  useImperativeHandle,
  useLayoutEffect,
  useRef,
} from 'react';
import type { PerspectiveCamera } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import { normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, direction } from '../../geometry/world.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { canopyPoints, footPoints } from './extent.ts';
import { between } from './flight.ts';
import { type Framing, frame, viewDirection } from './framing.ts';
import { ownerOf } from './owner.ts';
import type { StageHandle, StageView } from './stageModel.ts';

const margin = 0.07;
const flightMs = 220;
/** Where nobody said from where they look: the south-south-east, with the light at their back at noon. */
const homeBearingDeg = 165;
/** Half the height of what is seen round a point, metres. */
const closeUpM = 0.28;

export interface CameraManProps {
  readonly ref?: Ref<StageHandle> | undefined;
  readonly canopy: Canopy;
  readonly file: TreeFile;
  readonly still: boolean;
}

interface Flight {
  readonly from: Framing;
  readonly to: Framing;
  startMs: number | null;
}

/** Corners of a cube about a point. */
const cubeAbout = ([x, y, z]: Vec3, halfM: number): Vec3[] =>
  [-halfM, halfM].flatMap((dx) =>
    [-halfM, halfM].flatMap((dy) => [-halfM, halfM].map((dz): Vec3 => [x + dx, y + dy, z + dz])),
  );

export function CameraMan({ ref, canopy, file, still }: CameraManProps) {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const flight = useRef<Flight | null>(null);
  const movedByHand = useRef(false);
  const aspect = size.width / Math.max(1, size.height);
  const home = file.site.viewpoint?.bearingDeg ?? homeBearingDeg;

  const place = useCallback(
    ({ eye, target }: Framing): void => {
      camera.position.set(...eye);
      camera.lookAt(...target);
      controls.current?.target.set(...target);
      controls.current?.update();
      invalidate();
    },
    [camera, invalidate],
  );

  const here = useCallback((): Framing => {
    const target = controls.current?.target;
    return {
      eye: [...camera.position.toArray()],
      target: target === undefined ? [0, 0, 0] : [...target.toArray()],
    };
  }, [camera]);

  const go = useCallback(
    (to: Framing): void => {
      if (still) {
        place(to);
        return;
      }
      flight.current = { from: here(), to, startMs: null };
      invalidate();
    },
    [still, place, here, invalidate],
  );

  useFrame(() => {
    const current = flight.current;
    if (current === null) return;
    const nowMs = performance.now();
    current.startMs ??= nowMs;
    const t = (nowMs - current.startMs) / flightMs;
    if (t >= 1) flight.current = null;
    place(between(current.from, current.to, t));
  });

  const wholeTree = useCallback(
    (toEye: Vec3): Framing =>
      frame([...canopyPoints(canopy), ...footPoints(file)], toEye, camera.fov, aspect, margin),
    [canopy, file, camera, aspect],
  );

  const near = useCallback(
    (points: readonly Vec3[]): Framing => {
      const middle = frame(points, [0, 0, 1], camera.fov, aspect, 0).target;
      const foot = file.standing.at;
      const outward: Vec3 = [middle[0] - foot[0], 0, middle[2] + foot[1]];
      const facing =
        Math.hypot(outward[0], outward[2]) > 0.05
          ? bearingDeg(outward)
          : bearingDeg(normalize(sub(here().eye, here().target)));
      return frame(
        [...points, ...cubeAbout(middle, closeUpM)],
        direction(facing, 18),
        camera.fov,
        aspect,
        margin,
      );
    },
    [camera, aspect, file, here],
  );

  useImperativeHandle(
    ref,
    (): StageHandle => ({
      view: (side: StageView) => {
        movedByHand.current = false;
        go(wholeTree(viewDirection(side, home)));
      },
      showOwner: (id) => {
        const owner = ownerOf(canopy, id);
        const points = owner > 0 ? canopyPoints(canopy, owner) : [];
        if (points.length > 0) {
          movedByHand.current = true;
          go(near(points));
        }
      },
      showPoint: (point) => {
        movedByHand.current = true;
        go(near([point]));
      },
    }),
    [canopy, home, go, near, wholeTree],
  );

  const framedFor = useRef<string | null>(null);
  useLayoutEffect(() => {
    const sameTree = framedFor.current === file.id;
    if (sameTree && movedByHand.current) return;
    const way = sameTree ? normalize(sub(here().eye, here().target)) : viewDirection('free', home);
    framedFor.current = file.id;
    movedByHand.current = false;
    place(wholeTree(way));
    // Only another tree or another shape of the picture calls for a new frame; an edit must not move the camera.
  }, [file.id, aspect]); // oxlint-disable-line exhaustive-deps

  useEffect(() => {
    const stopFlight = (): void => {
      flight.current = null;
      movedByHand.current = true;
    };
    const current = controls.current;
    current?.addEventListener('start', stopFlight);
    return () => current?.removeEventListener('start', stopFlight);
  }, []);

  return (
    <OrbitControls
      ref={controls}
      makeDefault
      enableDamping={false}
      minDistance={0.15}
      maxDistance={40}
      maxPolarAngle={1.62}
    />
  );
}
