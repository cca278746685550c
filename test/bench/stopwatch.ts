/** Timing for the benchmarks: the best of several rounds, so that what else the machine does counts least. */

/** @returns ns per call of the best round. `run` does `calls` of whatever is timed. */
export function nanosecondsPerCall(calls: number, run: (calls: number) => void, rounds = 15): number {
  run(Math.max(1, Math.floor(calls / 4)));
  let best = Infinity;
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    run(calls);
    best = Math.min(best, ((performance.now() - start) * 1e6) / calls);
  }
  return best;
}

/** Rounds of several runs taken in turns, so that a slow spell of the machine hits all of them. @returns ns per call of each, best round */
export function inTurns(calls: number, runs: readonly ((calls: number) => void)[], rounds = 15): readonly number[] {
  const best = runs.map(() => Infinity);
  for (const run of runs) run(calls);
  for (let round = 0; round < rounds; round++) {
    runs.forEach((run, i) => {
      const start = performance.now();
      run(calls);
      best[i] = Math.min(best[i]!, ((performance.now() - start) * 1e6) / calls);
    });
  }
  return best;
}

/** Middle and 95th-percentile time of single calls, ms. */
export function millisecondsOf(calls: number, run: () => void): MiddleAndP95 {
  for (let i = 0; i < Math.ceil(calls / 4); i++) run();
  return middleAndP95(
    Array.from({ length: calls }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

export interface MiddleAndP95 {
  readonly median: number;
  readonly p95: number;
}

/** @param times at least one, in any order and unit */
export function middleAndP95(times: readonly number[]): MiddleAndP95 {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)]!, p95: sorted[Math.floor(sorted.length * 0.95)]! };
}

export function report(what: string, figure: string): void {
  console.log(`${what.padEnd(72)} ${figure}`);
}
