import { expect, test } from 'vitest';
import { Disposable } from 'vscode';
import type { DocumentSelector, DocumentSymbol, Range, SelectionRange } from 'vscode';
import { provideFolding } from '../../../extension/features/folding.ts';
import { provideSelectionRanges } from '../../../extension/features/selectionRanges.ts';
import { provideSymbols } from '../../../extension/features/symbols.ts';
import { provideTokens } from '../../../extension/features/tokens.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../../../src/language/tokens.ts';
import {
  cancelledToken,
  FOUR_BARREL,
  forTest,
  openThrottle,
  PATIENT,
  positionOf,
  providerOf,
  serveEach,
  textIn,
} from '../../support/editorRequests.ts';
import { changeDocument, type FoldingRange, providers, type SemanticTokens } from '../../support/vscode.ts';

serveEach((answers) =>
  Disposable.from(provideFolding(answers), provideSelectionRanges(answers), provideSymbols(answers), provideTokens(answers)),
);

const CRLF = FOUR_BARREL.replaceAll('\n', '\r\n');

test('everything is asked for throttle files only, on whatever file system', () => {
  const selectors = new Set([...providers.values()].map(({ selector }) => JSON.stringify(selector as DocumentSelector)));
  expect([...selectors]).toEqual(['{"language":"throttle-linkage"}']);
});

test('the outline has blocks, parts and arms, each within its parent, with figures of the travel', async () => {
  const document = openThrottle(CRLF);
  const symbols = (await outlineOf(document)) ?? [];
  const levers = symbols.find(({ name }) => name === 'levers');
  const shaft = levers?.children.find(({ name }) => name === 'shaft');
  expect(shaft?.children.map(({ name }) => name)).toEqual(['arm']);
  expect(shaft?.detail).toContain('82°');
  expect(shaft && textIn(document, shaft.selectionRange)).toBe('shaft');
  requireNested(document, symbols);
});

function requireNested(document: Parameters<typeof textIn>[0], symbols: readonly DocumentSymbol[], parent?: Range): void {
  for (const { range, selectionRange, children } of symbols) {
    const [from, to] = [document.offsetAt(range.start), document.offsetAt(range.end)];
    if (parent !== undefined) {
      expect(from).toBeGreaterThanOrEqual(document.offsetAt(parent.start));
      expect(to).toBeLessThanOrEqual(document.offsetAt(parent.end));
    }
    expect(document.offsetAt(selectionRange.start)).toBeGreaterThanOrEqual(from);
    expect(document.offsetAt(selectionRange.end)).toBeLessThanOrEqual(to);
    requireNested(document, children, range);
  }
}

const outlineOf = (document: Parameters<typeof textIn>[0], token = PATIENT): Promise<DocumentSymbol[] | undefined> =>
  Promise.resolve(providerOf('registerDocumentSymbolProvider').provideDocumentSymbols(document, token)) as Promise<
    DocumentSymbol[] | undefined
  >;

test('an outline that nobody waits for is not made', async () => {
  const document = openThrottle(FOUR_BARREL);
  expect(await outlineOf(document, cancelledToken())).toBeUndefined();
  const asked = outlineOf(document);
  changeDocument(forTest(document), 'format: 1\n');
  expect(await asked).toBeUndefined();
});

test('blocks, parts and comments fold, on the same lines whatever ends them', async () => {
  const foldsOf = async (text: string): Promise<unknown> => {
    const document = openThrottle(text);
    const ranges = await providerOf('registerFoldingRangeProvider').provideFoldingRanges(document, {}, PATIENT);
    return (ranges as unknown as FoldingRange[]).map(({ start, end, kind }) => `${start}-${end}${kind === 1 ? ' comment' : ''}`);
  };
  const folds = await foldsOf(FOUR_BARREL);
  expect(folds).toContain('0-2 comment');
  expect(folds).toContain('12-31');
  expect(await foldsOf(CRLF)).toEqual(folds);
});

test('the selection grows from each cursor over its value to the whole file', async () => {
  const document = openThrottle(CRLF);
  const provider = providerOf('registerSelectionRangeProvider');
  const cursors = [positionOf(document, '22 mm', 1), positionOf(document, 'Four barrels')];
  const [first, second] = ((await provider.provideSelectionRanges(document, cursors, PATIENT)) ?? []).map((range) => wideningOf(range));
  expect(first?.[0] && textIn(document, first[0])).toBe('22');
  expect(first?.[1] && textIn(document, first[1])).toBe('22 mm');
  expect(first?.at(-1) && textIn(document, first.at(-1)!)).toBe(CRLF);
  expect(second?.at(-1) && textIn(document, second.at(-1)!)).toBe(CRLF);
});

function wideningOf(range: SelectionRange | undefined): Range[] {
  return range === undefined ? [] : [range.range, ...wideningOf(range.parent)];
}

test('tokens stand at their words and go by the legend', async () => {
  const document = openThrottle(CRLF);
  const words = (await tokensOf(document))?.pushed.map(([line = 0, character = 0, length = 0, type = 0, modifiers = 0]) => {
    const start = forTest(document).offsetAt({ line, character } as never);
    const set = TOKEN_MODIFIERS.filter((_, index) => (modifiers & (1 << index)) !== 0);
    return [document.getText().slice(start, start + length), TOKEN_TYPES[type], ...set].join(' ');
  });
  expect(words).toContain('crank_reach variable declaration');
  expect(words).toContain('38 number');
  expect(words).toContain('0.1 number tolerance');
  expect(words).toContain('at function defaultLibrary');
  expect(providers.get('registerDocumentSemanticTokensProvider')?.rest[0]).toMatchObject({
    tokenTypes: TOKEN_TYPES,
    tokenModifiers: TOKEN_MODIFIERS,
  });
});

const tokensOf = async (document: Parameters<typeof textIn>[0], token = PATIENT): Promise<SemanticTokens | undefined> => {
  const provider = providerOf('registerDocumentSemanticTokensProvider');
  return (await provider.provideDocumentSemanticTokens(document, token)) as unknown as SemanticTokens | undefined;
};

test('tokens of a text that has changed since, or that nobody waits for, are not given', async () => {
  const document = openThrottle(FOUR_BARREL);
  expect(await tokensOf(document, cancelledToken())).toBeUndefined();
  const asked = tokensOf(document);
  changeDocument(forTest(document), 'format: 1\n');
  expect(await asked).toBeUndefined();
});
