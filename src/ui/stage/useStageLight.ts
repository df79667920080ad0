/** Which light the stage shows: of the season, a month or a moment, or of the tree after the ticked cuts. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Canopy } from '../../growth/canopy.ts';
import type { ShareKind } from '../scene/leafColours.ts';
import { shootRows } from '../sheets/light/figures.ts';
import { heightsIn, spotlitShoots } from '../state/spotlight.ts';
import { usePreferences, useShownFile, useView, useWorkbench } from '../state/workbench.ts';
import { momentOf, stepAt } from './dayMoment.ts';
import { type KnownLight, leafShares } from './leafShares.ts';
import { useShownLight } from './useShownLight.ts';

interface StageLight {
  readonly shares: Float32Array;
  readonly shareKind: ShareKind;
  readonly age: LightAge;
  readonly spotlight: ReadonlySet<string> | null;
}

/** Of exactly what is drawn, of that tree a moment ago, or not there yet. */
export type LightAge = 'current' | 'a moment ago' | 'on its way';

const unknown: KnownLight = { shoots: new Map(), nodes: [], leaves: [] };

export function useStageLight(canopy: Canopy): StageLight {
  const { sheet } = usePreferences();
  const { colouring, spotlight, lookingAt } = useView();
  const season = useKnownLight();
  const { light, kind, age } = useLightInSight(season);
  const { known, heights } = season;
  const spotlit = useMemo(
    // On a day every leaf is of interest: whether it is lit or what shades it.
    () =>
      spotlight === null || sheet !== 'light' || lookingAt === 'day'
        ? null
        : spotlitShoots(spotlight, known.shoots, heights),
    [spotlight, sheet, lookingAt, known, heights],
  );
  const by = light === known ? colouring : 'node';
  const shares = useMemo(() => leafShares(canopy, light, by), [canopy, light, by]);
  return { shares, shareKind: kind, age, spotlight: spotlit };
}

/** How far the light on the stage is that of the tree on the stage. */
export const useLightAge = (): LightAge => useLightInSight(useKnownLight()).age;

/** What the open sheet calls for: the light after the ticked cuts, at a moment of a day, or over the season. */
function useLightInSight(season: SeasonLight): ShownLight & { readonly age: LightAge } {
  const trial = useTrialLight();
  const moment = useMoment();
  const shown = trial ?? moment ?? { light: season.known, stale: season.stale, kind: 'open sky' as const };
  const age = shown.light === unknown ? 'on its way' : shown.stale ? 'a moment ago' : 'current';
  return { ...shown, age };
}

interface ShownLight {
  readonly light: KnownLight;
  readonly stale: boolean;
  readonly kind: ShareKind;
}

/** The tree after the ticked cuts, while the Work sheet is open. */
function useTrialLight(): ShownLight | null {
  const { plan } = useWorkbench();
  const file = useShownFile();
  const { sheet } = usePreferences();
  const { trial, isTrying, file: plannedFile } = useStore(plan.store);
  const light = useMemo((): KnownLight | null => {
    if (trial === null) return null;
    const shoots = new Map(trial.shoots.map((shoot) => [shoot.id, shoot.lightFraction]));
    return { ...unknown, shoots, nodes: trial.nodes };
  }, [trial]);
  if (light === null || sheet !== 'work' || plannedFile !== file) return null;
  return { light, stale: isTrying, kind: 'open sky' };
}

/** What the sun falls on at the chosen time, while the Light sheet shows a day. */
function useMoment(): ShownLight | null {
  const { look } = useWorkbench();
  const file = useShownFile();
  const { sheet } = usePreferences();
  const { lookingAt, sunDate, sunHour, isFromSun } = useView();
  const { answer, file: lookedFile } = useStore(look.day);
  const light = useMemo(
    (): KnownLight | null =>
      answer === null ? null : { ...unknown, ...momentOf(answer, stepAt(answer.report.steps, sunHour)) },
    [answer, sunHour],
  );
  // From the sun all that is seen is lit: there the colours tell the light over the season.
  const isShown = sheet === 'light' && lookingAt === 'day' && !isFromSun;
  if (!isShown || answer === null || light === null || lookedFile?.id !== file.id) return null;
  const isCurrent = lookedFile === file && answer.report.date === (sunDate ?? file.season.sketchedOn);
  return { light, stale: !isCurrent, kind: 'direct sun' };
}

interface SeasonLight {
  readonly known: KnownLight;
  /** Metres above the ground by id of shoot. */
  readonly heights: ReadonlyMap<string, number>;
  readonly stale: boolean;
}

/** The light of the tree on the stage over the time chosen on the Light sheet; elsewhere over the season. */
function useKnownLight(): SeasonLight {
  const { sheet } = usePreferences();
  const { season, time: chosen, weighed, isStale } = useShownLight();
  const time = sheet === 'light' ? chosen : null;
  const known = useMemo((): KnownLight => {
    if (season === null) return unknown;
    const rows = shootRows(season.report, time, weighed?.report ?? null);
    const shown = time === null ? season : weighed;
    return {
      shoots: new Map(rows.map((row) => [row.id, row.lightFraction])),
      nodes: shown?.nodes ?? [],
      leaves: shown?.leaves ?? [],
    };
  }, [season, time, weighed]);
  const heights = useMemo(() => heightsIn(season?.report.shoots ?? []), [season]);
  return { known, heights, stale: isStale };
}
