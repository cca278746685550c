/** How a text becomes a word, in English and in another language. */
import { afterEach, describe, expect, test } from 'vitest';
import { gapsOf, spoken, takeTranslations, withPhrases } from '../../../webview/words/say.ts';
import { textsOf } from '../../support/pseudoWords.ts';

const words = spoken({ close: 'Close', all: 'Show all {count} {name}', kinds: { rod: 'rod' } });

afterEach(() => takeTranslations({}));

describe('a word', () => {
  test('is English where nothing was handed over, with what belongs in its gaps', () => {
    expect([words.close, words.all(12, 'parts'), words.kinds.rod]).toEqual(['Close', 'Show all 12 parts', 'rod']);
  });

  test('is as it was handed over, its gaps in any order', () => {
    takeTranslations({ Close: 'Fermer', 'Show all {count} {name}': '{name} : montrer les {count}', rod: 'bielle' });
    expect([words.close, words.all(12, 'pièces'), words.kinds.rod]).toEqual(['Fermer', 'pièces : montrer les 12', 'bielle']);
  });

  test.each([
    ['lacks a gap', 'Montrer {count}'],
    ['has a gap too many', 'Montrer {count} {name} {place}'],
    ['has a gap of another name', 'Montrer {nombre} {name}'],
    ['is empty', ' '],
  ])('stays English where its translation %s', (_, text) => {
    takeTranslations({ 'Show all {count} {name}': text, Close: 'Fermer' });
    expect([words.all(12, 'parts'), words.close]).toEqual(['Show all 12 parts', 'Fermer']);
  });

  test('is not looked for among what every object has', () => {
    expect(spoken({ odd: 'constructor' }).odd).toBe('constructor');
  });

  test('that is put together from others follows their language', () => {
    const both = withPhrases(words, { closeAll: () => `${words.close}!` });
    takeTranslations({ Close: 'Fermer' });
    expect([both.close, both.closeAll()]).toEqual(['Fermer', 'Fermer!']);
  });

  test('takes a gap for nothing else than its name: what fills it may look like one', () => {
    expect(words.all('{name}', '$& {count}')).toBe('Show all {name} $& {count}');
  });
});

describe('the English texts', () => {
  test('have no gap twice, and no markup', () => {
    const wrong = textsOf().filter((text) => new Set(gapsOf(text)).size !== gapsOf(text).length || /[<>]/.test(text));
    expect(wrong).toEqual([]);
  });
});
