import { describe, expect, it } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { selectionSpans } from '../../src/language/selectionRanges.ts';
import { takeCursor } from './support/cursorAndMarks.ts';

function grown(annotated: string): readonly string[] {
  const { text, cursor } = takeCursor(annotated);
  return selectionSpans(indexNames(text), cursor).map(({ start, end }) => text.slice(start, end));
}

describe('growing the selection', () => {
  it('goes from the name over reference, entry and part to the file', () => {
    const text = 'levers: {a: {pivot: [0, 0]}}\nrods:\n  link: {from: $0a.out, to: b.arm}\n';
    const plain = text.replace('$0', '');
    expect(grown(text)).toEqual([
      'a',
      'a.out',
      'from: a.out',
      '{from: a.out, to: b.arm}',
      'link: {from: a.out, to: b.arm}',
      'rods:\n  link: {from: a.out, to: b.arm}',
      plain.trimEnd(),
      plain,
    ]);
  });

  it('goes from a word over the text in quotes to the quotes', () => {
    expect(grown('let: {a: "3 m$0m + 2 mm"}\n').slice(0, 4)).toEqual(['mm', '3 mm + 2 mm', '"3 mm + 2 mm"', 'a: "3 mm + 2 mm"']);
  });

  it('goes from a key to its entry, and from an item to its list', () => {
    expect(grown('levers: {a: {piv$0ot: [0, 0]}}\n').slice(0, 3)).toEqual(['pivot', 'pivot: [0, 0]', '{pivot: [0, 0]}']);
    expect(grown('levers: {a: {pivot: [10, 2$00]}}\n').slice(0, 3)).toEqual(['20', '[10, 20]', 'pivot: [10, 20]']);
  });

  it('gives the whole text where nothing stands', () => {
    expect(grown('$0')).toEqual(['']);
    expect(grown('# com$0ment\n')).toEqual(['# comment\n']);
  });
});
