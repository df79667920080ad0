/** Sensors at the nodes of a synthetic tree. */
import type { Receiver } from '../src/geometry/surface.ts';
import type { VaseTree } from './vaseTree.ts';

/** A level sensor at the foot of each blade, in its leaf's order. */
export const nodesOf = ({ surfaces }: VaseTree): Receiver[] =>
  surfaces.flatMap((surface, onSurface): Receiver[] =>
    surface.shape === 'blade' ? [{ point: surface.origin, normal: [0, 1, 0], sides: 'one', onSurface }] : [],
  );
