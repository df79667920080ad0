/** Measures of the forms a fig is trained to: where a sketch begins. They are no settings of a tree file. */
import type { Parameter } from '../parameter.ts';

const practice = 'common practice, no publication pinned';
const memory = 'from memory';
const ourChoice = 'our choice';
const subtropical =
  'Extension article on fig training in the subtropics, Brazil: single stem headed at 50 cm, shoots from 30 cm up, three arms, stubs of 10-15 cm; text seen';
const basics =
  'Oregon State University Extension 2012, Pruning basics: strong forks near 45 degrees; text seen';
const wall =
  'Magazine article on fan-training of fig, UK, August 2017: single stem cut at 40 cm, wall of 3-5 m; text seen';
const limbHeight =
  'Hosomi, Miwa & Mano 2013, J. Japan. Soc. Hort. Sci. 82:215 (40 cm as the control; abstract seen); Hyogo Prefectural Technology Center (60 cm customary, 120-180 cm freeze less; summary seen)';
const aichi =
  'Aichi Agricultural Research Center 1995, form and diagnosis of straight-line trained fig, 16 orchards: 100-150 cm at the end of July; summary seen';
const branches =
  'Caetano et al. 2005, Rev. Bras. Frutic. 27(3): best of 16-32 at 24; green-fig trials in Brazil 2006 and 2011: 8-12 under cover, 21 in the open; abstracts seen';

const measure = (
  name: string,
  [min, value, max]: readonly [min: number, value: number, max: number],
  unit: string,
  source: string,
  confidence: Parameter['confidence'],
): Parameter => ({ name, value, min, max, unit, source, confidence, adjustable: true });

export const figForms = {
  vaseTrunk: measure('Trunk of an open vase', [25, 50, 75], 'cm', `${subtropical}; ${memory}`, 'high'),
  stemTrunk: measure('Trunk of a potted single stem', [25, 45, 75], 'cm', practice, 'medium'),
  stubTrunk: measure('Trunk of a hard-pruned vase', [30, 40, 50], 'cm', subtropical, 'medium'),
  bushTrunk: measure('Stump of a bush with many stems', [3, 8, 20], 'cm', practice, 'medium'),
  fanTrunk: measure('Trunk of a fan', [30, 40, 50], 'cm', wall, 'medium'),
  cordonTrunk: measure('Height of the arms of a cordon', [40, 50, 180], 'cm', limbHeight, 'high'),
  lowTrunk: measure('Height of the arms of a knee-high cordon', [30, 40, 50], 'cm', practice, 'medium'),
  bareTrunk: measure('Height of a bare stem', [20, 90, 200], 'cm', ourChoice, 'low'),
  scaffolds: measure('Scaffolds', [3, 3, 5], 'scaffolds', `${subtropical}; ${memory}`, 'high'),
  stems: measure(
    'Stems of a bush',
    [3, 5, 8],
    'stems',
    'Texas A&M AgriLife Extension 2013, figs; common practice',
    'medium',
  ),
  arms: measure('Arms of a cordon', [1, 2, 2], 'arms', practice, 'medium'),
  stubArms: measure('Arms of a hard-pruned vase', [3, 3, 4], 'arms', subtropical, 'medium'),
  scaffoldUpright: measure(
    'Angle of a scaffold from upright at its base',
    [35, 50, 65],
    'degrees',
    `${basics}; ${memory}`,
    'medium',
  ),
  scaffoldGap: measure('Height between two scaffolds', [8, 12, 20], 'cm', memory, 'medium'),
  laterals: measure(
    'Laterals on a scaffold',
    [0, 2, 4],
    'laterals',
    `2 to 3 ${memory}, wider ${ourChoice}`,
    'medium',
  ),
  ribs: measure('Ribs on each side of a fan, its arm not counted', [2, 3, 4], 'ribs', practice, 'medium'),
  doublings: measure(
    'Times the arms were doubled',
    [0, 2, 3],
    'winters',
    `${subtropical}: three arms become 6, 12, 24`,
    'high',
  ),
  stub: measure('Stub left of a shoot', [10, 12, 15], 'cm', subtropical, 'high'),
  shoots: measure(
    'Shoots on a tree',
    [0, 24, 96],
    'shoots',
    `3 to 10 on each scaffold are kept by ${practice}; a tree that nobody thinned has more, ${ourChoice}`,
    'low',
  ),
  stubShoots: measure('Shoots on a hard-pruned vase', [0, 18, 48], 'shoots', branches, 'high'),
  shootGap: measure(
    'Upright shoots along the arms of a cordon',
    [10, 20, 25],
    'cm',
    `${practice}; ${memory}`,
    'medium',
  ),
  shootLength: measure('Shoot of a potted tree', [10, 50, 150], 'cm', practice, 'low'),
  sideShootLength: measure('Side shoot of a fan, stopped in summer', [10, 30, 100], 'cm', practice, 'low'),
  uprightShootLength: measure('Upright shoot of a cordon', [30, 125, 150], 'cm', aichi, 'high'),
  vaseSpread: measure('Spread of an open vase', [60, 200, 350], 'cm', ourChoice, 'low'),
  stemSpread: measure('Spread of a potted single stem', [40, 120, 250], 'cm', ourChoice, 'low'),
  stubSpread: measure('Spread of the arms of a hard-pruned vase', [40, 100, 200], 'cm', ourChoice, 'low'),
  bushSpread: measure('Spread of a bush', [60, 180, 350], 'cm', ourChoice, 'low'),
  fanSpread: measure('Width of a fan', [120, 300, 500], 'cm', `${wall}; young ones ${ourChoice}`, 'medium'),
  armLength: measure(
    'Arm of a cordon',
    [80, 150, 400],
    'cm',
    `Hyogo Prefectural Technology Center, summary seen; ${memory}`,
    'medium',
  ),
  branchAreaExponent: measure(
    'Power in the rule of branch areas: thickness to this power adds up at a fork',
    [1.8, 2, 2.3],
    '-',
    'Eloy 2011, Physical Review Letters 107:258101 (arXiv 1105.2591): 1.8 to 2.3 in the data; abstract seen. No fig was measured',
    'medium',
  ),
} as const satisfies Record<string, Parameter>;
