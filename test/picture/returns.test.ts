import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { failureName, statementWords, stopWords } from '../../src/outputs/failureWords.ts';
import { showReturns } from '../../src/picture/returns.ts';
import { isAnswered } from '../../src/protocol/guards.ts';
import { solve } from '../../src/solve.ts';

const example = (name: string): string => readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
const EXAMPLES = ['four-barrel', 'two-banks', 'binding-broken'];

describe.each(EXAMPLES)('the failures of %s', (name) => {
  const answers = solve(example(name));
  const failures = answers.failures()!;
  const shown = showReturns(answers)!;

  test('pass the guard of the view, as they come out of a clone', () => {
    expect(isAnswered.returns(structuredClone(shown))).toBe(true);
  });

  test('are those of the answers, with nothing failed first', () => {
    const { whole, rows } = failures;
    expect(shown.rows.map(({ failure }) => failure)).toEqual([
      undefined,
      ...rows.map(({ failure }) => failure && { kind: failure.kind, part: failure.part }),
    ]);
    expect(shown.rows.map((row) => row.name)).toEqual(['', ...rows.map(failureName)]);
    expect(shown.rows.map((row) => row.outcome)).toEqual([whole, ...rows].map((row) => row.outcome));
    expect(shown.rows.map(({ plates }) => plates.map(({ outcome }) => outcome))).toEqual(
      [whole, ...rows].map(({ plates }) => plates.map(({ outcome }) => outcome)),
    );
    const stops = [whole, ...rows].flatMap(({ plates }) => plates.map(({ time }) => time?.stop && stopWords(time.stop)));
    expect(shown.rows.flatMap(({ plates }) => plates.map(({ stop }) => stop))).toEqual(stops);
    expect(shown.rows.flatMap(({ plates }) => plates.map(({ timeNote }) => timeNote)).join()).not.toContain('onto the stop');
    expect(shown.statements.map(({ text }) => text)).toEqual(failures.statements.map(statementWords));
  });

  test('name parts that the report has, by which the text is found', () => {
    for (const { failure, part } of shown.rows) {
      if (failure === undefined) continue;
      expect(part?.name).toBe(failure.part);
      expect(answers.parts.some((each) => each.kind === part?.kind && each.name === part.name)).toBe(true);
    }
  });

  test('give the pedal travel at which the whole linkage is opened as at the weakest place', () => {
    const { travel } = answers.study!;
    [failures.whole, ...failures.rows].forEach(({ plates }, row) => {
      plates.forEach(({ levers: [first], weakest }, i) => {
        const at = shown.rows[row]!.plates[i]!.weakest?.travel;
        if (weakest === undefined) return expect(at).toBeUndefined();
        const lever = travel.mechanism.leverIndex.get(first!)!;
        const opening = travel.mechanism.senses[lever]! * travel.poseAt(at!).rotation[lever]!;
        expect(opening).toBeCloseTo(weakest.opening, 8);
      });
    });
  });
});

describe('the failures of a file', () => {
  test('that is not solved are none', () => {
    expect(showReturns(solve('format: 1\n'))).toBeUndefined();
  });

  test('without plates say so and have no rows', () => {
    const text = example('four-barrel')
      .replace(/^plates:\n.*\n/m, '')
      .replace(/^require:\n(?: .*\n)*/m, '');
    const shown = showReturns(solve(text))!;
    expect(shown.rows).toEqual([]);
    expect(shown.verdict).toBe('not checked: the file describes no plates');
  });

  test('show no character that a page would not, whatever a part is called', () => {
    const shown = showReturns(solve(example('four-barrel').replaceAll('return_front', 'return\u202efront')))!;
    // By its name the editor finds it again; the page shows what stands beside.
    const words = JSON.stringify(shown, (key, value: unknown) => (key === 'failure' || key === 'part' ? undefined : value));
    expect(words).not.toMatch(/[\u202e`]/);
    expect(words).toContain('return\ufffdfront');
  });
});
