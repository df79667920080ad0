/** A label that faces the eye and keeps its size in pixels, however far the camera is. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { Sprite } from 'three';
import type { Vec3 } from '../../geometry/vec.ts';
import type { LabelImage } from './label.ts';
import { pixelsPerMetre } from './useEye.ts';

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
  const sprite = useRef<Sprite>(null);
  const { texture } = image;
  useEffect(() => () => texture.dispose(), [texture]);
  useFrame(({ camera, size }) => {
    const perPx = scale / pixelsPerMetre(camera, size.height, 1);
    sprite.current?.scale.set(image.widthPx * perPx, image.heightPx * perPx, 1);
  });
  return (
    <sprite ref={sprite} position={[...at]} center={[...anchor]} renderOrder={order} raycast={() => null}>
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
