/** The tree with its light, its ghosts and its marks. */
import { useFrame, useThree } from '@react-three/fiber';
import { useLayoutEffect, useMemo } from 'react';
import { stanceOf } from '../../document/views.ts';
import { Beacon } from './Beacon.tsx';
import { Buds } from './Buds.tsx';
import { CutMarks } from './CutMarks.tsx';
import { dormantBuds } from './dormantBuds.ts';
import { Ghost } from './Ghost.tsx';
import { Leaves } from './Leaves.tsx';
import type { LeafLook } from './leafColours.ts';
import { LeafSlice } from './leafSlice.ts';
import { Outline } from './Outline.tsx';
import { ownerOf, ownersIn } from './owner.ts';
import { Pointer } from './Pointer.tsx';
import { Probe } from './Probe.tsx';
import { Swept } from './Swept.tsx';
import type { StageProps } from './stageModel.ts';
import { pickTargets } from './targets.ts';
import { useEye } from './useEye.ts';
import { Wood } from './Wood.tsx';
import { woodColours } from './woodColours.ts';

export interface TreeProps {
  readonly stage: Omit<StageProps, 'ref' | 'children'>;
  readonly standing: Uint8Array;
  readonly fine: boolean;
}

export function Tree({ stage, standing, fine }: TreeProps) {
  const { canopy, file, colours, shares, shareKind, stale, scale, selectedId, hoveredId, marks, spotlight } =
    stage;
  const { fadeFrom } = stage.inside;
  const selected = useMemo(() => ownerOf(canopy, selectedId), [canopy, selectedId]);
  const hovered = useMemo(() => ownerOf(canopy, hoveredId), [canopy, hoveredId]);
  const look = useMemo(
    (): LeafLook => ({
      shares,
      kind: shareKind,
      stale,
      scale,
      selected,
      hovered,
      spotlit: spotlight === null ? null : ownersIn(canopy, spotlight),
      fadeFrom,
      plant: colours.plant,
      paper: colours.paper,
      lit: colours.lit,
      shade: colours.shade,
    }),
    [canopy, shares, shareKind, stale, scale, selected, hovered, spotlight, fadeFrom, colours],
  );
  const barks = useMemo(() => woodColours(canopy, file, colours), [canopy, file, colours]);
  const buds = useMemo(() => dormantBuds(file, canopy), [file, canopy]);
  const targets = useMemo(() => pickTargets(canopy, standing, buds), [canopy, standing, buds]);
  const slice = useSlice(stage);
  const eye = useEye(targets, slice);
  return (
    <>
      <Leaves canopy={canopy} standing={standing} look={look} slice={slice} fine={fine} />
      <Wood canopy={canopy} standing={standing} colours={barks} fine={fine} />
      <Buds buds={buds} selectedId={selectedId} hoveredId={hoveredId} colours={colours} />
      <Ghost canopy={canopy} standing={standing} colour={colours.cut} />
      {selected > 0 && (
        <Outline canopy={canopy} owner={selected} colour={colours.select} widthPx={2.2} woodExtraM={0.004} />
      )}
      {hovered > 0 && hovered !== selected && (
        <Outline canopy={canopy} owner={hovered} colour={colours.select} widthPx={1} woodExtraM={0.0025} />
      )}
      {stage.swept === null ? null : <Swept canopy={canopy} ids={stage.swept} colour={colours.cut} />}
      {stage.beacon === null ? null : <Beacon at={stage.beacon} colours={colours} />}
      <CutMarks marks={marks} colours={colours} />
      <Probe eye={eye} />
      <Pointer eye={eye} pencil={stage.pencil} onSelect={stage.onSelect} onHover={stage.onHover} />
    </>
  );
}

/** Leaves out what the stage is told to, turned to the eye in every picture. */
function useSlice({ inside, file }: TreeProps['stage']): LeafSlice {
  const slice = useMemo(() => new LeafSlice(), []);
  const { foot } = useMemo(() => stanceOf(file), [file]);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    slice.set(inside);
    invalidate();
  }, [slice, inside, invalidate]);
  useFrame(({ camera }) => slice.turnTo(camera, foot));
  return slice;
}
