/** A label that faces the eye and keeps its size in pixels, however far the camera is. */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { PerspectiveCamera } from 'three';
import type { Vec3 } from '../../geometry/vec.ts';
import type { LabelImage } from './label.ts';

export interface SignProps {
  readonly image: LabelImage;
  readonly at: Vec3;
  /** Which part of the image lies on the point: 0, 0 its lower left corner, 1, 1 its upper right. */
  readonly anchor?: readonly [x: number, y: number];
  /** Drawn over everything, or hidden by what is in front. */
  readonly onTop?: boolean;
  readonly opacity?: number;
  readonly order?: number;
  /** Times its own size. */
  readonly scale?: number;
}

export function Sign(props: SignProps) {
  const { image, at, anchor = [0.5, 0.5], onTop = false, opacity = 1, order = 1, scale = 1 } = props;
  const heightPx = useThree((state) => state.size.height);
  const fieldDeg = useThree((state) => (state.camera as PerspectiveCamera).fov);
  const { texture } = image;
  useEffect(() => () => texture.dispose(), [texture]);
  const perPx = (scale * 2 * Math.tan((fieldDeg * Math.PI) / 360)) / heightPx;
  return (
    <sprite
      position={[...at]}
      scale={[image.widthPx * perPx, image.heightPx * perPx, 1]}
      center={[...anchor]}
      renderOrder={order}
      raycast={() => null}
    >
      <spriteMaterial
        map={texture}
        sizeAttenuation={false}
        depthTest={!onTop}
        depthWrite={false}
        transparent
        opacity={opacity}
      />
    </sprite>
  );
}
