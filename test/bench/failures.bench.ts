/** Every single failure of the largest example, against solving it once: the goal is under a second. */
import { readdirSync, readFileSync } from 'node:fs';
import { failureTable } from '../../src/failures/failureTable.ts';
import { solve } from '../../src/solve.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { millisecondsOf, report } from './stopwatch.ts';

/** ms. */
const GOAL = 1000;

const [largest] = readdirSync('examples')
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => ({ name, text: readFileSync(`examples/${name}`, 'utf8') }))
  .sort((one, other) => other.text.length - one.text.length);
if (largest === undefined) throw new Error('there is no example');
const { name, text } = largest;

const first = performance.now();
const worked = (wanted: 'closing' | 'times'): number => {
  let longest = 0;
  let before = performance.now();
  for (const _ of failureTable(solveTravel(mechanismOf(text))).work(wanted)) {
    const now = performance.now();
    longest = Math.max(longest, now - before);
    before = now;
  }
  return longest;
};
const { failures } = failureTable(solveTravel(mechanismOf(text)));
worked('times');
const cold = performance.now() - first;
const once = millisecondsOf(20, () => solve(text));
// A travel is asked once; each call has one of its own.
const table = millisecondsOf(12, () => worked('times'));
const closing = millisecondsOf(12, () => worked('closing'));
report(
  `failure table of ${name}, ${failures.length} failures`,
  `${table.median.toFixed(0)} ms, p95 ${table.p95.toFixed(0)} (goal ${GOAL} ms)`,
);
report('  the first of a process', `${cold.toFixed(0)} ms`);
report('  against solving it once, with its findings', `${(table.median / once.median).toFixed(1)} × ${once.median.toFixed(1)} ms`);
report('  of which whether plates close, as problems tell it', `${closing.median.toFixed(0)} ms, p95 ${closing.p95.toFixed(0)}`);
report('  the longest piece at once', `${worked('times').toFixed(1)} ms`);
