/** Times and medians. */
export const nowMs = (): number => Number(process.hrtime.bigint()) / 1e6;

export function timeMs(work: () => void): number {
  const before = nowMs();
  work();
  return nowMs() - before;
}

/** Time of the processor, whoever else uses the machine; for work of several milliseconds. */
export function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Least-squares slope of log y over log x. */
export function logSlope(points: readonly (readonly [x: number, y: number])[]): number {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const);
  const mean = (k: 0 | 1): number => logs.reduce((sum, p) => sum + p[k], 0) / logs.length;
  const [mx, my] = [mean(0), mean(1)];
  const above = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return above / logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}
