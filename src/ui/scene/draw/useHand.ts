/** What pointers do on the canvas, told to the pencil or left to the camera: see gesture.ts. */
import { type RefObject, useEffect, useRef } from 'react';
import { type Effect, type HandEvent, handStep, idleHand, isDrawing, type PointerKind } from './gesture.ts';

export interface HandActs {
  readonly hand: 'look' | 'draw';
  /** Whether a stroke can begin there. */
  isOn(x: number, y: number, pointerType: PointerKind): boolean;
  begin(x: number, y: number, pointerType: PointerKind): void;
  to(x: number, y: number): void;
  /** Once a picture, not once an event. */
  show(isFree: boolean): void;
  keep(): void;
  drop(): void;
  tap(x: number, y: number, pointerType: PointerKind): void;
}

const kindOf = ({ pointerType }: PointerEvent): PointerKind =>
  pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse';

/** Listens before the camera does. */
export function useHand(canvas: HTMLCanvasElement, acts: HandActs): void {
  // A stroke must outlive a new picture between down and up.
  const latest = useRef(acts);
  useEffect(() => {
    latest.current = acts;
  });
  useEffect(() => listenTo(canvas, latest), [canvas]);
}

function listenTo(canvas: HTMLCanvasElement, acts: RefObject<HandActs>): () => void {
  const listening = new AbortController();
  const hand = new Hand(canvas, acts);
  const early = { capture: true, signal: listening.signal };
  const around = canvas.parentElement ?? canvas;
  around.addEventListener('pointerdown', (event) => hand.down(event), early);
  around.addEventListener('pointermove', (event) => hand.move(event), early);
  around.addEventListener('pointerup', (event) => hand.end(event), early);
  around.addEventListener('pointercancel', (event) => hand.end(event), early);
  around.addEventListener('wheel', (event) => hand.wheel(event), { ...early, passive: false });
  around.addEventListener('contextmenu', (event) => hand.menu(event), early);
  addEventListener(
    'pointerdown',
    (event) => {
      if (!around.contains(event.target as Node | null)) hand.elsewhere(event);
    },
    early,
  );
  addEventListener('keydown', (event) => hand.key(event), early);
  addEventListener('keyup', (event) => hand.key(event), early);
  // Not early: a button that loses the focus is not the page that does.
  addEventListener('blur', () => hand.stop(), { signal: listening.signal });
  return () => {
    listening.abort();
    hand.stop();
  };
}

class Hand {
  private state = idleHand;
  private kind: PointerKind = 'mouse';
  /** Presses that the camera has heard of: it must hear of their end too. */
  private readonly told = new Set<number>();
  private isHandingOver = false;
  private isFree = false;
  private frame = 0;
  private readonly canvas: HTMLCanvasElement;
  private readonly acts: RefObject<HandActs>;

  constructor(canvas: HTMLCanvasElement, acts: RefObject<HandActs>) {
    this.canvas = canvas;
    this.acts = acts;
  }

  down(event: PointerEvent): void {
    if (this.isHandingOver) return;
    const [x, y] = this.placeOf(event);
    const pointerType = kindOf(event);
    // A second finger beside one that is on a handle or a sheet draws nothing.
    const mayDraw = event.isPrimary && this.acts.current.hand === 'draw';
    const isOn = mayDraw && this.acts.current.isOn(x, y, pointerType);
    const { pointerId, button } = event;
    const isTaken = this.step({ type: 'down', pointerId, pointerType, button, x, y, isOn });
    if (!isTaken) {
      this.told.add(pointerId);
      return;
    }
    this.kind = pointerType;
    this.canvas.setPointerCapture(pointerId);
    event.stopPropagation();
  }

  move(event: PointerEvent): void {
    this.isFree = event.altKey;
    let isTaken = false;
    const events = event.getCoalescedEvents?.() ?? [];
    for (const one of events.length > 0 ? events : [event]) {
      const [x, y] = this.placeOf(one);
      isTaken = this.step({ type: 'move', pointerId: event.pointerId, x, y });
    }
    if (isTaken) event.stopPropagation();
  }

  end(event: PointerEvent): void {
    const [x, y] = this.placeOf(event);
    const { pointerId } = event;
    const isTaken = this.step(
      event.type === 'pointercancel' ? { type: 'cancel', pointerId } : { type: 'up', pointerId, x, y },
    );
    if (isTaken && !this.told.has(pointerId)) event.stopPropagation();
    this.told.delete(pointerId);
  }

  /** The picture stays while something is drawn in it. */
  wheel(event: WheelEvent): void {
    if (!isDrawing(this.state)) return;
    event.preventDefault();
    event.stopPropagation();
  }

  menu(event: Event): void {
    // A finger that rests before it draws asks for no menu.
    if (this.acts.current.hand === 'draw') event.preventDefault();
    if (isDrawing(this.state)) this.stop();
  }

  key(event: KeyboardEvent): void {
    if (!isDrawing(this.state)) return;
    if (event.key === 'Alt') {
      this.isFree = event.type === 'keydown';
      event.preventDefault();
      this.showSoon();
    }
    if (event.key !== 'Escape' || event.type !== 'keydown') return;
    event.preventDefault();
    event.stopPropagation();
    this.stop();
  }

  /** A finger beside the picture, on a sheet or a button, takes the stroke of another finger from it. */
  elsewhere({ pointerType }: PointerEvent): void {
    if (isDrawing(this.state) && !(pointerType === 'touch' && this.kind === 'pen')) this.stop();
  }

  stop(): void {
    this.step({ type: 'stop' });
  }

  private placeOf({ clientX, clientY }: PointerEvent): readonly [number, number] {
    const { left, top } = this.canvas.getBoundingClientRect();
    return [clientX - left, clientY - top];
  }

  private step(event: HandEvent): boolean {
    const { state, effects, isTaken } = handStep(this.state, event, this.acts.current.hand);
    this.state = state;
    for (const effect of effects) this.follow(effect);
    return isTaken;
  }

  private follow(effect: Effect): void {
    const acts = this.acts.current;
    if (effect.do === 'begin') acts.begin(effect.x, effect.y, this.kind);
    else if (effect.do === 'draw') {
      acts.to(effect.x, effect.y);
      this.showSoon();
    } else if (effect.do === 'tap') acts.tap(effect.x, effect.y, effect.pointerType);
    else if (effect.do === 'navigate') this.handOver(effect);
    else {
      cancelAnimationFrame(this.frame);
      if (effect.do === 'keep') acts.show(this.isFree);
      acts[effect.do]();
    }
  }

  private showSoon(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.acts.current.show(this.isFree));
  }

  /** The camera is told of a press that was kept from it. */
  private handOver({ pointerId, x, y }: Effect & { readonly do: 'navigate' }): void {
    const { left, top } = this.canvas.getBoundingClientRect();
    const [clientX, clientY] = [left + x, top + y];
    const told = {
      pointerId,
      clientX,
      clientY,
      pointerType: this.kind,
      button: 0,
      buttons: 1,
      bubbles: true,
    };
    this.told.add(pointerId);
    this.isHandingOver = true;
    this.canvas.dispatchEvent(new PointerEvent('pointerdown', told));
    this.isHandingOver = false;
  }
}
