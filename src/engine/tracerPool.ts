import type { CanopyScene } from '../plan/canopyScene.ts';
import type { Fetched, Task } from '../plan/errand.ts';
import { Cancelled } from './engine.ts';
import type { FromTracer, ToTracer, TracerPort } from './tracerMessages.ts';
import type { Tracers, Tracing } from './tracers.ts';

/** A thread with `serveTracer` in it. */
export interface TracerThread {
  readonly port: TracerPort;
  /** Called once, when the thread breaks down. */
  onBreakdown: ((why: string) => void) | null;
  stop(): void;
}

/** A wave that waits for a thread, or is with one. */
interface Order {
  readonly number: number;
  readonly task: Task;
  readonly resolve: (fetched: Fetched) => void;
  readonly reject: (reason: Error) => void;
  readonly onShare: (share: number) => void;
  breakdowns: number;
  isCancelled: boolean;
}

function withResolvers() {
  let resolve: Order['resolve'] = () => {};
  let reject: Order['reject'] = () => {};
  const promise = new Promise<Fetched>((yes, no) => {
    [resolve, reject] = [yes, no];
  });
  return { promise, resolve, reject };
}

/** Scenes that a thread remembers; the oldest goes first. Two trees may be worked on in turn: a plan's before and after. */
const scenesKept = 3;

class Hand {
  readonly thread: TracerThread;
  order: Order | null = null;
  private readonly scenes: CanopyScene[] = [];

  constructor(thread: TracerThread) {
    this.thread = thread;
  }

  private post(message: ToTracer): void {
    const { port } = this.thread;
    port.postMessage(message);
  }

  take(order: Order, numberOf: (scene: CanopyScene) => number): void {
    this.order = order;
    if (order.task.at === 'world') {
      this.post({ task: order.number, what: order.task });
      return;
    }
    const { scene, ...what } = order.task;
    const number = numberOf(scene);
    if (!this.scenes.includes(scene)) {
      this.scenes.push(scene);
      this.post({ scene: number, is: scene });
      if (this.scenes.length > scenesKept)
        this.post({ scene: numberOf(this.scenes.shift() as CanopyScene), is: null });
    }
    this.post({ task: order.number, scene: number, what });
  }

  cancel(): void {
    if (this.order !== null) this.post({ task: this.order.number, what: 'cancel' });
  }
}

class Pool implements Tracers {
  private readonly waiting: Order[] = [];
  private readonly hands: Hand[] = [];
  private readonly numbers = new WeakMap<CanopyScene, number>();
  private lastScene = 0;
  private lastOrder = 0;

  add(thread: TracerThread): void {
    const hand = new Hand(thread);
    this.hands.push(hand);
    thread.port.onmessage = ({ data }) => this.hear(hand, data as FromTracer);
    thread.onBreakdown = (why) => this.lose(hand, why);
  }

  trace(task: Task, onShare: (share: number) => void): Tracing {
    const { promise: result, resolve, reject } = withResolvers();
    const number = ++this.lastOrder;
    const order = { number, task, resolve, reject, onShare, breakdowns: 0, isCancelled: false };
    this.waiting.push(order);
    this.deal();
    return { result, cancel: () => this.cancel(order) };
  }

  dispose(): void {
    for (const { order, thread } of this.hands.splice(0)) {
      thread.stop();
      order?.reject(new Cancelled());
    }
    this.deal();
  }

  private readonly numberOf = (scene: CanopyScene): number => {
    const number = this.numbers.get(scene) ?? ++this.lastScene;
    this.numbers.set(scene, number);
    return number;
  };

  private deal(): void {
    if (this.hands.length === 0) for (const order of this.waiting.splice(0)) order.resolve(undefined);
    for (const hand of this.hands) {
      const order = hand.order === null ? this.waiting.shift() : undefined;
      if (order !== undefined) hand.take(order, this.numberOf);
    }
  }

  private hear(hand: Hand, message: FromTracer): void {
    const { order } = hand;
    if (order === null || order.number !== message.task) return;
    if ('share' in message) {
      order.onShare(message.share);
      return;
    }
    hand.order = null;
    if ('result' in message) order.resolve(message.result as Fetched);
    else order.reject('failed' in message ? new Error(message.failed) : new Cancelled());
    this.deal();
  }

  private lose(hand: Hand, why: string): void {
    const at = this.hands.indexOf(hand);
    if (at < 0) return;
    this.hands.splice(at, 1);
    hand.thread.stop();
    const { order } = hand;
    if (order !== null && !order.isCancelled) {
      order.breakdowns++;
      if (order.breakdowns === 1) this.waiting.unshift(order);
      else order.reject(new Error(`The calculation broke down twice: ${why}`));
    }
    this.deal();
  }

  private cancel(order: Order): void {
    order.isCancelled = true;
    const at = this.waiting.indexOf(order);
    if (at >= 0) this.waiting.splice(at, 1);
    else this.hands.find((hand) => hand.order === order)?.cancel();
    order.reject(new Cancelled());
  }
}

/**
 * So many threads that trace waves, each one wave at a time, in the order asked. A wave whose thread breaks down is given to
 * another once; where no thread is left its answer is undefined, and the asker traces it.
 */
export function createTracerPool(start: () => TracerThread, count: number): Tracers {
  const pool = new Pool();
  for (let i = 0; i < count; i++) pool.add(start());
  return pool;
}
