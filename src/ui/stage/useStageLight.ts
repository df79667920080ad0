/** Which light the stage shows: of the season, a month, or of the tree after the ticked cuts. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { NodeLight } from '../../engine/reports.ts';
import { shootRows } from '../sheets/light/figures.ts';
import { useFile, usePreferences, useView, useWorkbench } from '../state/workbench.ts';

interface StageLight {
  readonly lightOf: ReadonlyMap<string, number>;
  readonly nodeLight: readonly NodeLight[] | undefined;
  readonly stale: boolean;
}

export function useStageLight(): StageLight {
  const { light, plan } = useWorkbench();
  const file = useFile();
  const { sheet } = usePreferences();
  const { month } = useView();
  const { answer, months, file: litFile } = useStore(light.store);
  const { trial, isTrying, file: plannedFile } = useStore(plan.store);
  const isAfterCuts = sheet === 'work' && trial !== null && plannedFile === file;
  return useMemo(() => {
    if (isAfterCuts) {
      const lightOf = new Map(trial.shoots.map((shoot) => [shoot.id, shoot.lightFraction]));
      return { lightOf, nodeLight: trial.nodes, stale: isTrying };
    }
    if (answer === null) return { lightOf: new Map(), nodeLight: undefined, stale: false };
    const shownMonth = sheet === 'light' ? month : null;
    const weighed = shownMonth === null ? null : (months.get(shownMonth) ?? null);
    const rows = shootRows(answer.report, shownMonth, weighed?.report ?? null);
    return {
      lightOf: new Map(rows.map((row) => [row.id, row.lightFraction])),
      nodeLight: shownMonth === null ? answer.nodes : weighed?.nodes,
      stale: litFile !== file,
    };
  }, [isAfterCuts, trial, isTrying, answer, months, month, sheet, litFile, file]);
}
