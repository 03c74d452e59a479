/** CPU time of this process, user and system, in ms. Wall time on a shared machine is mostly somebody else's. */
export function cpuMilliseconds(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Order statistics of a set of timings, in ms. */
export interface Samples {
  readonly least: number;
  readonly median: number;
  readonly p95: number;
  readonly most: number;
}

export function sampled(times: readonly number[]): Samples {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { least: at(0), median: at(0.5), p95: at(0.95), most: at(1) };
}

/** Median of so many rounds behind those that warm up, ms of CPU; `before` is done before each round and not counted. */
export function medianAfter(warmUp: number, rounds: number, before: () => void, work: () => unknown): number {
  const all = Array.from({ length: warmUp + rounds }, () => {
    before();
    return cpuMilliseconds(work);
  });
  return sampled(all.slice(warmUp)).median;
}
