/** The handles of the selected branch, over the stage, while the hand draws. */
import { useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { axisOf } from '../../../editor/edit.ts';
import { type HandlePlaces, handlePlaces, outFrom } from '../../../editor/pull/handlePlaces.ts';
import { branchOf } from '../../../editor/selection.ts';
import type { StageEye } from '../../scene/stageModel.ts';
import { useSelected, useShownFile, useView, useWorkbench } from '../../state/workbench.ts';
import { type Handle, handlesOf, holdsOf, pullBy, pullByKeys, reaches, roomIn } from './handleLayout.ts';
import { LiveLabel } from './LiveLabel.tsx';
import { useHandle } from './useHandle.ts';
import { useTools } from './useTools.ts';
import { handleWords as words } from './words.ts';

type Xy = readonly [x: number, y: number];
type Holds = ReadonlyMap<string, Xy>;

const reach = matchMedia('(pointer: coarse)').matches ? reaches.touch : reaches.fine;

export function Handles() {
  const { eye, draws, marks } = useWorkbench();
  const { hand, draftFrame } = useView();
  const isMarking = useStore(marks.store, (state) => state.isOn);
  // A stroke has the stage for itself.
  const isStroke = useStore(draws.store, ({ isAgain, stroke }) => isAgain || stroke !== null);
  const file = useShownFile();
  const id = branchOf(file, useSelected());
  const now = useStore(eye, (state) => state.now);
  const places = useMemo(() => (id === null ? null : handlePlaces(file, id)), [file, id]);
  if (
    isMarking ||
    isStroke ||
    hand !== 'draw' ||
    draftFrame !== null ||
    id === null ||
    now === null ||
    places === null
  )
    return null;
  return <HandlesOf key={id} id={id} places={places} eye={now} />;
}

interface HandlesOfProps {
  readonly id: string;
  readonly places: HandlePlaces;
  readonly eye: StageEye;
}

function HandlesOf({ id, places, eye }: HandlesOfProps) {
  const file = useShownFile();
  const axis = axisOf(file, id);
  const { name } = axis;
  const handles = handlesOf(places, eye);
  // While one is held, all stay where they were beside their places.
  const [frozen, setFrozen] = useState<Holds | null>(null);
  const { tools, measure } = useTools(eye);
  const holds = frozen ?? holdsOf(handles, roomIn(eye.size), reach, tools);
  const shown = handles.filter(({ key }) => holds.has(key));
  return (
    <div ref={measure} className="handles" role="group" aria-label={words.handles(name)}>
      <Lines handles={shown} holds={holds} places={places} eye={eye} />
      <p id="handle-keys" className="unseen">
        {words.keys}
      </p>
      {shown.map((handle) => (
        <Grip
          key={handle.key}
          id={id}
          handle={handle}
          hold={holdAt(handle, holds)}
          eye={eye}
          name={words.handle(handle.kind, handle.nth, name)}
          onHeld={(isHeld) => setFrozen(isHeld ? holds : null)}
        />
      ))}
      <LiveLabel
        axis={axis}
        places={places}
        eye={eye}
        holds={shown.map((handle) => holdAt(handle, holds))}
        tools={tools}
      />
    </div>
  );
}

/** Where a handle is taken hold of. */
function holdAt({ key, at }: Handle, holds: Holds): Xy {
  const [dx, dy] = holds.get(key) ?? [0, 0];
  return [at[0] + dx, at[1] + dy];
}

interface GripProps {
  readonly id: string;
  readonly handle: Handle;
  /** Where it is taken hold of. */
  readonly hold: Xy;
  readonly eye: StageEye;
  readonly name: string;
  readonly onHeld: (isHeld: boolean) => void;
}

function Grip({ id, handle, hold: [left, top], eye, name, onHeld }: GripProps) {
  const { pulls } = useWorkbench();
  // A pull is told from where it was taken hold of, whatever has moved since.
  const start = useRef({ handle, eye });
  const finish = (act: () => void) => {
    act();
    onHeld(false);
  };
  const events = useHandle({
    begin: () => {
      start.current = { handle, eye };
      pulls.begin(id);
      onHeld(true);
    },
    drag: (dx, dy) => pulls.to(pullBy(start.current.handle, start.current.eye, dx, dy)),
    step: (right, upwards) => pulls.to(pullByKeys(start.current.handle, start.current.eye, right, upwards)),
    keep: () => finish(pulls.keep),
    drop: () => finish(pulls.drop),
  });
  return (
    <button
      type="button"
      className="grip"
      data-handle={handle.key}
      aria-label={name}
      aria-describedby="handle-keys"
      style={{ left, top, width: reach.hitPx, height: reach.hitPx }}
      {...events}
    />
  );
}

interface LinesProps {
  readonly handles: readonly Handle[];
  readonly holds: Holds;
  readonly places: HandlePlaces;
  readonly eye: StageEye;
}

/** The ring round the parent, and from each place the way to where it is taken hold of. */
function Lines({ handles, holds, places, eye }: LinesProps) {
  const round = handles.find(({ kind }) => kind === 'round');
  const ring =
    round === undefined || places.parent === null
      ? []
      : places.parent.round.flatMap((out) => {
          const pixel = eye.project(outFrom(places.base, out, round.radiusM));
          return pixel === null ? [] : [`${pixel[0].toFixed(1)},${pixel[1].toFixed(1)}`];
        });
  return (
    <svg className="handle-lines" aria-hidden="true">
      <polygon className="handle-ring" points={ring.join(' ')} />
      {handles.map((handle) => {
        const { key, kind, at, from } = handle;
        return (
          <g key={key} data-kind={kind}>
            <path
              className="handle-way"
              d={`M${from.join(' ')}L${at.join(' ')}L${holdAt(handle, holds).join(' ')}`}
            />
            <circle className="handle-place" cx={at[0]} cy={at[1]} r={7} />
          </g>
        );
      })}
    </svg>
  );
}
