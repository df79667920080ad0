/** Light that leaves use: photons of 400 to 700 nm, and how many come with a joule. */

/** Planck's constant x speed of light x Avogadro's number, J m mol-1 (SI 2019, exact constants). */
const hcNA = 6.626_070_15e-34 * 299_792_458 * 6.022_140_76e23;

/** Photons per joule at a wavelength, micromol J-1. */
export function photonsUmolPerJ(wavelengthNm: number): number {
  if (!(wavelengthNm > 0))
    throw new Error(`photonsUmolPerJ: a wavelength above 0 is needed, got ${wavelengthNm}`);
  return ((wavelengthNm * 1e-9) / hcNA) * 1e6;
}

/**
 * Mol of PAR per MJ of global radiation: 0.007265 mol per Wh, Faust & Logan 2018 (HortScience 53:1250). In print it runs
 * from 1.98 (reference spectrum of a clear sky, ASTM G173-03) over 2.06 (Meek and others 1984) and 2.11 (Britton & Dodd 1976) to 2.30
 * (half of the energy, 4.6 micromol per joule). One factor for sun and sky, clear and dull: the true one is
 * higher under cloud, by up to a tenth.
 */
export const parMolPerMJ = 0.007265 / 0.0036;

/** The printed band of that factor, to be shown beside every figure in mol. */
export const parMolPerMJBand = { low: 1.98, high: 2.3 } as const;

/**
 * PAR of a spectrum by the trapezium rule.
 * @param wavelengthsNm rising; stretches that leave 400 to 700 nm are left out whole
 * @param irradianceWM2Nm one for each wavelength
 */
export function parOfSpectrum(
  wavelengthsNm: readonly number[],
  irradianceWM2Nm: readonly number[],
): { readonly parWM2: number; readonly parUmolM2S: number } {
  if (wavelengthsNm.length !== irradianceWM2Nm.length || wavelengthsNm.length < 2) {
    throw new Error(
      `parOfSpectrum: as many irradiances as wavelengths, got ${irradianceWM2Nm.length} and ${wavelengthsNm.length}`,
    );
  }
  let parWM2 = 0;
  let parUmolM2S = 0;
  for (let i = 1; i < wavelengthsNm.length; i++) {
    const from = wavelengthsNm[i - 1] as number;
    const to = wavelengthsNm[i] as number;
    if (!(to > from)) throw new Error(`parOfSpectrum: wavelengths rise, got ${from} before ${to}`);
    if (from < 400 || to > 700) continue;
    const low = irradianceWM2Nm[i - 1] as number;
    const high = irradianceWM2Nm[i] as number;
    if (!(low >= 0 && high >= 0))
      throw new Error(`parOfSpectrum: irradiances are 0 or more, got ${low} and ${high}`);
    parWM2 += ((low + high) / 2) * (to - from);
    parUmolM2S += ((low * photonsUmolPerJ(from) + high * photonsUmolPerJ(to)) / 2) * (to - from);
  }
  return { parWM2, parUmolM2S };
}
