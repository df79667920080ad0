/** Turns, moves and frames the camera: by hand, and on request from outside. */
import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type Ref, useEffect, useImperativeHandle, useLayoutEffect, useRef } from 'react';
import type { TreeFile } from '../../document/treeFile.ts';
import { normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { coveredBy } from './covered.ts';
import { pointsInPicture, pointsOf } from './extent.ts';
import { closeUp, type Framing, frameWithin, viewDirection } from './framing.ts';
import { homeBearingDeg } from './slab.ts';
import type { StageHandle } from './stageModel.ts';
import { type Controls, fieldDeg, useFlight } from './useFlight.ts';

const margin = 0.07;

export interface CameraManProps {
  readonly ref?: Ref<StageHandle> | undefined;
  readonly canopy: Canopy;
  /** What the whole tree is framed by, so that the picture stays when leaves come and go. */
  readonly widest: () => Canopy;
  readonly file: TreeFile;
  readonly still: boolean;
}

export function CameraMan({ ref, canopy, widest, file, still }: CameraManProps) {
  const size = useThree((state) => state.size);
  const camera = useThree((state) => state.camera);
  const controls = useRef<Controls>(null);
  const movedByHand = useRef(false);
  const { here, place, go, stop } = useFlight(controls, still);
  const aspect = size.width / Math.max(1, size.height);
  const home = homeBearingDeg(file);
  const wholeTree = (toEye: Vec3): Framing =>
    frameWithin(pointsInPicture(widest(), file), toEye, fieldDeg, size, coveredBy(size));

  useImperativeHandle(ref, (): StageHandle => {
    const approach = (points: readonly Vec3[]): void => {
      if (points.length === 0) return;
      movedByHand.current = true;
      const [east, north] = file.standing.at;
      go(closeUp(points, [east, 0, -north], here(), fieldDeg, aspect, margin));
    };
    return {
      view: (side) => {
        movedByHand.current = false;
        go(wholeTree(viewDirection(side, home)));
      },
      showOwner: (id) => {
        approach(pointsOf(canopy, file, id));
      },
      showPoint: (point) => approach([point]),
    };
  });

  // Only another tree or another shape of the picture calls for a new frame: an edit must not move the camera.
  const framedFor = useRef<{ id: string; aspect: number; camera: unknown }>({
    id: '',
    aspect: 0,
    camera: null,
  });
  useLayoutEffect(() => {
    // The eye in the sun has a camera of its own, which is still the stage's when this one comes back.
    if (!('isPerspectiveCamera' in camera)) return;
    const last = framedFor.current;
    const sameTree = last.id === file.id;
    const sameEye = last.camera === camera;
    if (sameTree && sameEye && (movedByHand.current || last.aspect === aspect)) return;
    const { eye, target } = here();
    place(wholeTree(sameTree ? normalize(sub(eye, target)) : viewDirection('free', home)));
    framedFor.current = { id: file.id, aspect, camera };
    movedByHand.current = false;
  });

  useEffect(() => {
    const current = controls.current;
    const takeOver = (): void => {
      stop();
      movedByHand.current = true;
    };
    current?.addEventListener('start', takeOver);
    return () => current?.removeEventListener('start', takeOver);
    // With another camera come other controls.
  }, [stop, camera]);

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
