/** Requirements as tests of the editor. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requirementTests, type RequirementTest } from '../../src/language/requirementTests.ts';
import { solve } from '../../src/solve.ts';

/** A drum of 24 mm, opened to 80° at half of a pull of twice that. */
const file = (requirements: string): string => `format: 1
let: {wanted: 60 deg}
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
pedal: {cable: main, pull: 24 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel}
require:
${requirements}`;

const testsOf = (requirements: string): readonly RequirementTest[] => requirementTests(solve(file(requirements)));
const only = (requirement: string): RequirementTest => {
  const [test, second] = testsOf(`  it: ${requirement}\n`);
  if (test === undefined || second !== undefined) throw new Error('there should be one');
  return test;
};

describe('a requirement', () => {
  it('passes with what was expected, what came out and what is to spare', () => {
    // A radian of drum at the end: 24 mm on 24 mm, 57.3°.
    expect(only('at(100%, shaft.opening) >= 50 deg')).toMatchObject({
      outcome: 'passed',
      expected: 'at least 50°',
      actual: '57.3°',
      margin: '7.3° to spare, at 100 %',
      message: '57.3° ≥ 50° (7.3° to spare, at 100 %)',
    });
  });

  it('fails at the comparison that is not met, told alone', () => {
    const text = file('  both: at(50%, shaft.opening) < 40 deg and at(100%, shaft.opening) >= wanted\n');
    const [test] = requirementTests(solve(text));
    expect(test).toMatchObject({ outcome: 'failed', expected: 'at least 60°', actual: '57.3°', margin: '2.7° short, at 100 %' });
    expect(text.slice(test?.place.start, test?.place.end)).toBe('at(100%, shaft.opening) >= wanted');
    expect(text.slice(test?.span.start, test?.span.end)).toBe(
      'both: at(50%, shaft.opening) < 40 deg and at(100%, shaft.opening) >= wanted',
    );
  });

  it('tells every comparison of one that passes', () => {
    expect(only('at(50%, shaft.opening) < 40 deg and at(100%, shaft.opening) > 50 deg')).toMatchObject({
      expected: 'less than 40°; more than 50°',
      actual: '28.6°; 57.3°',
    });
  });

  it('is an error with its reason where it cannot be decided or understood', () => {
    const unknown = only('at(100%, shaft.colour) >= 50 deg');
    expect(unknown.outcome).toBe('errored');
    expect(unknown.message).not.toBe('');
    expect(unknown).not.toHaveProperty('actual');
    expect(only('shaft.opening >= 50 deg')).toMatchObject({ outcome: 'errored', message: expect.stringMatching(/at|min|max/) as string });
    const [undriven] = requirementTests(
      solve('format: 1\nlevers: {shaft: {pivot: [0, 0]}}\nrequire:\n  opens: max(shaft.opening) > 1 deg\n'),
    );
    expect(undriven?.outcome).toBe('errored');
  });
});

describe('the ids of requirements', () => {
  const ids = (requirements: string): readonly string[] => testsOf(requirements).map(({ id }) => id);

  it('are by their names, and stay while anything else is edited, renamed or moved', () => {
    const one = '  opens, well: max(shaft.opening) > 50 deg\n';
    const other = '  soft: at(25%, shaft.opening) < 20 deg\n';
    expect(ids(one + other)).toEqual(['require/opens, well', 'require/soft']);
    expect(ids(other + one)).toEqual(['require/soft', 'require/opens, well']);
    const renamed = file(one + other)
      .replaceAll('shaft', 'spindle')
      .replace('format: 1\n', '# new\nformat: 1\n');
    expect(requirementTests(solve(renamed)).map(({ id }) => id)).toEqual(ids(one + other));
    expect(ids(one.replace('50', '51') + other)).toEqual(ids(one + other));
  });

  it('are each used once, whatever the names', () => {
    const all = ids('  "a": max(shaft.opening) > 1 deg\n  "a/2": max(shaft.opening) > 2 deg\n  a: max(shaft.opening) > 3 deg\n');
    expect(new Set(all).size).toBe(all.length);
    expect(all.length).toBeGreaterThanOrEqual(2);
  });
});

describe('requirements of any text', () => {
  const SAMPLE = readFileSync(new URL('../../examples/four-barrel.throttle.yaml', import.meta.url), 'utf8');
  const from = SAMPLE.indexOf('require:');

  it('never throw, and lie within the text', () => {
    const scrap = fc.constantFrom('', ':', '\n', ' and ', '(', '"', '\ud83d\ude00', '{', ' deg', '\r\n  x: 1 > 2\r\n');
    fc.assert(
      fc.property(fc.integer({ min: from, max: SAMPLE.length }), fc.nat(8), scrap, (at, gone, put) => {
        const text = SAMPLE.slice(0, at) + put + SAMPLE.slice(at + gone);
        const tests = requirementTests(solve(text));
        expect(new Set(tests.map(({ id }) => id)).size).toBe(tests.length);
        for (const { span, place, message } of tests) {
          expect(message).not.toBe('');
          expect(span.start >= 0 && span.end <= text.length && place.start >= span.start && place.end <= span.end).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});
