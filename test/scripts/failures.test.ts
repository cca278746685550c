/** What failed is told again at the end of a log. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { transformSync } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { failuresOfReport, linesOf, toldAgain, type Failure, type ReportedFile } from '../../scripts/failures.mjs';

const outcome = (status: string, title: string, ...failureMessages: readonly string[]): ReportedFile['assertionResults'][number] => ({
  status,
  ancestorTitles: ['a rod', 'at rest'],
  title,
  failureMessages,
});
const file = (name: string, status: string, message: string, ...assertionResults: ReportedFile['assertionResults']): ReportedFile => ({
  name: `/clone/test/${name}`,
  status,
  message,
  assertionResults,
});

describe("Vitest's report", () => {
  test('gives each failed test its full name and the lines of its reason without the way through the runner, and no other test', () => {
    const testResults = [
      file(
        'a.test.ts',
        'failed',
        '',
        outcome('passed', 'is long'),
        outcome('failed', 'stands', '\u001b[31mexpected 1\u001b[39m\n\n    at b:1\n    at /clone/node_modules/c:1'),
      ),
      file('b.test.ts', 'passed', '', outcome('passed', 'turns')),
    ];
    expect(failuresOfReport({ testResults }, '/clone/')).toEqual([
      { name: 'test/a.test.ts > a rod > at rest > stands', reason: ['expected 1', '    at b:1'] },
    ]);
  });

  test('tells places in the core as it is written, where the tests ran what was made of it', () => {
    const clone = mkdtempSync(join(tmpdir(), 'clone-'));
    const made = join(clone, 'build/coreForTests/7');
    mkdirSync(made, { recursive: true });
    const written =
      '/** Why. */\ninterface Rod {\n  readonly length: number;\n}\nexport const shorten = (rod: Rod): never => {\n  throw new Error(`${rod.length}`);\n};\n';
    const { code, map } = transformSync(written, { loader: 'ts', format: 'esm', sourcemap: 'external', sourcefile: '../../../src/rod.ts' });
    writeFileSync(join(made, 'rod.js.map'), map);
    const rows = code.split('\n');
    const row = rows.findIndex((each) => each.includes('throw'));
    const at = `${row + 1}:${rows[row]!.indexOf('new Error') + 1}`;
    const trace = `80\n    at shorten (${pathToFileURL(join(made, 'rod.js')).href}:${at})\n    at ${join(made, 'gone.js')}:1:1`;
    const testResults = [file('a.test.ts', 'failed', '', outcome('failed', 'is shortened', trace))];
    const [failure] = failuresOfReport({ testResults }, `${clone}/`);
    rmSync(clone, { recursive: true });
    expect(failure!.reason).toEqual(['80', `    at shorten (${join(clone, 'src/rod.ts')}:6:9)`, `    at ${join(made, 'gone.js')}:1:1`]);
  });

  test('names a file that broke outside its tests, with why', () => {
    const testResults = [
      file('a.test.ts', 'failed', 'Cannot find module'),
      file('b.test.ts', 'failed', 'a hook broke', outcome('passed', 'turns')),
    ];
    expect(failuresOfReport({ testResults }, '/clone/')).toEqual([
      { name: 'test/a.test.ts', reason: ['Cannot find module'] },
      { name: 'test/b.test.ts', reason: ['a hook broke'] },
    ]);
  });

  test('is missed where there is none', () => {
    expect(failuresOfReport(undefined, '/clone/')).toEqual([{ name: 'the tests left no report', reason: [] }]);
  });
});

describe('what is told again', () => {
  const failure = (name: string, lines: number): Failure => ({ name, reason: Array.from({ length: lines }, (_, k) => `why ${k}`) });

  test('is nothing where nothing failed', () => {
    expect(toldAgain([])).toEqual([]);
  });

  test('is each step with its failures, or with what it printed', () => {
    const steps = [
      { step: 'lint', failures: [], printed: ['a.ts', '  1:1 error'] },
      { step: 'tests', failures: [failure('a > b', 1)] },
    ];
    expect(toldAgain(steps)).toEqual(['✗ lint', '  a.ts', '    1:1 error', '✗ tests', '  ✗ a > b', '      why 0']);
  });

  test('takes the first lines of a long reason', () => {
    expect(toldAgain([{ step: 'tests', failures: [failure('a', 50)] }])).toHaveLength(2 + 8);
  });

  test('names every test before it gives reasons, and every step before it names tests, in no more than a hundred lines', () => {
    const names = Array.from({ length: 45 }, (_, k) => failure(`test ${k}`, 20));
    const told = toldAgain([{ step: 'tests', failures: names }]);
    expect(told.length).toBeLessThanOrEqual(100);
    expect(names.filter(({ name }) => !told.includes(`  ✗ ${name}`))).toEqual([]);
    const printed = Array.from({ length: 400 }, (_, k) => `line ${k}`);
    const steps = ['formatting', 'lint', 'types', 'tests'].map((step) => ({ step, failures: names, printed }));
    const all = toldAgain(steps);
    expect(all.length).toBeLessThanOrEqual(100);
    expect(all.filter((line) => line.startsWith('✗'))).toEqual(['✗ formatting', '✗ lint', '✗ types', '✗ tests']);
    expect(all.at(-1)).toMatch(/^ {2}… and \d+ more lines$/);
  });
});

test('lines that say something are taken from a text without its colours', () => {
  expect([linesOf('\u001b[1ma \u001b[22m\n\n  b\n'), linesOf(undefined)]).toEqual([['a', '  b'], []]);
});
