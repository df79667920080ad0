/** Visible text of the Tree sheet. */
import type { TreeAxis } from '../../../editor/edit.ts';

type Kind = TreeAxis['kind'];

const counted = (n: number, one: string, many: string): string => (n === 1 ? `1 ${one}` : `${n} ${many}`);

export const treeWords = {
  headline(counts: Readonly<Record<Kind, number>>, leaves: number, buds: number): string {
    const parts = [
      counts.scaffold > 0 ? counted(counts.scaffold, 'limb', 'limbs') : 'A single stem',
      ...(counts.lateral > 0 ? [counted(counts.lateral, 'lateral', 'laterals')] : []),
      ...(counts.shoot > 0 ? [counted(counts.shoot, 'shoot', 'shoots')] : []),
      ...(counts.sucker > 0 ? [counted(counts.sucker, 'sucker', 'suckers')] : []),
      leaves > 0 ? counted(leaves, 'leaf', 'leaves') : counted(buds, 'bud', 'buds'),
    ];
    return `${parts.join(', ')}.`;
  },
  table: 'Branches',
  shownAs: 'Branches shown as',
  showns: { list: 'List', table: 'Table to type in' },
  columns: { length: 'Length', side: 'Side', upright: 'Upright', thick: 'Thick', growth: 'Growth' },
  kinds: { trunk: 'trunk', scaffold: 'limb', lateral: 'lateral', shoot: 'shoot', sucker: 'sucker' },
  conditions: { live: 'live', dead: 'dead', diseased: 'sick', damaged: 'damaged' },
  figs: { yes: 'carries figs', no: 'no figs', untold: 'not told' },
  pins: { free: 'let the plan choose', keep: 'keep it', remove: 'take it out' },
  leafSources: {
    count: { measured: 'counted', estimated: 'estimated' },
    midrib: { measured: 'measured', estimated: 'estimated' },
  },
  add: 'Add a branch',
  addOn: (name: string) => `Add a branch on ${name}`,
  adding: (name: string) => `New branch on ${name}`,
  addNow: 'Add it',
  notNow: 'Do not add',
  leaves: (n: number) => counted(n, 'leaf', 'leaves'),
  buds: (n: number) => counted(n, 'bud', 'buds'),
  fields: {
    name: 'Name',
    namePlaceholder: 'Named after its side if left empty',
    kind: 'Kind',
    on: 'Grows on',
    at: 'Along it, from its base',
    length: 'Length',
    side: 'Side, clockwise from north',
    upright: 'Angle from upright',
    base: 'Thick at base',
    tip: 'Thick at tip',
    condition: 'Condition',
    leaves: 'Leaves',
    leavesFrom: 'The leaves were',
    midrib: 'Leaf size: midrib, mid-shoot',
    midribFrom: 'The size was',
    buds: 'Buds',
    figs: 'Figs on it',
    pin: 'In the plan',
  },
  hint: 'A new side or angle turns all that grows on the branch with it. A new length stretches the branch alone.',
  trunk: 'The trunk',
} as const;
