import '../support/seed.ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import type { Replacement } from '../../src/definition/problem.ts';
import { compose, offsetIn } from '../../src/edits/compose.ts';

/** Edits of a text that do not overlap, drawn from pairs of places and what is put there. */
function anyEdits(length: number): fc.Arbitrary<readonly Replacement[]> {
  const place = fc.nat({ max: length });
  return fc.array(fc.tuple(place, place, fc.string({ maxLength: 4 })), { maxLength: 4 }).map((drawn) => {
    const ends = drawn.flatMap(([a, b]) => [a, b]).sort((a, b) => a - b);
    return drawn
      .map(([, , text], index) => ({ span: { start: ends[2 * index]!, end: ends[2 * index + 1]! }, text }))
      .filter(({ span }, index, all) => index === 0 || span.start > all[index - 1]!.span.end);
  });
}

const TEXT = 'abcdefghijklmnopqrstuvwxyz';

test('edits of edits do at once what they do one after the other', () => {
  fc.assert(
    fc.property(
      anyEdits(TEXT.length).chain((first) => fc.tuple(fc.constant(first), anyEdits(applyEdits(TEXT, first).length))),
      ([first, then]) => {
        const composed = compose(first, then);
        expect(applyEdits(TEXT, composed)).toBe(applyEdits(applyEdits(TEXT, first), then));
      },
    ),
    { numRuns: 2000 },
  );
});

test('a character that was not edited is found where it stood', () => {
  fc.assert(
    fc.property(anyEdits(TEXT.length), (edits) => {
      const upper = edits.map(({ span, text }) => ({ span, text: text.toUpperCase().replace(/[a-z]/g, '_') }));
      const after = applyEdits(TEXT, upper);
      for (let i = 0; i < after.length; i++) {
        if (/[a-z]/.test(after[i]!)) expect(TEXT[offsetIn(upper, i)]).toBe(after[i]);
        const back = offsetIn(upper, i);
        expect(back >= 0 && back <= TEXT.length).toBe(true);
      }
      expect(offsetIn(upper, after.length)).toBe(TEXT.length);
    }),
    { numRuns: 1000 },
  );
});

test('a place within what an edit has put in is as far behind its start in the text before, and not behind its end', () => {
  const edits = [{ span: { start: 10, end: 14 }, text: 'abcdefgh' }];
  expect([9, 10, 12, 14, 17, 18, 20].map((offset) => offsetIn(edits, offset))).toEqual([9, 10, 12, 14, 14, 14, 16]);
});
