import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import type { CanopyScene } from '../plan/canopyScene.ts';
import { waveSteps } from '../plan/canopyWave.ts';
import { Cancelled } from './engine.ts';
import type { Job } from './job.ts';
import { runJob } from './runJob.ts';
import type { FromTracer, ToTracer, TracerPort } from './tracerMessages.ts';
import { transferable } from './transfer.ts';

function* tracing(steps: Generator<number, Wave | LeafWave, void>): Job<Wave | LeafWave> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { done: step.value, doing: 'Following the light' };
  }
}

/** The inside of a thread that traces waves. */
export function serveTracer(port: TracerPort): void {
  const scenes = new Map<number, CanopyScene>();
  const running = new Map<number, () => void>();
  const reply = (message: FromTracer) => port.postMessage(message, transferable(message));

  const trace = async ({ task, scene, what }: Extract<ToTracer, { what: object }>): Promise<void> => {
    try {
      const known = scenes.get(scene);
      if (known === undefined) throw new Error(`serveTracer: scene ${scene} was never sent`);
      const work = runJob(tracing(waveSteps({ ...what, scene: known })), ({ done }) =>
        reply({ task, share: done }),
      );
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
    else void trace(message);
  };
}
