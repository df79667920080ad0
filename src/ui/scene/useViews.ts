/** The camera's views of the whole tree: parallel rays from the sides and from above, an eye nearby in the free one. */
import { useThree } from '@react-three/fiber';
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import type { OrthographicCamera } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import { dot, normalize, sub, type Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { coveredBy } from './covered.ts';
import { pointsInPicture } from './extent.ts';
import { type Framing, flatFraming, flatSides, frameWithin, nearFraming, viewDirection } from './framing.ts';
import { homeBearingDeg } from './slab.ts';
import { isSunEye } from './stageEye.ts';
import type { StageView } from './stageModel.ts';
import { fieldDeg, type Pilot } from './useFlight.ts';

/** What is to be done once the other kind of camera is there. */
interface Arrival {
  readonly isFlat: boolean;
  readonly at: Framing;
  readonly onward: Framing | null;
}

export interface Views {
  readonly isFlat: boolean;
  /** Of the flat views. */
  readonly flatCamera: RefObject<OrthographicCamera | null>;
  readonly view: (side: StageView) => void;
}

/** @param movedByHand a picture that was moved by hand is not framed anew */
export function useViews(
  { here, place, go }: Pilot,
  file: TreeFile,
  widest: () => Canopy,
  movedByHand: RefObject<boolean>,
): Views {
  const size = useThree((state) => state.size);
  const [isFlat, setFlat] = useState(false);
  const arrival = useRef<Arrival | null>(null);
  const home = homeBearingDeg(file);
  const wholeTree = (toEye: Vec3, flat: boolean): Framing =>
    flat
      ? flatFraming(pointsInPicture(widest(), file), toEye, size, coveredBy(size))
      : frameWithin(pointsInPicture(widest(), file), toEye, fieldDeg, size, coveredBy(size));
  const swap = (next: Arrival): void => {
    arrival.current = next;
    setFlat(next.isFlat);
  };
  const flatCamera = useRef<OrthographicCamera>(null);
  useFrames({ here, place, go }, file.id, { flatCamera, arrival, movedByHand }, (toEye, flat) =>
    wholeTree(toEye ?? viewDirection('free', home), flat),
  );
  const view = (side: StageView): void => {
    movedByHand.current = false;
    const to = wholeTree(viewDirection(side, home), side !== 'free');
    if (isFlat === (side !== 'free')) go(to);
    else if (isFlat) swap({ isFlat: false, at: nearOf(here(), size.height), onward: to });
    else go(nearOf(to, size.height), () => swap({ isFlat: true, at: to, onward: null }));
  };
  return { isFlat, flatCamera, view };
}

interface Marks {
  readonly flatCamera: RefObject<OrthographicCamera | null>;
  readonly arrival: RefObject<Arrival | null>;
  readonly movedByHand: RefObject<boolean>;
}

/** Frames the tree. Only another tree or another shape of the picture calls for it: an edit must not move the camera. */
function useFrames(
  { here, place, go }: Pick<Pilot, 'here' | 'place' | 'go'>,
  id: string,
  { flatCamera, arrival, movedByHand }: Marks,
  wholeTree: (toEye: Vec3 | null, flat: boolean) => Framing,
): void {
  const camera = useThree((state) => state.camera);
  const { width, height } = useThree((state) => state.size);
  const aspect = width / Math.max(1, height);
  const framedFor = useRef<{ id: string; aspect: number; camera: unknown }>({
    id: '',
    aspect: 0,
    camera: null,
  });
  useLayoutEffect(() => {
    const flat = 'isOrthographicCamera' in camera;
    // The eye in the sun has a camera of its own, which is still the stage's when this one comes back.
    if (isSunEye(camera) || (flat && camera !== flatCamera.current)) return;
    const last = framedFor.current;
    const sameTree = last.id === id;
    const due = arrival.current;
    const sameEye = last.camera === camera;
    if (due?.isFlat === flat && sameTree) {
      place(due.at);
      if (due.onward !== null) go(due.onward);
    } else if (sameTree && sameEye && (movedByHand.current || last.aspect === aspect)) {
      return;
    } else {
      const { eye, target } = here();
      place(wholeTree(sameTree || flat ? axial(normalize(sub(eye, target))) : null, flat));
    }
    arrival.current = null;
    framedFor.current = { id, aspect, camera };
    movedByHand.current = false;
  });
}

/** The picture as an eye of rays that are not parallel sees it. */
const nearOf = (framing: Framing, heightPx: number): Framing =>
  framing.pxPerM === undefined
    ? framing
    : nearFraming({ ...framing, pxPerM: framing.pxPerM }, fieldDeg, heightPx);

/** A direction that was meant to lie along an axis of the world, brought back to it. */
export function axial(toEye: Vec3): Vec3 {
  const side = flatSides.find((one) => dot(viewDirection(one, 0), toEye) > 1 - 1e-7);
  return side === undefined ? toEye : viewDirection(side, 0);
}
