import { describe, expect, it } from 'vitest';
import { Cancelled } from '../../src/engine/engine.ts';
import type { Job, Progress } from '../../src/engine/job.ts';
import { runJob } from '../../src/engine/runJob.ts';

function* counting(steps: number, onEnd = () => {}): Job<number, number> {
  try {
    let sum = 0;
    for (let i = 1; i <= steps; i++) {
      sum += i;
      yield { done: i / steps, doing: 'counting', partial: sum };
    }
    return sum;
  } finally {
    onEnd();
  }
}

describe('carrying a job in place', () => {
  it('gives its result and every step of its progress', async () => {
    const seen: Progress<number>[] = [];
    const { result } = runJob(counting(5), (p) => seen.push(p));
    expect(await result).toBe(15);
    expect(seen.map((p) => p.partial)).toEqual([1, 3, 6, 10, 15]);
    expect(seen.at(-1)?.done).toBe(1);
  });

  it('stops at a cancel, lets the job clear up, and says so', async () => {
    let cleared = false;
    let steps = 0;
    const running = runJob(
      counting(1e9, () => {
        cleared = true;
      }),
      () => {
        steps++;
      },
    );
    setTimeout(() => running.cancel(), 5);
    await expect(running.result).rejects.toBeInstanceOf(Cancelled);
    expect(cleared).toBe(true);
    expect(steps).toBeGreaterThan(0);
  });

  it('passes on what the job throws', async () => {
    function* failing(): Job<never> {
      yield { done: 0, doing: 'starting' };
      throw new Error('failing: no light, got night');
    }
    await expect(runJob(failing()).result).rejects.toThrow('no light');
  });
});
