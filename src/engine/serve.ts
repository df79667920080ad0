import { Cancelled, type Engine, type Running } from './engine.ts';
import type { Call, FromWorker, Port, ToWorker } from './messages.ts';

/** The worker's side: answers calls from the port with the engine. */
export function serve(port: Port, engine: Engine): void {
  const running = new Map<number, Running<unknown>>();
  const reply = (message: FromWorker) => port.postMessage(message);

  const begin = (call: number, what: Call): Running<unknown> => {
    const onProgress = (progress: FromWorker & object) => reply(progress);
    switch (what.ask) {
      case 'light':
        return engine.light(what.file, what.options, (progress) => onProgress({ call, progress }));
      case 'plan':
        return engine.plan(what.file, what.options, (progress) => onProgress({ call, progress }));
      case 'replan':
        return engine.replan(what.file, what.options, (progress) => onProgress({ call, progress }));
      case 'takeWeather':
        return engine.takeWeather(what.file, what.text);
      case 'tryCuts':
        return engine.tryCuts(what.cutIds, (progress) => onProgress({ call, progress }));
      case 'look':
        return engine.look(what.file, what.question, what.options, (progress) =>
          onProgress({ call, progress }),
        );
    }
  };

  const answer = async (call: number, what: Call): Promise<void> => {
    try {
      const work = begin(call, what);
      running.set(call, work);
      reply({ call, result: await work.result });
    } catch (error) {
      if (error instanceof Cancelled) reply({ call, cancelled: true });
      else reply({ call, failed: error instanceof Error ? error.message : String(error) });
    } finally {
      running.delete(call);
    }
  };

  port.onmessage = ({ data }) => {
    const { call, what } = data as ToWorker;
    if (what === 'cancel') running.get(call)?.cancel();
    else void answer(call, what);
  };
}
