/**
 * A hundred linkages drawn at random, their dimensions forgotten (`test/support/hiddenTruths.ts`): how many are found again within 0.1° of their
 * curve everywhere with 40° of transmission kept, when the search first knows of such an answer, and how long it takes in all. One core,
 * time of this process alone.
 */
import { applyEdits } from '../../src/definition/edit.ts';
import { solve } from '../../src/solve.ts';
import { keepsAll } from '../../src/studies/tune/answers.ts';
import { editsOfValues, tuneText } from '../../src/tuneText.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { hiddenTruths } from '../support/hiddenTruths.ts';
import { middleAndP95, report } from './stopwatch.ts';

const COUNT = 100;
/** deg, everywhere. */
const NEAR = 0.1;
/** s, each on one core. */
const BUDGET = 5;
const GOAL = 95;

interface Run {
  readonly free: number;
  readonly found: boolean;
  /** s; NaN where it never knew of one. */
  readonly first: number;
  readonly whole: number;
}

const runs = hiddenTruths(COUNT).map(({ text, free, opening }): Run => {
  const start = cpuTime();
  const steps = tuneText(text);
  let first = NaN;
  for (;;) {
    const { done, value } = steps.next();
    const now = (cpuTime() - start) / 1e3;
    if (done !== true) {
      if (Number.isNaN(first) && value.best !== undefined && value.best <= (NEAR * Math.PI) / 180) first = now;
      continue;
    }
    const best = value.kind === 'tuned' ? value.answers[0] : undefined;
    if (best === undefined || !keepsAll(best)) return { free, found: false, first, whole: now };
    // Held against the true openings by solving the file with the values written in.
    const { definition } = solve(text);
    const edits = editsOfValues(text, definition!, best.values.map((each) => each.value)); // prettier-ignore
    const hundredths = opening.map((_, i) => i / (opening.length - 1));
    const column = solve(applyEdits(text, edits)).table(hundredths, ['shaft.opening']).columns[0]!;
    const off = Math.max(...opening.map((each, i) => Math.abs((column.values[i] ?? NaN) - each)));
    return { free, found: off < NEAR, first, whole: now };
  }
});

const found = runs.filter((run) => run.found);
const times = (of: readonly number[]): string => {
  const { median, p95 } = middleAndP95(of);
  return `median ${median.toFixed(2)} s, p95 ${p95.toFixed(2)} s, worst ${Math.max(...of).toFixed(2)} s`;
};
report(`found within ${NEAR}° with 40° kept`, `${found.length} of ${COUNT} (goal ${GOAL})`);
for (const free of [4, 5, 6]) {
  const own = runs.filter((run) => run.free === free);
  report(`  with ${free} free`, `${own.filter((run) => run.found).length} of ${own.length}`);
}
report('  first known of', times(runs.flatMap(({ first }) => (Number.isNaN(first) ? [] : [first]))));
report('  to the end, several answers judged', times(runs.map(({ whole }) => whole)));
report(
  `  within ${BUDGET} s`,
  `${found.filter(({ whole }) => whole <= BUDGET).length} found and ended, ${found.filter(({ first }) => first <= BUDGET).length} found and known of`,
);
