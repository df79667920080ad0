/** A tree file with the weather of an hourly weather file in place of its own. */
import { climateFromEpw } from './climateFromEpw.ts';
import type { TreeFile } from './treeFile.ts';

export type WeatherTaken =
  | { readonly ok: true; readonly file: TreeFile; readonly notes: readonly string[] }
  | { readonly ok: false; readonly reason: string; readonly where: string };

/** Farther north or south than this the hours of sun are others: our choice, half an hour of day length at 50 degrees. */
const farthestDeg = 4;
/** Worth a word: another valley or another height has other weather. Our choice. */
const [tellFromKm, tellFromM] = [50, 200] as const;

const rad = Math.PI / 180;
const earthKm = 6371;

/** Great circle, by the half-angle formula. */
function distanceKm(a: Place, b: Place): number {
  const across = Math.sin(((b.longitudeDeg - a.longitudeDeg) * rad) / 2) ** 2;
  const along = Math.sin(((b.latitudeDeg - a.latitudeDeg) * rad) / 2) ** 2;
  const half = along + Math.cos(a.latitudeDeg * rad) * Math.cos(b.latitudeDeg * rad) * across;
  return 2 * earthKm * Math.asin(Math.min(1, Math.sqrt(half)));
}

type Place = Pick<TreeFile['site'], 'latitudeDeg' | 'longitudeDeg'>;

/**
 * Temperatures and light come from the weather file; the dates of frost stay the tree's own, for a weather file has those of
 * one year only. Refuses a file of a place too far north or south, and one that cannot be read.
 */
export function withEpw(file: TreeFile, text: string): WeatherTaken {
  const read = climateFromEpw(text);
  if (!read.ok) return read;
  const { climate, place } = read;
  const { site } = file;
  if (Math.abs(place.latitudeDeg - site.latitudeDeg) > farthestDeg) {
    return {
      ok: false,
      where: 'line 1',
      reason: `The weather is of a place at latitude ${place.latitudeDeg}°, the tree stands at ${site.latitudeDeg}°: the sun keeps other hours there. Use a file of a place nearer to it.`,
    };
  }
  const km = Math.round(distanceKm(site, place));
  const higherM = Math.round(place.elevationM - site.elevationM);
  const notes = [
    ...(km >= tellFromKm ? [`The weather is of a place ${km} km away.`] : []),
    ...(Math.abs(higherM) >= tellFromM
      ? [
          `The weather is of a place ${Math.abs(higherM)} m ${higherM > 0 ? 'higher' : 'lower'} than the tree.`,
        ]
      : []),
    ...read.notes,
  ];
  return { ok: true, file: { ...file, site: { ...site, climate } }, notes };
}
