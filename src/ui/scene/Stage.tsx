/** The 3D stage: the tree where it stands, coloured by its light. Draws only when something changed. */
import { Canvas, useThree } from '@react-three/fiber';
import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import { ownersLeft } from '../../growth/owners.ts';
import { CameraMan } from './CameraMan.tsx';
import { quietKnownTalk } from './console.ts';
import { EyeReport } from './EyeReport.tsx';
import { extentOf } from './extent.ts';
import { rendererKind } from './renderer.ts';
import { Scenery } from './Scenery.tsx';
import { SunEye } from './SunEye.tsx';
import type { StageProps } from './stageModel.ts';
import { Tree } from './Tree.tsx';
import { fieldDeg } from './useFlight.ts';

quietKnownTalk();

/** Light from everywhere and from the sun: together near 1 on a leaf that faces it, so that colours keep their meaning. */
const [skyStrength, sunStrength] = [0.86 * Math.PI, 0.24 * Math.PI];
/** A lost picture that is not back by then is given up, milliseconds. */
const patienceMs = 3000;

/** A lower sun lights the picture as if it stood here: the tree is to be seen. Our choice. */
const lowestLightDeg = 8;
const noSun: Vec3 = direction(200, 65);

function ContextWatch({ onLost }: { onLost: (lost: boolean) => void }) {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    const canvas = gl.domElement;
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const lost = (event: Event): void => {
      event.preventDefault();
      waiting = setTimeout(() => onLost(true), patienceMs);
    };
    const restored = (): void => {
      clearTimeout(waiting);
      invalidate();
    };
    canvas.addEventListener('webglcontextlost', lost);
    canvas.addEventListener('webglcontextrestored', restored);
    return () => {
      clearTimeout(waiting);
      canvas.removeEventListener('webglcontextlost', lost);
      canvas.removeEventListener('webglcontextrestored', restored);
    };
  }, [gl, invalidate, onLost]);
  return null;
}

/** Redraws the words once the page's own letters have arrived. */
function useFontsReady(): boolean {
  const [ready, setReady] = useState(document.fonts.status === 'loaded');
  useEffect(() => {
    let here = true;
    void document.fonts.ready.then(() => here && setReady(true));
    return () => {
      here = false;
    };
  }, []);
  return ready;
}

export function Stage({ ref, children, ...stage }: StageProps) {
  const { canopy, file, gone, sun, colours } = stage;
  const kind = rendererKind();
  const [lost, setLost] = useState(false);
  const fine = stage.quality === 'full' || (stage.quality === 'auto' && kind === 'hardware');
  const fontsReady = useFontsReady();
  const standing = useMemo(() => ownersLeft(canopy.owners, gone), [canopy, gone]);
  const grown = useMemo(
    () => ({ canopy, standing, file, extent: extentOf(canopy, file) }),
    [canopy, standing, file],
  );
  // Ground and shadow come a breath after a tree that is pulled, so that the hand is not held up by them.
  const grounded = useDeferredValue(grown);
  const { now } = sun ?? { now: null };
  const isFromSun = stage.fromSun && now !== null && now.altitudeDeg > 0;
  const toSun = useMemo(
    () =>
      now === null
        ? noSun
        : direction(now.azimuthDeg, Math.max(isFromSun ? 0 : lowestLightDeg, now.altitudeDeg)),
    [now, isFromSun],
  );
  if (kind === 'none' || lost) return children;
  return (
    <Canvas
      flat
      frameloop="demand"
      dpr={fine ? [1, 2] : 1}
      gl={{ antialias: fine, powerPreference: 'low-power' }}
      camera={{ fov: fieldDeg, near: 0.05, far: 200 }}
      role="img"
      aria-label={stage.label}
      key={fine ? 'fine' : 'plain'}
    >
      <color attach="background" args={[colours.paper]} />
      <hemisphereLight args={['#ffffff', '#e6e1d6', skyStrength]} />
      <directionalLight position={[...toSun]} intensity={sunStrength} />
      <ContextWatch onLost={setLost} />
      <EyeReport onEye={stage.onEye} />
      {isFromSun ? (
        <SunEye canopy={canopy} file={file} toSun={toSun} />
      ) : (
        <CameraMan ref={ref} canopy={canopy} widest={stage.widest} file={file} still={stage.still} />
      )}
      <group key={fontsReady ? 'own letters' : 'any letters'}>
        <Scenery
          {...grounded}
          sun={sun}
          isFromSun={isFromSun}
          units={stage.units}
          colours={colours}
          fine={fine}
        />
        <Tree stage={stage} standing={standing} fine={fine} />
      </group>
    </Canvas>
  );
}
