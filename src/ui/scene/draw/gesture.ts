/**
 * Who has the hand: the camera or the pencil. Pure: what pointers do goes in, what is to be done comes out. A finger draws, a second one
 * gives the picture back to the camera; once a pen was seen, the pen draws and fingers only turn the picture.
 */

export type PointerKind = 'mouse' | 'pen' | 'touch';

interface At {
  readonly pointerId: number;
  /** CSS pixels of the canvas. */
  readonly x: number;
  readonly y: number;
}

export type HandEvent =
  | (At & {
      readonly type: 'down';
      readonly pointerType: PointerKind;
      /** 0 the left button, a finger or the tip of a pen. */
      readonly button: number;
      /** There is something to draw from under it. */
      readonly isOn: boolean;
    })
  | (At & { readonly type: 'move' })
  | (At & { readonly type: 'up' })
  | { readonly type: 'cancel'; readonly pointerId: number }
  /** Escape, the page left, a context menu. */
  | { readonly type: 'stop' };

export type Effect =
  | { readonly do: 'begin'; readonly x: number; readonly y: number }
  | { readonly do: 'draw'; readonly x: number; readonly y: number }
  | { readonly do: 'keep' }
  | { readonly do: 'drop' }
  | { readonly do: 'tap'; readonly x: number; readonly y: number; readonly pointerType: PointerKind }
  /** The camera was not told of this press; it takes it over from here. */
  | { readonly do: 'navigate'; readonly pointerId: number; readonly x: number; readonly y: number };

interface Press extends At {
  readonly pointerType: PointerKind;
  readonly fromX: number;
  readonly fromY: number;
  /** What it may still become: a tap or a stroke, a tap or a turn of the camera, a stroke, a turn, or nothing. */
  readonly as: 'tap or stroke' | 'tap or turn' | 'stroke' | 'turn' | 'nothing';
}

export interface HandState {
  readonly hasPen: boolean;
  readonly presses: readonly Press[];
}

export interface HandStep {
  readonly state: HandState;
  readonly effects: readonly Effect[];
  /** The camera must not hear of this event. */
  readonly isTaken: boolean;
}

export const idleHand: HandState = { hasPen: false, presses: [] };

/** A press that moved no farther is a tap, pixels: a mouse stands stiller than a finger. Our choice. */
const stillPx = { mouse: 4, pen: 5, touch: 8 } as const;

const nothing = (state: HandState, isTaken: boolean): HandStep => ({ state, effects: [], isTaken });

const isOurs = ({ as }: Press): boolean => as === 'stroke' || as === 'tap or stroke' || as === 'nothing';

/** Whether a stroke is in hand: the wheel must not move the picture under it. */
export const isDrawing = ({ presses }: HandState): boolean => presses.some(({ as }) => as === 'stroke');

/** @param hand what the grower has chosen a hand on the stage to do */
export function handStep(state: HandState, event: HandEvent, hand: 'look' | 'draw'): HandStep {
  switch (event.type) {
    case 'down':
      return pressed(state, event, hand);
    case 'move':
      return moved(state, event);
    case 'up':
      return lifted(state, event);
    case 'cancel':
      return cancelled(state, event.pointerId);
    case 'stop':
      return stopped(state);
  }
}

type Down = HandEvent & { readonly type: 'down' };

const pressOf = ({ pointerId, x, y, pointerType }: Down, as: Press['as']): Press => ({
  pointerId,
  x,
  y,
  fromX: x,
  fromY: y,
  pointerType,
  as,
});

