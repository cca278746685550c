/** Whatever stands in the file, solving it returns, soon, with answers whose places lie in the text and whose figures are numbers. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { cpuTime } from '../support/cpuTime.ts';

const EXAMPLES = new URL('../../examples/', import.meta.url);
const FILES: readonly string[] = [
  ...readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.throttle.yaml'))
    .map((name) => readFileSync(new URL(name, EXAMPLES), 'utf8')),
  readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8'),
];

/** ms; far above what a file of this size takes, for a machine under load. */
const TIME_BOUND = 2_000;

/**
 * In each of them a whole linkage is solved, some 20 ms. Reading comes before that, most of what is spoilt ends there, and it is tried on
 * thousands of texts in `test/definition/fuzz.test.ts`.
 */
const FIGURES = 400;
const NAMES = 200;
/** Of each file: a place in every second line or so. */
const CUTS = 40;

let slowest = 0;

function checkSolve(text: string): void {
  const began = cpuTime();
  const answers = solve(text);
  const { facts, notChecked, parts, requirements } = answers;
  const table = answers.table([0, 0.31, 1]);
  const took = cpuTime() - began;
  slowest = Math.max(slowest, took);
  const hold = (stands: boolean, what: string): void => {
    // Cheaper than an expectation, of which there would be hundreds of thousands.
    if (!stands) throw new Error(`${what} in\n${text}`);
  };
  hold(took < TIME_BOUND, `${took} ms`);
  for (const { name, values } of table.columns) {
    hold(values.length === 3, `${values.length} values of ${name}`);
    for (const value of values) hold(value === null || Number.isFinite(value), `${name}: ${value}`);
  }
  hold(requirements.length === (answers.definition?.requirements.length ?? 0), `${requirements.length} requirements`);
  const places = [...answers.findings, ...notChecked, ...parts].map(({ span }) => span);
  for (const { start, end } of places) hold(0 <= start && start <= end && end <= text.length, `a place ${start}-${end}`);
  for (const finding of answers.findings) {
    const told = JSON.stringify(finding, (_, value: unknown) =>
      typeof value === 'number' && !Number.isFinite(value) ? `${value}` : value,
    );
    hold(!/NaN|Infinity|undefined/.test(told), told);
    for (const { from, to } of finding.ranges ?? []) hold(0 <= from && from <= to && to <= 1, told);
  }
  for (const { figure, why, key } of facts) {
    if (figure === undefined) hold(why !== undefined && why !== '', `${key} without a figure and without why`);
    else hold(Number.isFinite(figure.value), `${key} ${figure.value}`);
  }
}

describe('solving anything', () => {
  it('survives files cut anywhere', () => {
    for (const file of FILES) for (let k = 0; k <= CUTS; k++) checkSolve(file.slice(0, Math.round((file.length * k) / CUTS)));
  });

  it('survives a line taken out', () => {
    for (const file of FILES) {
      const lines = file.split('\n');
      lines.forEach((line, k) => {
        // Without it the file says the same.
        if (/^\s*(#.*)?$/.test(line)) return;
        checkSolve(lines.filter((__, other) => other !== k).join('\n'));
      });
    }
  });

  it('survives other figures', () => {
    const figure = fc.constantFrom(
      '0',
      '1',
      '-1',
      '-38',
      '180',
      '360',
      '-90',
      '1e-9',
      '1e-300',
      '1e9',
      '1e300',
      '9007199254740993',
      '0.1',
      '77',
    );
    const change = fc.tuple(
      fc.nat(FILES.length - 1),
      fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), figure), { minLength: 1, maxLength: 3 }),
    );
    fc.assert(
      fc.property(change, ([which, changes]) => {
        let text = FILES[which] ?? '';
        for (const [place, instead] of changes) {
          const figures = [...text.matchAll(/(?<![\w.])-?\d+(\.\d+)?/g)].slice(1);
          const found = figures[Math.floor(place * (figures.length - 1))];
          if (found) text = text.slice(0, found.index) + instead + text.slice(found.index + found[0].length);
        }
        checkSolve(text);
      }),
      { numRuns: FIGURES, seed: 5 },
    );
  });

  it('survives names put for each other', () => {
    const pick = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), pick, pick, (which, one, two) => {
        const text = FILES[which] ?? '';
        const words = [...text.matchAll(/\b[a-z][a-z_]*(\.[a-z_]+)?\b/g)];
        const at = words[Math.floor(one * (words.length - 1))];
        const other = words[Math.floor(two * (words.length - 1))];
        if (at && other) checkSolve(text.slice(0, at.index) + other[0] + text.slice(at.index + at[0].length));
      }),
      { numRuns: NAMES, seed: 6 },
    );
  });

  it('survives arbitrary text', () => {
    const word = fc.constantFrom(
      'format: 1\n',
      'levers:\n',
      '  a: {pivot: [0, 0]}\n',
      'pedal: {lever: a, travel: 9, opens: clockwise}\n',
      '{',
      '}',
      '[',
      ']',
      ': ',
      '&a ',
      '*a',
      '\n',
      '  ',
      '#',
      'rods:\n',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 100 }),
          fc.array(word, { maxLength: 30 }).map((words) => words.join('')),
        ),
        checkSolve,
      ),
      { numRuns: 300, seed: 7 },
    );
    console.log(`slowest solve: ${slowest.toFixed(0)} ms`);
  });
});
