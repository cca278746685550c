/** Studies share the editor's time: between two of their steps anything else may be solved, and another study may go on. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fitText } from '../../src/fitText.ts';
import { solve } from '../../src/solve.ts';
import { solveFigure } from '../../src/solveFigure.ts';
import { finished } from '../../src/studies/finished.ts';
import { tolerances } from '../../src/studies/tolerance/tolerance.ts';
import { tuneText } from '../../src/tuneText.ts';
import { example } from '../support/editorRequests.ts';
import { kartTune } from '../support/kartTune.ts';

const TUNE = example('tune-a-bellcrank');
/** What a person types meanwhile: the same linkage with another figure, so that something is taken over from one solve to the next. */
const typed = (step: number): string => TUNE.replace('shaft_reach: 32 mm', `shaft_reach: 32.${step} mm`);

const STUDIES: Readonly<Record<string, () => Generator<unknown, unknown>>> = {
  // Nothing keeps that, so that it is mended, and what stands in the way is looked for.
  tune: () => tuneText(kartTune({}).replace('>= 83 deg', '>= 85 deg'), { seed: 1, rounds: 1, answers: 1 }),
  tolerance: () => tolerances(solve(example('two-banks')).study!, { seed: 3, law: 'normal', builds: 10 }),
  fit: () => fitText(example('as-built'), () => ({ kind: 'text', text: readFileSync('examples/as-built.csv', 'utf8') })),
  solve: () => solveFigure(TUNE, { change: 'crank_reach', demand: 'at(50%, shaft.opening) == 36 deg', places: 9 }),
};

interface Running {
  readonly steps: Generator<unknown, unknown>;
  count: number;
  end: unknown;
  isOver: boolean;
}

test('gone through in turns with each other and with what is typed, they give bit for bit what each gives at once', () => {
  const alone = Object.values(STUDIES).map((study) => figuresIn(finished(study())));
  const running = Object.values(STUDIES).map((study): Running => ({ steps: study(), count: 0, end: undefined, isOver: false }));
  for (let turn = 0; running.some(({ isOver }) => !isOver); turn++) {
    for (const study of running) {
      if (study.isOver) continue;
      const { done, value } = study.steps.next();
      if (done === true) [study.isOver, study.end] = [true, value];
      else study.count++;
    }
    if (turn % 100 === 0) expect(solve(typed(turn / 100)).study).toBeDefined();
  }
  running.forEach(({ end }, i) => expect(figuresIn(end)).toBe(alone[i]));
  // Else there were no turns to speak of.
  running.forEach(({ count }) => expect(count).toBeGreaterThan(100));
});

/** All that is told in figures and words, with every bit. What judges an outcome is a function, made anew each time, and left out. */
function figuresIn(end: unknown): string {
  return JSON.stringify(end, (_, value: unknown) => {
    if (typeof value === 'number') return Object.is(value, -0) ? '-0' : String(value);
    return value instanceof Float64Array ? [...value] : value;
  });
}
