/** Trees so large that a record of every shoot a ray passes would not fit into memory. */
import { fixedOwner, type Receiver, type Surface } from '../geometry/surface.ts';

/**
 * Most nodes of a tree whose owners the answer about light tells apart. Eight waves of so many take about 120 MB; the lists grow
 * with the depth of the crown, at 100,000 nodes to 700 MB a wave, against 36 MB with owners together. Our choice.
 */
const mostNodesApart = 4000;

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly ownerCount: number;
}

/**
 * A scene to be asked of its light and never of a set of kept owners: on a large tree all that can be cut is one owner. The light
 * of every period is the same; what is cut or moved is another scene.
 */
export function ownersTogether<S extends Scene>(scene: S): S {
  if (scene.receivers.length <= mostNodesApart) return scene;
  const surfaces = scene.surfaces.map((surface) =>
    surface.owner === fixedOwner ? surface : { ...surface, owner: 1 },
  );
  return { ...scene, surfaces, ownerCount: 2 };
}
