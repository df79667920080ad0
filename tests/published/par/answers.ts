/** Photons for plants, by our code. */
import { parMolPerMJ, parOfSpectrum, photonsUmolPerJ } from '../../../src/season/par.ts';
import type { Monthly } from '../../../src/season/site.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };
import spectrum from './spectrum.json' with { type: 'json' };

const all = (value: number): Monthly => [
  value,
  value,
  value,
  value,
  value,
  value,
  value,
  value,
  value,
  value,
  value,
  value,
];
/** The sun shines from rise to set on every day of the year: no normal is brighter. */
export const cloudless = {
  latitudeDeg: 40,
  longitudeDeg: 13.7,
  climate: { source: 'guess', meanC: all(18), minC: all(11), sunshineH: all(24) },
} as const;

const published: readonly PublishedCase[] = cases;
/** What has no value to meet. */
export const bands = published.filter((c) => c.tolerance === null);

export const par: CaseTable = {
  cases: published.filter((c) => c.tolerance !== null),
  answers: {
    'par.hcn': () => photonsUmolPerJ(550),
    'par.am15': () => {
      const wavelengths = spectrum.irradianceWM2Nm.map((_, i) => spectrum.firstNm + i);
      const { parWM2, parUmolM2S } = parOfSpectrum(wavelengths, spectrum.irradianceWM2Nm);
      const total = spectrum.totalWM2;
      return [total, parWM2, parWM2 / total, parUmolM2S, parUmolM2S / parWM2, parUmolM2S / total];
    },
    'par.faustlogan': () => parMolPerMJ * 0.0036,
    'par.mccree': () => {
      const wavelengths = spectrum.irradianceWM2Nm.map((_, i) => spectrum.firstNm + i);
      const { parWM2, parUmolM2S } = parOfSpectrum(wavelengths, spectrum.irradianceWM2Nm);
      return parUmolM2S / parWM2;
    },
  },
};
