/** Outline, folding and growing the selection. */
import { type DocumentSymbol, FoldingRangeKind } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openUntitled } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { foldsOf, outlineOf, positionOf, selectionsAt } from '../support/requests.ts';
import { EXAMPLE } from '../support/solved.ts';

export const structure: Suite = {
  about: 'structure',
  tests: {
    'is an outline of blocks, parts, and the arms of levers': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const outline = await outlineOf(document);
      const paths = outline.flatMap((symbol) => pathsOf(symbol));
      for (const path of ['let', 'let/reach', 'levers', 'levers/shaft', 'levers/shaft/arm', 'rods/link', 'require/long arm']) {
        expectTrue(paths.includes(path), `there is no ${path} in ${paths.join(', ')}`);
      }
      const shaft = find(outline, 'levers', 'shaft');
      expectEqual(shaft.selectionRange.start, positionOf(document, 'shaft: #'), 'where shaft stands');
      expectTrue(shaft.detail.includes('60°'), `what is said of shaft: ${shaft.detail}`);
    },

    'follows what is typed, with a mistake in it too': async () => {
      const document = await openUntitled(LANGUAGE_ID, `${EXAMPLE}springs:\n  first: {lever: shaft, rate: \n`);
      expectTrue((await outlineOf(document)).flatMap((symbol) => pathsOf(symbol)).includes('springs/first'), 'the spring');
    },

    'folds blocks, parts and comments': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const folds = await foldsOf(document);
      const lineOf = (wanted: string): number => positionOf(document, wanted).line;
      const has = (from: string, to: string): boolean => folds.some(({ start, end }) => start === lineOf(from) && end === lineOf(to));
      expectTrue(has('levers:', 'arms: {arm'), `the block of levers: ${JSON.stringify(folds)}`);
      expectTrue(has('shaft: #', 'arms: {arm'), `the lever shaft: ${JSON.stringify(folds)}`);
      const comment = folds.find(({ start }) => start === lineOf('# A parallelogram'));
      expectEqual([comment?.end, comment?.kind], [lineOf('# to look at'), FoldingRangeKind.Comment], 'the comment');
    },

    'is what a growing selection takes in': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const [innermost] = await selectionsAt(document, positionOf(document, 'pedal.out', 8));
      const taken: string[] = [];
      for (let each = innermost; each !== undefined; each = each.parent) taken.push(document.getText(each.range));
      const places = ['pedal.out', 'from: pedal.out'].map((wanted) => taken.findIndex((text) => text === wanted));
      expectTrue(
        places.every((place, i) => place >= 0 && place > (places[i - 1] ?? -1)),
        `it takes in\n${taken.join('\n--\n')}`,
      );
      expectEqual(taken.at(-1), EXAMPLE, 'all that it takes in');
    },
  },
};

function pathsOf({ name, children }: DocumentSymbol, before = ''): readonly string[] {
  const path = `${before}${name}`;
  return [path, ...children.flatMap((child) => pathsOf(child, `${path}/`))];
}

function find(symbols: readonly DocumentSymbol[], ...path: readonly string[]): DocumentSymbol {
  const [first, ...rest] = path;
  const symbol = symbols.find(({ name }) => name === first);
  if (symbol === undefined) throw new Error(`there is no ${first ?? ''} among ${symbols.map(({ name }) => name).join(', ')}`);
  return rest.length === 0 ? symbol : find(symbol.children, ...rest);
}
