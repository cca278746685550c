/**
 * The search of `tune` beside two general-purpose optimisers, on the same problems: hidden truths of 4 to 6 free dimensions, 0.1° everywhere,
 * 40° of transmission kept. Each has the same time of one core and the same way to look at a place; what is reached and when is told.
 *
 * Simplex: J. A. Nelder, R. Mead, The Computer Journal 7 (1965) 308, begun anew from a random place when it has shrunk. Differential
 * evolution: R. Storn, K. Price, Journal of Global Optimization 11 (1997) 341, DE/rand/1/bin with F = 0.7, CR = 0.9, ten members a free
 * dimension. Both from memory.
 */
import { randomOf, type Random } from '../../src/numeric/random.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { designsOf } from '../../src/studies/tune/designs.ts';
import { measure, search } from '../../src/studies/tune/search.ts';
import { createTrial, type Trial } from '../../src/studies/tune/trial.ts';
import { wantedOf } from '../../src/studies/tune/wanted.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { hiddenTruths } from '../support/hiddenTruths.ts';
import { middleAndP95, report } from './stopwatch.ts';

const COUNT = 30;
/** s, each. */
const TIME = 3;
/** deg: what `tune` takes for on the curve, and what shows how each goes on from there. */
const NEAR = [0.1, 0.01, 0.001];

/** Looks at places until told to stop. */
type Method = (problem: Problem, random: Random) => void;

interface Problem {
  readonly trial: Trial;
  readonly size: number;
  readonly designs: readonly Float64Array[];
  /** Greatest error at the stations, rad, and three times what angles are below their limits. */
  cost(x: Float64Array): number;
  /** Whether an answer is known or the time is over. */
  isOver(): boolean;
  /** rad: as near as this everywhere is an answer. */
  readonly enough: number;
  /** Tells of a place that may be an answer. */
  offer(x: Float64Array): void;
}

const truths = hiddenTruths(COUNT);
const methods: Readonly<Record<string, Method>> = {
  'least squares from many places': ours,
  'simplex, begun anew': simplex,
  'differential evolution': evolution,
};
for (const near of NEAR) for (const [name, method] of Object.entries(methods)) run(name, method, near);

function run(name: string, method: Method, near: number): void {
  const times: number[] = [];
  let looks = 0;
  const enough = (near * Math.PI) / 180;
  truths.forEach(({ text }, k) => {
    const { trial, designs } = trialOf(text);
    const start = cpuTime();
    const { evaluate, count } = trial.problem(trial.ownWeights);
    const residuals = new Float64Array(count);
    const stations = trial.stations.length;
    let known = NaN;
    const problem: Problem = {
      trial,
      designs,
      enough,
      size: trial.case.free.length,
      cost(x) {
        looks++;
        if (!evaluate(x, residuals)) return Infinity;
        let [worst, below] = [0, 0];
        residuals.forEach((each, i) => (i < stations ? (worst = Math.max(worst, Math.abs(each))) : (below += each)));
        return worst * trial.height + below;
      },
      isOver: () => !Number.isNaN(known) || (cpuTime() - start) / 1e3 > TIME,
      offer(x) {
        const { error, trespass } = measure(trial, x);
        if (trespass === 0 && error <= enough && Number.isNaN(known)) known = (cpuTime() - start) / 1e3;
      },
    };
    method(problem, randomOf(7, k));
    if (!Number.isNaN(known)) times.push(known);
  });
  const { median, p95 } = times.length === 0 ? { median: NaN, p95: NaN } : middleAndP95(times);
  const share = `${times.length} of ${COUNT} within ${TIME} s`;
  report(
    `${near}°: ${name}`,
    `${share}; of these median ${median.toFixed(3)} s, p95 ${p95.toFixed(2)} s${looks > 0 ? `; ${Math.round(looks / COUNT)} looks each` : ''}`,
  );
}

