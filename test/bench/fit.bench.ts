/**
 * The fit of readings: what `fit` takes for twenty and for ten thousand lines of two readings and four dimensions, what to turn with it, and
 * for readings of effort, whose derivatives are differences through the friction. Processor time; beside it the reading of the file alone.
 */
import { fitText } from '../../src/fitText.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { NOTHING_BESIDE } from '../../src/studies/fit/gather.ts';
import { BENCH, benchText } from '../studies/fit/bench.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { report } from './stopwatch.ts';

const FIT = ['link.length', 'tps.at_closed', 'main.slack', 'crank.out.radius'];
const NOISE = ['0.004 V', '0.1 deg'];
const evenly = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => Number(((95 * i) / (count - 1)).toFixed(6)));

/** ms, the least of some runs. */
function least(runs: number, work: () => void): number {
  return Math.min(
    ...Array.from({ length: runs }, () => {
      const start = cpuTime();
      work();
      return cpuTime() - start;
    }),
  );
}

function timeOf(name: string, text: string, runs: number): void {
  const outcome = finished(fitText(text, NOTHING_BESIDE));
  if (outcome.kind === 'not-fitted') throw new Error(outcome.why);
  if (!outcome.settled) throw new Error('It did not settle');
  const alone = least(runs, () => solve(text));
  const all = least(runs, () => finished(fitText(text, NOTHING_BESIDE)));
  report(`fit of ${name}`, `${all.toFixed(1)} ms, of which reading and solving the file ${alone.toFixed(1)} ms`);
}

const columns = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const car = { 'rods.link.length': 0.1107, 'cables.main.slack': 1.4e-3 };
timeOf('20 lines, 4 dimensions', benchText({ columns, at: evenly(20), car, fit: FIT, noise: NOISE }), 10);
timeOf('20 lines, one of them a slip', benchText({ columns, at: evenly(20), car, fit: FIT, noise: NOISE, off: { '7:0': 0.1 } }), 10);
timeOf(
  '20 lines at pulls of a cable',
  benchText({ columns: ['main.pull', 'tps.signal'], at: evenly(20).map((at) => at / 4), car, fit: FIT, noise: ['0.004 V'] }),
  10,
);
timeOf('1 000 lines', benchText({ columns, at: evenly(1000), car, fit: FIT, noise: NOISE }), 3);
timeOf(
  '20 lines of effort and release, 2 dimensions',
  benchText({
    columns: ['pedal.travel', 'pedal.effort', 'pedal.release'],
    at: evenly(20).map((at) => Number((6 + at * 0.9).toFixed(6))),
    car: { 'springs.back.preload': 0.3, 'cables.main.friction': 0.16 },
    fit: ['back.preload', 'main.friction'],
    noise: ['0.2 N', '0.2 N'],
  }),
  5,
);

/** Ten thousand lines come from a CSV file: a throttle file may not be so large. */
const lines = evenly(10_000);
const table = solve(BENCH).table(
  lines.map((at) => at / 100),
  ['tps.signal', 'shaft.opening'],
);
const [signal, opening] = ['tps.signal', 'shaft.opening'].map((name) => table.columns.find((each) => each.name === name)!.values);
const csv = `pedal.travel [%],tps.signal [V],shaft.opening [deg]\n${lines.map((at, i) => `${at},${signal![i]!},${opening![i]!}`).join('\n')}\n`;
const text = `${BENCH}measured:\n  fit: [${FIT.join(', ')}]\n  runs:\n    bench: {file: bench.csv}\n`;
report(
  'fit of 10 000 lines from a CSV file, 4 dimensions',
  `${least(2, () => finished(fitText(text, () => ({ kind: 'text', text: csv })))).toFixed(0)} ms`,
);
