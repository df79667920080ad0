import type { CanopyScene } from '../plan/canopyScene.ts';
import { type Found, type Task, taskSteps } from '../plan/errand.ts';
import { Cancelled } from './engine.ts';
import type { Job } from './job.ts';
import { runJob } from './runJob.ts';
import type { FromTracer, ToTracer, TracerPort } from './tracerMessages.ts';
import { transferable } from './transfer.ts';

function* working(task: Task): Job<Found<Task>> {
  const steps = taskSteps(task);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { done: step.value, doing: 'Following the light' };
  }
}

type Asked = Extract<ToTracer, { readonly what: object }>;

/** The inside of a thread that works for the pool. */
export function serveTracer(port: TracerPort): void {
  const scenes = new Map<number, CanopyScene>();
  const running = new Map<number, () => void>();
  const reply = (message: FromTracer) => port.postMessage(message, transferable(message));

  const whole = (message: Asked): Task => {
    if (!('scene' in message)) return message.what;
    const scene = scenes.get(message.scene);
    if (scene === undefined) throw new Error(`serveTracer: scene ${message.scene} was never sent`);
    return { ...message.what, scene };
  };

  const answer = async (message: Asked): Promise<void> => {
    const { task } = message;
    try {
      const work = runJob(working(whole(message)), ({ done }) => reply({ task, share: done }));
      running.set(task, work.cancel);
      reply({ task, result: await work.result });
    } catch (error) {
      if (error instanceof Cancelled) reply({ task, cancelled: true });
      else reply({ task, failed: error instanceof Error ? error.message : String(error) });
    } finally {
      running.delete(task);
    }
  };

  port.onmessage = ({ data }) => {
    const message = data as ToTracer;
    if ('is' in message) {
      if (message.is === null) scenes.delete(message.scene);
      else scenes.set(message.scene, message.is);
    } else if (message.what === 'cancel') running.get(message.task)?.();
    else void answer(message);
  };
}
