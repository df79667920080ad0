/** The page docs/plans.md. */
import { judge, mean, type Row, type Verdict } from './judge.ts';
import { type TableTree, tableTrees } from './trees.ts';

const head = `# Plans beside what else might be done

Made by \`npm run plans\`; do not edit. Ripe figs of the main crop, one season, as the model counts them ([model.md](model.md), 8.3). Each plan is
made as the command makes it, and then judged in eight worlds of (9.10) that it never saw: other leaves and rays, other errors of the sketch, another
year. Every rival is judged in the same worlds, each time on the crown that its own cuts would grow. The rivals but the first do the plan's
other work too (dead and sick wood, suckers, crossing wood, buds below the fork, tips) and thin in a way of their own: as many as the plan takes,
drawn by chance (twelve draws), the same but for the growth that ends a branch, as many at even steps along each branch from its end, and all that sets out
towards the trunk, however many that is.

"Ahead" is the plan less the rival, pair by pair in one world: the mean, and from the least to the most of the pairs. The model judges itself here: this
says how well the search finds what the model calls good in worlds that it did not see, not that a real tree would agree.

## Where the plan does not win, and why

- **Wood that goes for its health, and limits that are kept for the tree's sake, cost figs this year.** The old fig loses dead, sick, crossing and narrow wood and its
  suckers, a fifth of its figs, against doing nothing; the plan says so in a remark.
- **Late in a pot, which shoots go hardly matters.** The potted fig in leaf sets twice what its pot feeds, whatever goes: fewer figs help, and any quarter of the shoots does. The
  plan spares the end of each branch (9.3: one fig is asked for it), chance does not. In four worlds of (9.10), eight draws: the plan 37.5 figs, chance 37.9, chance that spares the
  ends 37.5, nothing done 36.2.
- **Where branches are short, the plan keeps the end of each and little else.** That is what even steps from the end give when as few are kept: the two are then one and the same.
- **Over the worlds, what a pot feeds and the year weigh more than which shoots go.** In the one year and pot it was made for, the plan of the potted fig at bud break brings a third more than doing
  nothing; over the worlds 1.8 figs, and fewer in three of eight (where the pot feeds many figs). The whip, in a cool place, ripens hardly more with its plan than without: it gives up its low shoots for a trunk.
- **Where nothing needs taking** there is nothing to win.
- **Seeking in several worlds at once does not help.** The set was sought anew from the plan's, for the mean worth over 4 and over 8 worlds of the plan's own seed, regrown until it
  stood, and both were judged in 16 worlds that neither saw: potted fig in leaf +0.3 and +0.3 figs (standard error 0.4, ten shoots other than the plan's), potted fig at bud break none (the very same
  set), old fig +0.5 and +0.5 of 107 (0.3). For this the search takes as long again as a whole plan. So the plan is sought in one world, and the worlds only say how sure it is.

The figs of the rows by chance are means over twelve pairs, in which some worlds come twice: compare them by "ahead" alone.
`;

export function plansPage(tell: (name: string) => void): string {
  const parts = tableTrees().map((tree) => {
    tell(tree.name);
    return partOf(tree, judge(tree.file));
  });
  return `${head}\n${parts.join('\n')}`;
}

function partOf({ name }: TableTree, verdict: Verdict): string {
  const { figs, shoots, free, taken, otherCuts, rows } = verdict;
  const plan = `The plan takes ${taken} of ${free} ${free === 1 ? 'shoot' : 'shoots'} to choose from, and makes ${otherCuts} other ${otherCuts === 1 ? 'cut' : 'cuts'}.`;
  const table = [
    '| | shoots | ripe figs | ahead by | from, to | pairs won |',
    '|---|---:|---:|---:|---:|---:|',
    `| **the plan** | ${round(shoots)} | **${figs.toFixed(1)}** | | | |`,
    ...rows.map(lineOf),
  ];
  return `## ${name}\n\n${plan}\n\n${table.join('\n')}\n`;
}

function lineOf({ rival, shoots, figs, ahead }: Row): string {
  const won = ahead.filter((by) => by > 0.05).length;
  const cells = [
    rival,
    round(shoots),
    figs.toFixed(1),
    signed(mean(ahead)),
    `${signed(Math.min(...ahead))}, ${signed(Math.max(...ahead))}`,
    `${won} of ${ahead.length}`,
  ];
  return `| ${cells.join(' | ')} |`;
}

const round = (value: number): string =>
  Math.abs(value - Math.round(value)) < 0.05 ? value.toFixed(0) : value.toFixed(1);

const signed = (value: number): string => {
  const text = Math.abs(value).toFixed(1);
  return text === '0.0' ? '0.0' : `${value < 0 ? '−' : '+'}${text}`;
};
