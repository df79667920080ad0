/** All published cases, in the order of the page. */
import { type AccuracyPart, accuracyText } from './accuracyTable.ts';
import { canopy } from './canopy/answers.ts';
import type { CaseTable } from './caseTable.ts';
import { closed } from './closed/answers.ts';
import { leafoptics } from './leafoptics/answers.ts';
import { bands, par } from './par/answers.ts';
import { radiation } from './radiation/answers.ts';
import { sampling } from './sampling/answers.ts';
import { sky } from './sky/answers.ts';
import { sun } from './sun/answers.ts';
import { viewfactors } from './viewfactors/answers.ts';

const part = (title: string, table: CaseTable): AccuracyPart => ({ title, ...table, bands: [] });

export const accuracyParts: readonly AccuracyPart[] = [
  part('Sun', sun),
  part('Radiation', radiation),
  { ...part('Photons', par), bands },
  part('Sky', sky),
  part('View factors', viewfactors),
  part('Canopies and shade', canopy),
  part('Leaves', leafoptics),
  part('Closed forms', closed),
  part('Sampling', sampling),
];

export const accuracyPage = (): string => accuracyText(accuracyParts);
