import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexLines } from '../../src/definition/span.ts';
import { excerpt, placeName } from '../../src/outputs/excerpt.ts';
import { widthOf } from '../../src/outputs/width.ts';

/** The excerpt of the first place where `words` stand. */
const about = (text: string, words: string, width?: number): readonly string[] => {
  const start = text.indexOf(words);
  return excerpt(text, { start, end: start + words.length }, width === undefined ? {} : { width });
};

describe('an excerpt', () => {
  it('puts carets under the very characters, with the number of the line', () => {
    expect(about('a: 1\nb: {radius: 0 mm}\n', '0 mm')).toEqual(['2 | b: {radius: 0 mm}', '  |             ^^^^']);
  });

  it('keeps the carets in place behind tabs', () => {
    expect(about('\tx:\tbad', 'bad')).toEqual(['1 |   x:  bad', '  |       ^^^']);
  });

  it('gives wide characters two cells and combining marks none', () => {
    expect(about('title: 節気 e\u0301 bad', 'bad')[1]).toBe('  |               ^^^');
    expect(about('節気', '気')[1]).toBe('  |   ^^');
  });

  it.each(['\r\n', '\r', '\n'])('leaves out the line ending %j', (ending) => {
    expect(about(`a: 1${ending}b: 2${ending}`, 'b: 2')).toEqual(['2 | b: 2', '  | ^^^^']);
  });

  it('does not count a byte order mark', () => {
    expect(about('\ufeffformat: 2', '2')).toEqual(['1 | format: 2', '  |         ^']);
  });

  it('shows a span over several lines by its first', () => {
    expect(about('rods:\n  a: 1\n', 's:\n  a')).toEqual(['1 | rods:', '  |    ^^']);
  });

  it('marks an empty span, and one behind the end, by one caret', () => {
    expect(excerpt('ab', { start: 1, end: 1 })).toEqual(['1 | ab', '  |  ^']);
    expect(excerpt('', { start: 7, end: 9 })).toEqual(['1 |', '  | ^']);
  });

  it('trims a long line around the span', () => {
    const [line = '', carets = ''] = about(`${'a'.repeat(300)} bad ${'z'.repeat(300)}`, 'bad', 40);
    expect(line).toMatch(/^1 \| …a+ bad z+…$/);
    expect(widthOf(line)).toBe(44);
    expect(line.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1)).toBe('bad');
  });

  it('trims a span that is itself too long', () => {
    expect(about('x'.repeat(500), 'x'.repeat(400), 30)).toEqual([`1 | ${'x'.repeat(27)}…`, `  | ${'^'.repeat(28)}`]);
  });

  it('disarms escape codes and marks that turn the direction of writing', () => {
    expect(about('t: \u001b[31mred\u202e bad', 'bad')[0]).toBe('1 | t: \ufffd[31mred\ufffd bad');
  });

  it('keeps to the width and puts its carets within the line, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 120 }),
        fc.nat(130),
        fc.nat(130),
        fc.integer({ min: 20, max: 80 }),
        (text, a, b, width) => {
          const [line = '', carets = ''] = excerpt(text, { start: Math.min(a, b), end: Math.max(a, b) }, { width });
          const lead = line.indexOf('|') + 2;
          expect(widthOf(line)).toBeLessThanOrEqual(width + lead);
          expect(widthOf(carets)).toBeLessThanOrEqual(width + lead);
          expect(carets).toMatch(/^ *\| *\^+$/);
          expect(line + carets).not.toMatch(/[\p{Cc}]/u);
        },
      ),
    );
  });
});

describe('the name of a place', () => {
  it('counts lines and columns from 1, without the byte order mark', () => {
    const text = '\ufeffab\r\ncd';
    const lines = indexLines(text);
    expect(placeName('f', { start: 2, end: 3 }, lines)).toBe('f:1:2');
    expect(placeName('f', { start: text.indexOf('d'), end: text.length }, lines)).toBe('f:2:2');
  });
});