function pressed(before: HandState, event: Down, hand: 'look' | 'draw'): HandStep {
  const hasPen = before.hasPen || event.pointerType === 'pen';
  // A press that was never lifted, as after a lost capture, is forgotten.
  const presses = before.presses.filter(({ pointerId }) => pointerId !== event.pointerId);
  const state = { hasPen, presses };
  const withPress = (as: Press['as'], isTaken: boolean): HandStep =>
    nothing({ hasPen, presses: [...presses, pressOf(event, as)] }, isTaken);
  if (event.pointerType === 'touch') {
    if (presses.some((one) => one.pointerType !== 'touch' && isOurs(one))) return withPress('nothing', true);
    if (presses.length > 0) return secondFinger(state, event);
  }
  if (event.button !== 0) return withPress('turn', false);
  const mayDraw = hand === 'draw' && event.isOn && !(event.pointerType === 'touch' && hasPen);
  if (!mayDraw) return withPress('tap or turn', false);
  // A hand that lies on the glass as the pen comes down holds the picture no longer.
  const asleep = presses.map((one) => ({ ...one, as: 'nothing' as const }));
  return nothing({ hasPen, presses: [...asleep, pressOf(event, 'tap or stroke')] }, true);
}

/** All fingers turn the picture from here on; what was drawn is dropped. */
function secondFinger({ hasPen, presses }: HandState, event: Down): HandStep {
  const effects: Effect[] = isDrawing({ hasPen, presses }) ? [{ do: 'drop' }] : [];
  for (const one of presses) {
    if (isOurs(one)) effects.push({ do: 'navigate', pointerId: one.pointerId, x: one.x, y: one.y });
  }
  const turning = [...presses, pressOf(event, 'turn')].map((one) => ({ ...one, as: 'turn' as const }));
  return { state: { hasPen, presses: turning }, effects, isTaken: false };
}

function moved(state: HandState, { pointerId, x, y }: HandEvent & { readonly type: 'move' }): HandStep {
  const press = state.presses.find((one) => one.pointerId === pointerId);
  if (press === undefined) return nothing(state, false);
  const isStill = Math.hypot(x - press.fromX, y - press.fromY) <= stillPx[press.pointerType];
  const becomes = { 'tap or stroke': 'stroke', 'tap or turn': 'turn' } as const;
  const { as: was } = press;
  const as = !isStill && (was === 'tap or stroke' || was === 'tap or turn') ? becomes[was] : was;
  const presses = state.presses.map((one) => (one === press ? { ...one, x, y, as } : one));
  const effects: Effect[] = [];
  if (as === 'stroke' && was !== 'stroke') effects.push({ do: 'begin', x: press.fromX, y: press.fromY });
  if (as === 'stroke') effects.push({ do: 'draw', x, y });
  return { state: { ...state, presses }, effects, isTaken: isOurs(press) };
}

function lifted(state: HandState, { pointerId, x, y }: HandEvent & { readonly type: 'up' }): HandStep {
  const last = moved(state, { type: 'move', pointerId, x, y });
  const press = last.state.presses.find((one) => one.pointerId === pointerId);
  if (press === undefined) return nothing(state, false);
  const presses = last.state.presses.filter((one) => one !== press);
  const effects: Effect[] = [...last.effects];
  if (press.as === 'stroke') effects.push({ do: 'keep' });
  if (press.as === 'tap or stroke' || press.as === 'tap or turn') {
    effects.push({ do: 'tap', x, y, pointerType: press.pointerType });
  }
  return { state: { ...state, presses }, effects, isTaken: isOurs(press) };
}

/** The system has taken the pointer away: nothing comes of it. */
function cancelled(state: HandState, pointerId: number): HandStep {
  const press = state.presses.find((one) => one.pointerId === pointerId);
  if (press === undefined) return nothing(state, false);
  const presses = state.presses.filter((one) => one !== press);
  return {
    state: { ...state, presses },
    effects: press.as === 'stroke' ? [{ do: 'drop' }] : [],
    isTaken: isOurs(press),
  };
}

/** What is still pressed does nothing until it is lifted. */
function stopped(state: HandState): HandStep {
  const presses = state.presses.map(
    (one): Press => (isOurs(one) ? { ...one, as: 'nothing' } : { ...one, as: 'turn' }),
  );
  return {
    state: { ...state, presses },
    effects: isDrawing(state) ? [{ do: 'drop' }] : [],
    isTaken: false,
  };
}
