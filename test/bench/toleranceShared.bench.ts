/**
 * Random builds on one core and shared out over two: 10 000 builds of a linkage with two spatial loops, every outcome read at 101 stations.
 * Build number k is the same wherever it is made, so each thread makes a half and nothing is handed over but the figures. Wall time, since
 * two cores at once is what is asked; what else the machine does counts, and the better of three is told.
 */
import { fileURLToPath } from 'node:url';
import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { distributionsOf } from '../../src/studies/tolerance/distribution.ts';
import { randomBuilds, type Builds } from '../../src/studies/tolerance/monteCarlo.ts';
import { outcomesOf } from '../../src/studies/tolerance/outcomes.ts';
import { variedFigures } from '../../src/kinematics/toleranced.ts';
import { report } from './stopwatch.ts';

const BUILDS = 10_000;
const FILE = `format: 1
levers:
  foot: {pivot: [0, 0, 0], axis: [0.1, -0.2, 1], arms: {pin: {radius: 40 mm ± 0.1 mm, angle: 80 deg, offset: 4 mm}}}
  middle:
    pivot: [150, 20, 30]
    axis: [-0.3, 0.15, 1]
    arms: {in: {radius: 55 mm ± 0.1 mm, angle: 100 deg}, out: {radius: 45 mm ± 0.1 mm, angle: 80 deg}}
  shaft: {pivot: [290, 40, 10], axis: [0.1, 0.1, 1], arms: {arm: {radius: 50 mm ± 0.1 mm, angle: 95 deg}}, stops: {open: 10 deg ± 0.3 deg}}
pedal: {lever: foot, opens: clockwise, travel: 40 deg}
rods:
  first: {from: foot.pin, to: middle.in, length: 138.35 mm ± 0.1 mm}
  second: {from: middle.out, to: shaft.arm, length: 132.22 mm ± 0.1 mm}
plates:
  bank: {lever: shaft, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
`;

interface Share {
  readonly from: number;
  readonly to: number;
}

const { study } = solve(FILE);
const { mechanism } = study!.travel;
const outcomes = outcomesOf(study!);

function make({ from, to }: Share): Builds {
  return finished(randomBuilds(mechanism, outcomes, variedFigures(mechanism), { seed: 1, law: 'normal', from, to }));
}

if (!isMainThread) {
  // Made warm before the time is taken: an editor's worker is, too.
  make({ from: 0, to: 500 });
  parentPort!.on('message', (share: Share) => parentPort!.postMessage(make(share)));
  parentPort!.postMessage(workerData);
} else {
  const workers = await Promise.all(
    [0, 1].map(async (number) => {
      const worker = new Worker(fileURLToPath(import.meta.url), { workerData: number });
      await next(worker);
      return worker;
    }),
  );
  const best = { one: Infinity, two: Infinity };
  let [alone, shared]: [readonly Builds[], readonly Builds[]] = [[], []];
  for (let round = 0; round < 3; round++) {
    best.one = Math.min(best.one, await timed(async () => (alone = [await ask(workers[0]!, { from: 0, to: BUILDS })])));
    const halves = [
      { from: 0, to: BUILDS / 2 },
      { from: BUILDS / 2, to: BUILDS },
    ];
    best.two = Math.min(best.two, await timed(async () => (shared = await Promise.all(halves.map((half, i) => ask(workers[i]!, half))))));
  }
  for (const worker of workers) await worker.terminate();
  const told = (parts: readonly Builds[]): string => JSON.stringify(finished(distributionsOf(outcomes, parts)));
  report('10 000 builds × 101 stations × 2 loops, every outcome, one thread', `${best.one.toFixed(3)} s`);
  report(
    `  shared over two threads, of ${availableParallelism()} cores`,
    `${best.two.toFixed(3)} s, ${(best.two / best.one).toFixed(2)} of one; figures ${told(alone) === told(shared) ? 'the same' : 'OTHERWISE'}`,
  );
}

function next(worker: Worker): Promise<unknown> {
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

async function ask(worker: Worker, share: Share): Promise<Builds> {
  const answer = next(worker);
  worker.postMessage(share);
  return (await answer) as Builds;
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1e3;
}
