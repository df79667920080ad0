/** Turns, moves and frames the camera: by hand, and on request from outside. */
import { OrbitControls, OrthographicCamera } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type Ref, useEffect, useImperativeHandle, useRef } from 'react';
import type { TreeFile } from '../../document/treeFile.ts';
import { normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { coveredBy } from './covered.ts';
import { pointsOf } from './extent.ts';
import { closeUp, flatCloseUp } from './framing.ts';
import type { StageHandle } from './stageModel.ts';
import { type Controls, fieldDeg, useFlight } from './useFlight.ts';
import { axial, useViews } from './useViews.ts';

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
  const pilot = useFlight(controls, still);
  const { isFlat, flatCamera, view } = useViews(pilot, file, widest, movedByHand);

  useImperativeHandle(ref, (): StageHandle => {
    const approach = (points: readonly Vec3[]): void => {
      if (points.length === 0) return;
      movedByHand.current = true;
      const { here, go } = pilot;
      const [east, north] = file.standing.at;
      const aspect = size.width / Math.max(1, size.height);
      const { eye, target } = here();
      const toEye = axial(normalize(sub(eye, target)));
      if (isFlat) go(flatCloseUp(points, toEye, size, coveredBy(size)));
      else go(closeUp(points, [east, 0, -north], here(), fieldDeg, aspect, margin));
    };
    return {
      view,
      showOwner: (id) => {
        approach(pointsOf(canopy, file, id));
      },
      showPoint: (point) => approach([point]),
    };
  });

  const { stop } = pilot;
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
    <>
      {isFlat && <OrthographicCamera ref={flatCamera} makeDefault near={0.05} far={200} />}
      <OrbitControls
        ref={controls}
        makeDefault
        enableDamping={false}
        minDistance={0.15}
        maxDistance={isFlat ? 80 : 40}
        minZoom={20}
        maxZoom={20_000}
        maxPolarAngle={1.62}
      />
    </>
  );
}
