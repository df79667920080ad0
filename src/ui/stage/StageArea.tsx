/** The tree, with what is laid over it: the legend, the sides to look from, undo and redo. */
import { Component, lazy, type ReactNode, Suspense, useCallback, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { CommandButton } from '../frame/CommandButton.tsx';
import { frameWords as words } from '../frame/words.ts';
import { stageColours } from '../scene/stageColours.ts';
import type { StageEye } from '../scene/stageModel.ts';
import { usePreferences, useSelected, useShownFile, useView, useWorkbench } from '../state/workbench.ts';
import { Chooser } from './drawing/Chooser.tsx';
import { Drawing } from './drawing/Drawing.tsx';
import { DrawTools } from './drawing/DrawTools.tsx';
import { usePencil } from './drawing/usePencil.ts';
import { drawnCanopy } from './drawnCanopy.ts';
import { HandToggle } from './HandToggle.tsx';
import { Handles } from './handles/Handles.tsx';
import { Inside } from './Inside.tsx';
import { Legend } from './Legend.tsx';
import { Marking } from './marking/Marking.tsx';
import { useBrush } from './marking/useBrush.ts';
import { SecondView } from './SecondView.tsx';
import { isSide } from './secondPicture.ts';
import { useSeeInside } from './seeInside.ts';
import { pointOfNode } from './skyPlace.ts';
import { sunViewOf } from './sunView.ts';
import { useCutView } from './useCutView.ts';
import { useLightScale } from './useLightScale.ts';
import { useStageLight } from './useStageLight.ts';
import { Views } from './Views.tsx';
import { WorkTools } from './WorkTools.tsx';

/** On its way while the rest of the page starts. */
const stageModule = import('../scene/Stage.tsx');
const Stage = lazy(async () => ({ default: (await stageModule).Stage }));

const isStill = matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Whatever goes wrong in the picture must not take the sheets with it. */
class PictureGuard extends Component<{ readonly children: ReactNode }, { readonly hasFailed: boolean }> {
  override state = { hasFailed: false };
  static getDerivedStateFromError = () => ({ hasFailed: true });
  override render() {
    return this.state.hasFailed ? <NoPicture /> : this.props.children;
  }
}

function NoPicture() {
  return <p className="stage-message">{words.noPicture}</p>;
}

export function StageArea() {
  return (
    <section className="stage" aria-label="The tree">
      <PictureGuard>
        <Suspense fallback={<p className="stage-message">{words.pictureLoading}</p>}>
          <Picture />
        </Suspense>
      </PictureGuard>
      <Legend />
      <SecondView />
      <Handles />
      <Drawing />
      <Marking />
      <Chooser />
      <Inside />
      <WorkTools />
      <Views />
      <div className="stage-tools">
        <DrawTools />
        <HandToggle />
        <div className="undo-redo">
          <CommandButton id="undo" />
          <CommandButton id="redo" />
        </div>
      </div>
    </section>
  );
}

/** The node whose sky is on the sheet, as answered: it appears together with its picture. */
function useBeacon(canopy: Canopy, isSky: boolean): Vec3 | null {
  const { look } = useWorkbench();
  const { answer } = useStore(look.sky);
  return useMemo(
    () => (isSky && answer !== null ? pointOfNode(canopy, answer) : null),
    [canopy, isSky, answer],
  );
}

/** Keeps where the eye stands for all that lies over the picture. */
function useTellEye(): (now: StageEye | null) => void {
  const { eye } = useWorkbench();
  return useCallback(
    (now: StageEye | null) =>
      eye.setState(({ lastSide }) => ({
        now,
        lastSide: now !== null && isSide(now.side) ? now.side : lastSide,
      })),
    [eye],
  );
}

function Picture() {
  const { editor, view, stage, marks } = useWorkbench();
  const tellEye = useTellEye();
  const file = useShownFile();
  const selectedId = useSelected();
  const { units, theme, sheet } = usePreferences();
  const { draft, draftFrame, hoveredId, sunDate, sunHour, isWorkBare, isFromSun, lookingAt } = useView();
  const isDay = sheet === 'light' && lookingAt === 'day';
  const isSky = sheet === 'light' && lookingAt === 'sky';
  const inLeaf = sheet === 'light' || (sheet === 'work' && !isWorkBare);
  // The camera frames a tree by its name.
  const framed = useMemo(
    () => (draftFrame === null ? file : { ...file, id: `${file.id} ${draftFrame}` }),
    [file, draftFrame],
  );
  const canopy = drawnCanopy(file, inLeaf ? 'in full leaf' : 'as sketched');
  const widest = useCallback(() => drawnCanopy(file, 'in full leaf'), [file]);
  const beacon = useBeacon(canopy, isSky);
  const scale = useLightScale();
  const sun = useMemo(
    () => sunViewOf(sunDate ?? file.season.sketchedOn, file.site, sunHour),
    [file.site, file.season.sketchedOn, sunDate, sunHour],
  );
  const { shares, shareKind, age, spotlight } = useStageLight(canopy);
  const pen = usePencil();
  const brush = useBrush();
  const swept = useStore(marks.store, (state) => state.under);
  const inside = useSeeInside();
  const cuts = useCutView(canopy);
  return (
    <Stage
      ref={stage}
      canopy={canopy}
      widest={widest}
      file={framed}
      shares={shares}
      shareKind={shareKind}
      spotlight={spotlight}
      inside={inside}
      beacon={beacon}
      fromSun={isFromSun && isDay}
      stale={age !== 'current'}
      scale={scale}
      gone={cuts.gone}
      marks={cuts.marks}
      selectedId={draftFrame === null ? selectedId : null}
      hoveredId={hoveredId}
      onSelect={(id, node, doubt) => {
        if (draft !== null) return;
        editor.select(id);
        view.setState({ doubt: doubt.among.length > 0 ? doubt : null });
        if (isSky && id !== null && node !== null) view.setState({ skyAt: { shootId: id, node } });
      }}
      onHover={(id) => view.setState({ hoveredId: id })}
      pencil={brush ?? pen}
      swept={swept}
      sun={sun}
      units={units}
      quality="auto"
      colours={stageColours[theme]}
      still={isStill}
      onEye={tellEye}
      label={`${file.name}, in three dimensions. The sheets hold the same in words and figures.`}
    >
      <NoPicture />
    </Stage>
  );
}