function trialOf(text: string) {
  const { study, definition } = solve(text);
  const { mechanism } = study!.travel;
  const block = definition!.tune!;
  const free = block.free.map(({ name, from, to }) => ({
    name,
    index: mechanism.dimensions.find(({ path }) => path === `let.${name}`)!.index,
    from: from.nominal,
    to: to.nominal,
    step: undefined,
  }));
  const wanted = wantedOf(block.curve!, { closed: 0, full: 0 });
  const guards = [{ column: 'link.transmission', least: (40 * Math.PI) / 180 }];
  const trial = createTrial({ mechanism, free, column: 'shaft.opening', wanted, guards });
  const drawn = Float64Array.from(free, ({ index, from, to }) =>
    Math.min(1, Math.max(0, (mechanism.nominal[index]! - from) / (to - from))),
  );
  const designs = [drawn, ...finished(designsOf(trial.case, mechanism.leverIndex.get('shaft')!))];
  return { trial, designs };
}

/** As `tune` has it; what it knows of after a descent it has held against the curve everywhere already, and it is offered at the end of all. */
function ours({ trial, designs, enough, isOver, offer }: Problem): void {
  const steps = search(trial, designs, { seed: 1, rounds: 24, enough, answers: 1 });
  for (let step = steps.next(); !isOver(); step = steps.next()) if (step.done === true) return step.value.forEach(({ x }) => offer(x));
}

function simplex({ size, enough, cost, isOver, offer }: Problem, random: Random): void {
  for (let restart = 0; !isOver(); restart++) {
    const first = Float64Array.from({ length: size }, (_, j) => random.uniform(restart, j));
    let corners = Array.from({ length: size + 1 }, (_, i) => {
      const x = first.map((value, j) => (j === i - 1 ? (value > 0.5 ? value - 0.2 : value + 0.2) : value));
      return { x, cost: cost(x) };
    });
    for (let step = 0; step < 200 * size && !isOver(); step++) {
      corners.sort((a, b) => a.cost - b.cost);
      const [best, worst] = [corners[0]!, corners[size]!];
      const spread = Math.max(...corners.map(({ x }) => Math.max(...x.map((value, j) => Math.abs(value - best.x[j]!)))));
      if (spread < 1e-7) break;
      const centre = first.map((_, j) => corners.slice(0, size).reduce((sum, { x }) => sum + x[j]!, 0) / size);
      const along = (t: number) => {
        const x = centre.map((value, j) => Math.min(1, Math.max(0, value + t * (worst.x[j]! - value))));
        return { x, cost: cost(x) };
      };
      const reflected = along(-1);
      const second = corners[size - 1]!;
      if (reflected.cost < best.cost) {
        const expanded = along(-2);
        corners[size] = expanded.cost < reflected.cost ? expanded : reflected;
      } else if (reflected.cost < second.cost) corners[size] = reflected;
      else {
        const inner = along(reflected.cost < worst.cost ? -0.5 : 0.5);
        if (inner.cost < Math.min(worst.cost, reflected.cost)) corners[size] = inner;
        else
          corners = corners.map((corner) => {
            if (corner === best) return corner;
            const x = corner.x.map((value, j) => (value + best.x[j]!) / 2);
            return { x, cost: cost(x) };
          });
      }
    }
    const [best] = corners.sort((a, b) => a.cost - b.cost);
    if (best!.cost < 1.5 * enough) offer(best!.x);
  }
}

function evolution({ size, enough, cost, isOver, offer }: Problem, random: Random): void {
  const [members, factor, crossing] = [10 * size, 0.7, 0.9];
  const all = Array.from({ length: members }, (_, i) => {
    const x = Float64Array.from({ length: size }, (__, j) => random.uniform(i, j));
    return { x, cost: cost(x) };
  });
  for (let round = 1; !isOver(); round++) {
    for (let i = 0; i < members && !isOver(); i++) {
      const number = round * members + i;
      const pick = (k: number) => all[Math.floor(random.uniform(number, 100 + k) * members)]!.x;
      const [a, b, c] = [pick(0), pick(1), pick(2)];
      const sure = Math.floor(random.uniform(number, 99) * size);
      const x = all[i]!.x.map((value, j) => {
        if (j !== sure && random.uniform(number, j) > crossing) return value;
        const moved = a[j]! + factor * (b[j]! - c[j]!);
        return moved < 0 || moved > 1 ? random.uniform(number, 50 + j) : moved;
      });
      const at = cost(x);
      if (at > all[i]!.cost) continue;
      all[i] = { x, cost: at };
      if (at < enough) offer(x);
    }
  }
}
