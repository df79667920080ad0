/** Buds or shoots set along a branch at even distances, in a spiral. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { figValues } from '../../species/fig.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { shootOffer } from '../forms/shootOffer.ts';
import { TreeInHand } from '../forms/treeInHand.ts';
import { freshIds, freshName, namesOf } from '../freshIds.ts';
import { anyOutside } from '../limits.ts';
import { typicalMidribM } from './add.ts';

export interface Along {
  readonly what: 'buds' | 'shoots';
  readonly count: number;
  /** From the base of the branch to the first. */
  readonly firstM: number;
  readonly spacingM: number;
  /** Where the first sits round the wood: 0 the upper side. */
  readonly aroundDeg: number;
  /** Turn from one to the next. */
  readonly divergenceDeg: number;
  /** Of shoots. */
  readonly shootM: number;
  readonly leafCount: number;
}

/** Air asked for round a new shoot, and how often it is sought: our choice. */
const airM = 0.02;
const tries = 30;

/** Buds take the place of those that were there; shoots are added to those that stand. */
export function setAlong(file: TreeFile, id: string, along: Along): Edited {
  const { what, count, firstM, spacingM, shootM, leafCount } = along;
  const complaint =
    anyOutside({ atM: firstM, setCount: count, spacingM }) ??
    (what === 'shoots' ? anyOutside({ lengthM: shootM, leafCount }) : null);
  if (complaint !== null) return refuse(complaint);
  if (!(Number.isFinite(along.aroundDeg) && Number.isFinite(along.divergenceDeg)))
    return refuse('The turns round the wood must be numbers, in degrees.');
  const axis = axisOf(file, id);
  const lengthM = pathLengthM(axis.path);
  const lastM = firstM + (count - 1) * spacingM;
  if (lastM > lengthM + 5e-4) {
    return refuse(
      `${axis.name} is ${(lengthM * 100).toFixed(0)} cm long; the last one would sit at ${(lastM * 100).toFixed(0)} cm. Set fewer, or nearer together.`,
    );
  }
  const places = Array.from({ length: count }, (_, i) => ({
    atM: Math.min(lengthM, firstM + i * spacingM),
    aroundDeg: (((along.aroundDeg + i * along.divergenceDeg) % 360) + 360) % 360,
  }));
  return what === 'buds' ? withBuds(file, axis, places) : withShoots(file, axis, places, along);
}

type Places = readonly { readonly atM: number; readonly aroundDeg: number }[];

function withBuds(file: TreeFile, axis: TreeAxis, places: Places): Edited {
  const used = new Set(file.axes.flatMap((one) => (one === axis ? [one.id] : idsOn(one))));
  const buds: TreeAxis['buds'] = [];
  for (let n = 1; buds.length < places.length; n++) {
    const id = `${axis.id.slice(0, 56)}-bud${n}`;
    const place = places[buds.length];
    if (place !== undefined && !used.has(id)) buds.push({ id, ...place, pin: null });
  }
  return {
    ok: true,
    file: withAxes(file, [{ ...axis, buds }]),
    said: `Set ${places.length} buds along ${axis.name}`,
  };
}

const idsOn = (axis: TreeAxis): string[] => [axis.id, ...axis.buds.map((bud) => bud.id)];

function withShoots(file: TreeFile, axis: TreeAxis, places: Places, along: Along): Edited {
  const tree = TreeInHand.of(file.axes);
  const ids = freshIds(file, places.length);
  const names = namesOf(file);
  const values = figValues(file.settings);
  places.forEach(({ atM, aroundDeg }, i) => {
    const plan = {
      id: ids[i] as string,
      name: freshName(names, `${axis.name}, shoot ${i + 1}`),
      woodId: axis.id,
      atM,
      aroundDeg,
      lengthM: along.shootM,
      grownIn: Number(file.season.sketchedOn.slice(0, 4)),
      lean: pathLengthM(axis.path) - atM < 0.01 ? 0.3 : 1.1,
      leafCount: along.leafCount,
      midribM: typicalMidribM(file),
      source: 'estimated' as const,
    };
    tree.addClearest(airM, tries, shootOffer(tree, plan, values, 1));
  });
  const added = tree.axes.slice(file.axes.length);
  return {
    ok: true,
    file: { ...file, axes: [...file.axes, ...added] },
    said: `Set ${places.length} shoots along ${axis.name}`,
  };
}
