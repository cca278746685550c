/** What the editor takes for a word in a throttle file: for a double click, for the cursor's jumps and where nothing better is known. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

interface LanguageConfiguration {
  readonly wordPattern: { readonly pattern: string; readonly flags: string };
}

const { wordPattern } = JSON.parse(
  readFileSync(new URL('../../extension/languageConfiguration.json', import.meta.url), 'utf8'),
) as LanguageConfiguration;

/** The words of a text, in their order. */
function wordsOf(text: string): readonly string[] {
  return [...text.matchAll(new RegExp(wordPattern.pattern, `${wordPattern.flags}g`))].map(([word]) => word);
}

test('a name and a figure are a word each, and a part and its pin are two', () => {
  expect(wordsOf('link_2: {from: crank.out, length: 36.5 mm, angle: -12 deg}')).toEqual([
    'link_2',
    'from',
    'crank',
    'out',
    'length',
    '36.5',
    'mm',
    'angle',
    '-12',
    'deg',
  ]);
});

test('words of any script are whole, in titles, comments and names of requirements', () => {
  expect(wordsOf('öffnet ganz: φ # größer, cafe\u0301, スロットル')).toEqual(['öffnet', 'ganz', 'φ', 'größer', 'cafe\u0301', 'スロットル']);
});
