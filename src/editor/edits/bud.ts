/** One bud: where it sits, what the plan must do with it, taken off. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { anyOutside } from '../limits.ts';

type Bud = TreeAxis['buds'][number];

/** The branch that carries the bud. Throws when there is none: a stale id is a mistake of the caller. */
function carrierOf(file: TreeFile, budId: string): TreeAxis {
  const axis = file.axes.find((one) => one.buds.some((bud) => bud.id === budId));
  if (axis === undefined) throw new Error(`carrierOf: no bud with id ${budId}`);
  return axis;
}

export function changeBud(file: TreeFile, budId: string, change: Partial<Omit<Bud, 'id'>>): Edited {
  const axis = carrierOf(file, budId);
  const complaint = anyOutside({ atM: change.atM, aroundDeg: change.aroundDeg });
  if (complaint !== null) return refuse(complaint);
  const lengthM = pathLengthM(axis.path);
  if ((change.atM ?? 0) > lengthM + 5e-4)
    return refuse(`${axis.name} is only ${(lengthM * 100).toFixed(0)} cm long. Give a smaller distance.`);
  const buds = axis.buds
    .map((bud) =>
      bud.id === budId ? { ...bud, ...change, atM: Math.min(lengthM, change.atM ?? bud.atM) } : bud,
    )
    .toSorted((a, b) => a.atM - b.atM);
  return { ok: true, file: withAxes(file, [{ ...axis, buds }]), said: `Changed a bud on ${axis.name}` };
}

export function removeBud(file: TreeFile, budId: string): Edited {
  const axis = carrierOf(file, budId);
  const buds = axis.buds.filter((bud) => bud.id !== budId);
  return {
    ok: true,
    file: withAxes(file, [{ ...axis, buds }]),
    said: `Rubbed a bud off ${axis.name}`,
    select: axis.id,
  };
}
