/** Moves the camera to a place, at once or in a short flight that a hand on the picture ends. */
import type { OrbitControls } from '@react-three/drei';
import { useFrame, useThree } from '@react-three/fiber';
import { type ComponentRef, type RefObject, useCallback, useRef } from 'react';
import { origin } from '../../geometry/vec.ts';
import { between } from './flight.ts';
import type { Framing } from './framing.ts';

export type Controls = ComponentRef<typeof OrbitControls>;

/** Upright field of view of the stage: narrow, so that far and near limbs keep their true sizes. */
export const fieldDeg = 34;

const flightMs = 220;

interface Flight {
  readonly from: Framing;
  readonly to: Framing;
  readonly arrived: (() => void) | undefined;
  startMs: number | null;
}

export interface Pilot {
  readonly here: () => Framing;
  /** At once. */
  readonly place: (to: Framing) => void;
  /** In a flight, unless the stage is still; what is done when it is over. */
  readonly go: (to: Framing, arrived?: () => void) => void;
  readonly stop: () => void;
}

/** Sets the camera down, and says where it is. A camera of parallel rays has a size of a metre too. */
function useTripod(controls: RefObject<Controls | null>): Pick<Pilot, 'here' | 'place'> {
  const camera = useThree((state) => state.camera);
  const invalidate = useThree((state) => state.invalidate);
  const place = useCallback(
    ({ eye, target, pxPerM }: Framing): void => {
      camera.position.set(...eye);
      camera.lookAt(...target);
      if ('isOrthographicCamera' in camera && pxPerM !== undefined) {
        camera.zoom = pxPerM;
        camera.updateProjectionMatrix();
      }
      controls.current?.target.set(...target);
      controls.current?.update();
      invalidate();
    },
    [camera, controls, invalidate],
  );
  const here = useCallback((): Framing => {
    const { x, y, z } = camera.position;
    const target = controls.current?.target;
    const at: Framing = {
      eye: [x, y, z],
      target: target === undefined ? origin : [target.x, target.y, target.z],
    };
    return 'isOrthographicCamera' in camera ? { ...at, pxPerM: camera.zoom } : at;
  }, [camera, controls]);
  return { here, place };
}

export function useFlight(controls: RefObject<Controls | null>, still: boolean): Pilot {
  const invalidate = useThree((state) => state.invalidate);
  const flight = useRef<Flight | null>(null);
  const { here, place } = useTripod(controls);
  const go = useCallback(
    (to: Framing, arrived?: () => void): void => {
      flight.current = still ? null : { from: here(), to, arrived, startMs: null };
      if (still) {
        place(to);
        arrived?.();
      }
      invalidate();
    },
    [still, place, here, invalidate],
  );
  const stop = useCallback((): void => {
    flight.current = null;
  }, []);

  useFrame(() => {
    const current = flight.current;
    if (current === null) return;
    const nowMs = performance.now();
    current.startMs ??= nowMs;
    const t = (nowMs - current.startMs) / flightMs;
    if (t >= 1) flight.current = null;
    place(between(current.from, current.to, t));
    if (t >= 1) current.arrived?.();
  });
  return { here, place, go, stop };
}
