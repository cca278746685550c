import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../src/definition/edit.ts';
import { solve } from '../../../src/solve.ts';
import { keepsAll } from '../../../src/studies/tune/answers.ts';
import { editsOfValues, tuneText } from '../../../src/tuneText.ts';
import { finished } from '../../../src/studies/finished.ts';
import { hiddenTruths } from '../../support/hiddenTruths.ts';

/** Of the first of the hundred that the benchmark goes through. */
const COUNT = 15;

describe('a linkage that is known to exist', () => {
  test.each(hiddenTruths(COUNT).map((truth, i) => [i, truth] as const))('is found again from its curve alone: %i', (_, truth) => {
    const outcome = finished(tuneText(truth.text));
    if (outcome.kind !== 'tuned') throw new Error(outcome.why);
    const [best] = outcome.answers;
    expect(best).toBeDefined();
    expect(keepsAll(best!)).toBe(true);
    // Held against the true openings by solving the file with the values written in.
    const { definition } = solve(truth.text);
    const values = best!.values.map(({ value }) => value);
    const tuned = solve(applyEdits(truth.text, editsOfValues(truth.text, definition!, values)));
    const hundredths = Array.from({ length: 101 }, (__, i) => i / 100);
    const [opening] = tuned.table(hundredths, ['shaft.opening']).columns;
    truth.opening.forEach((value, i) => expect(Math.abs(opening!.values[i]! - value)).toBeLessThan(0.1));
    expect(tuned.findings.filter(({ code }) => code === 'transmission-angle')).toEqual([]);
  });

  test('is found the same every time', () => {
    const [{ text }] = hiddenTruths(1) as [ReturnType<typeof hiddenTruths>[number]];
    expect(finished(tuneText(text))).toEqual(finished(tuneText(text)));
  });
});
