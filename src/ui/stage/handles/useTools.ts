/** Where the tools of the stage lie over the picture, measured once they are drawn. */
import { useCallback, useState } from 'react';
import type { StageEye } from '../../scene/stageModel.ts';
import { usePreferences, useView } from '../../state/workbench.ts';
import type { Room } from './handleLayout.ts';

/** What a handle or the figures must not lie under. */
const toolSelector = [
  '.views button',
  '.stage-tools button',
  '.second-view button',
  '.inside > summary',
  '.work-tools',
].join();

function toolsOn(stage: Element): readonly Room[] {
  const { left: x, top: y } = stage.getBoundingClientRect();
  return [...stage.querySelectorAll(toolSelector)].map((tool) => {
    const { left, top, right, bottom } = tool.getBoundingClientRect();
    return { left: left - x, top: top - y, right: right - x, bottom: bottom - y };
  });
}

/** `measure` is the ref of what lies on the stage: it is called anew whenever tools may have come, gone or moved. */
export function useTools({ size: { width, height } }: StageEye) {
  const { isSecondOpen } = useView();
  const { theme, sheet } = usePreferences();
  const [tools, setTools] = useState<readonly Room[]>([]);
  const shape = [width, height, isSecondOpen, theme, sheet].join();
  const measure = useCallback(
    (layer: Element | null) => {
      const stage = shape === '' ? null : layer?.closest('.stage');
      if (stage !== null && stage !== undefined) setTools(toolsOn(stage));
    },
    [shape],
  );
  return { tools, measure };
}
