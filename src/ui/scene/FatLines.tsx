/** Lines of a width in pixels, in stretches of their own. New stretches leave the material, and so its shader, as it is. */
import { useEffect, useMemo } from 'react';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';

export interface FatLinesProps {
  /** Six numbers a stretch: where it begins and where it ends. One at least. */
  readonly ends: Float32Array;
  readonly colour: string;
  readonly widthPx: number;
  /** Drawn faintly through whatever stands before it. */
  readonly isThrough?: boolean;
}

const throughOpacity = 0.3;

export function FatLines({ ends, colour, widthPx, isThrough = false }: FatLinesProps) {
  const material = useMemo(
    () =>
      new LineMaterial(
        isThrough ? { transparent: true, opacity: throughOpacity, depthTest: false, depthWrite: false } : {},
      ),
    [isThrough],
  );
  const lines = useMemo(() => {
    const made = new LineSegments2(new LineSegmentsGeometry().setPositions(ends), material);
    made.raycast = () => undefined;
    made.renderOrder = isThrough ? 2 : 0;
    return made;
  }, [ends, material, isThrough]);
  useEffect(() => () => lines.geometry.dispose(), [lines]);
  useEffect(() => () => material.dispose(), [material]);
  return <primitive object={lines} material-color={colour} material-linewidth={widthPx} />;
}
