/** The sky as it is seen from one node. */
import { surroundingSurfaces } from '../document/surroundings.ts';
import type { TreeFile } from '../document/treeFile.ts';
import type { Receiver } from '../geometry/surface.ts';
import { nodeReceivers } from '../growth/scene.ts';
import { firstMetSteps } from '../light/look/firstMet.ts';
import { type SkyDot, skyDots } from '../light/look/skyRaster.ts';
import { hiddenBy, horizonOf } from '../light/sky/horizon.ts';
import { type GrownTree, grownTree } from './grownTree.ts';
import type { Job } from './job.ts';
import type { LookOptions, SkyAnswer, SkyQuestion, SkyThing } from './look.ts';
import { progressOf } from './progressOf.ts';
import type { SkyShares } from './reports.ts';

const defaultSize = 96;

/** How many surfaces stand for what is named, in the order of `surroundingSurfaces`. */
function fixedThings(file: TreeFile): SkyThing[] {
  const bare: TreeFile = { ...file, site: { ...file.site, surroundings: [] } };
  const pot: SkyThing = { kind: 'pot', name: 'Pot' };
  const things: SkyThing[] = surroundingSurfaces(bare).map(() => pot);
  const noPot: TreeFile = { ...file, standing: { ...file.standing, pot: null } };
  for (const thing of file.site.surroundings) {
    const alone = { ...noPot, site: { ...file.site, surroundings: [thing] } };
    for (const _ of surroundingSurfaces(alone)) things.push({ kind: thing.kind, name: thing.name });
  }
  return things;
}

const farNames = { skyline: 'Skyline', slope: 'Rising ground' } as const;

/** Gathers things, each once. */
class Things {
  readonly list: SkyThing[] = [{ kind: 'sky' }];
  private readonly known = new Map<string, number>();

  indexOf(thing: SkyThing): number {
    const key = JSON.stringify(thing);
    const found = this.known.get(key);
    if (found !== undefined) return found;
    this.known.set(key, this.list.length);
    return this.list.push(thing) - 1;
  }
}

/** Names of the owners: of a shoot grown from a bud it is the shoot's. */
function namesOf({ canopy }: GrownTree, file: TreeFile): ReadonlyMap<string, string> {
  return new Map([...file.axes, ...canopy.shoots].map(({ id, name }) => [id, name]));
}

/** The thing of each surface, as index into the list that is filled. */
function thingOfSurfaces(grown: GrownTree, file: TreeFile, things: Things): (surface: number) => number {
  const { canopy, surfaces } = grown;
  const names = namesOf(grown, file);
  const fixed = fixedThings(file);
  const ofTree = canopy.leaves.length + canopy.wood.length;
  if (fixed.length !== surfaces.length - ofTree) {
    throw new Error(
      `skyJob: every fixed surface needs a name, got ${fixed.length} for ${surfaces.length - ofTree}`,
    );
  }
  return (surface) => {
    if (surface < 0) return 0;
    if (surface >= ofTree) return things.indexOf(fixed[surface - ofTree] as SkyThing);
    const kind = surface < canopy.leaves.length ? 'leaf' : 'wood';
    const id = canopy.owners[surfaces[surface]?.owner ?? -1]?.id ?? '';
    return things.indexOf({ kind, id, name: names.get(id) ?? '' });
  };
}

function sharesOf(dots: readonly SkyDot[], values: Float32Array): SkyShares {
  const sum = { solidAngle: 0, cosine: 0 };
  dots.forEach(({ solidAngleShare, cosineShare }, d) => {
    sum.solidAngle += solidAngleShare * (values[d] as number);
    sum.cosine += cosineShare * (values[d] as number);
  });
  return sum;
}

function placeOf({ canopy }: GrownTree, { shootId, node }: SkyQuestion): number {
  const shoot = canopy.shoots.find(({ id }) => id === shootId);
  if (shoot === undefined) throw new Error(`look: no shoot in leaf has the id ${shootId}`);
  const place = canopy.nodes.findIndex((n) => n.owner === shoot.owner && n.node === node);
  if (place < 0) throw new Error(`look: ${shoot.name} has no node ${node}`);
  return place;
}

/** Rejects a shoot and a node that the tree does not have. */
export function* skyJob(file: TreeFile, question: SkyQuestion, options: LookOptions): Job<SkyAnswer> {
  const doing = 'Looking at the sky';
  yield { done: 0, doing };
  const { shootId, node, size = defaultSize } = question;
  const grown = grownTree(file, options);
  const { canopy, surfaces } = grown;
  const place = placeOf(grown, question);
  const dots = skyDots(size);
  const receiver = nodeReceivers(canopy)[place] as Receiver;
  const directions = dots.map(({ toSky }) => toSky);
  const met = yield* progressOf(firstMetSteps(surfaces, receiver, directions), (done) => ({ done, doing }));
  const things = new Things();
  const thingOf = thingOfSurfaces(grown, file, things);
  const first = new Int16Array(size * size).fill(-1);
  const passed = new Float32Array(size * size);
  const horizon = horizonOf(grown.input.site);
  dots.forEach(({ at, toSky }, d) => {
    const far = horizon === null ? null : hiddenBy(horizon, toSky);
    const near = met.first[d] as number;
    first[at] = near < 0 && far !== null ? things.indexOf({ kind: far, name: farNames[far] }) : thingOf(near);
    if (far !== null) {
      met.passed[d] = 0;
      met.straight[d] = 0;
    }
    passed[at] = met.passed[d] as number;
  });
  return {
    shootId,
    name: canopy.shoots.find(({ id }) => id === shootId)?.name as string,
    node,
    point: receiver.point,
    size,
    things: things.list,
    first,
    passed,
    open: sharesOf(dots, met.straight),
    light: sharesOf(dots, met.passed),
  };
}
