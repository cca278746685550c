import { describe, expect, test } from 'vitest';
import { Disposable } from 'vscode';
import type { LocationLink } from 'vscode';
import { provideDefinition } from '../../../extension/features/definition.ts';
import { provideHighlights } from '../../../extension/features/highlights.ts';
import { provideReferences } from '../../../extension/features/references.ts';
import { provideRename } from '../../../extension/features/rename.ts';
import {
  applied,
  FOUR_BARREL,
  forTest,
  openThrottle,
  PATIENT,
  positionOf,
  providerOf,
  serveEach,
  textIn,
} from '../../support/editorRequests.ts';
import { changeDocument } from '../../support/vscode.ts';

serveEach((answers) =>
  Disposable.from(provideDefinition(answers), provideReferences(answers), provideHighlights(answers), provideRename(answers)),
);

const CRLF = FOUR_BARREL.replaceAll('\n', '\r\n');

describe.each([
  ['LF', FOUR_BARREL],
  ['CRLF', CRLF],
])('in a file with %s', (_ends, text) => {
  test('the definition of a name is where it is declared, with its whole entry', () => {
    const document = openThrottle(text);
    const provider = providerOf('registerDefinitionProvider');
    const links = provider.provideDefinition(document, positionOf(document, 'crank_reach, angle'), PATIENT) as LocationLink[];
    expect(links.map((link) => link.targetUri)).toEqual([document.uri]);
    const [link] = links;
    expect(link?.originSelectionRange && textIn(document, link.originSelectionRange)).toBe('crank_reach');
    expect(link?.targetSelectionRange).toEqual({ start: positionOf(document, 'crank_reach: 38'), end: positionOf(document, ': 38 mm') });
    expect(link && textIn(document, link.targetRange)).toBe('crank_reach: 38 mm ± 0.1 mm');
  });

  test('references are all its places, its declaration where it is wanted', () => {
    const document = openThrottle(text);
    const provider = providerOf('registerReferenceProvider');
    const lines = (includeDeclaration: boolean): unknown => {
      const found = provider.provideReferences(document, positionOf(document, 'crank_pivot'), { includeDeclaration }, PATIENT);
      return (found as { range: { start: { line: number } } }[]).map(({ range }) => range.start.line);
    };
    expect(lines(true)).toEqual([9, 20]);
    expect(lines(false)).toEqual([20]);
  });

  test('highlights tell the declaration from the uses', () => {
    const document = openThrottle(text);
    const provider = providerOf('registerDocumentHighlightProvider');
    const found = provider.provideDocumentHighlights(document, positionOf(document, 'clevis: {'), PATIENT);
    expect((found as { range: never; kind: number }[]).map(({ range, kind }) => [textIn(document, range), kind])).toEqual([
      ['clevis', 2],
      ['clevis', 1],
    ]);
  });

  test('a rename changes every place and nothing else', async () => {
    const document = openThrottle(text);
    const provider = providerOf('registerRenameProvider');
    const place = positionOf(document, 'shaft_reach, angle');
    expect(await provider.prepareRename?.(document, place, PATIENT)).toEqual({
      range: { start: place, end: positionOf(document, 'shaft_reach, angle', 'shaft_reach'.length) },
      placeholder: 'shaft_reach',
    });
    const edit = await provider.provideRenameEdits(document, place, 'shaft_radius', PATIENT);
    expect(applied(document, edit ?? undefined)).toBe(text.replaceAll('shaft_reach', 'shaft_radius'));
  });
});

test('what cannot be renamed is refused with the reason', () => {
  const document = openThrottle(FOUR_BARREL);
  const provider = providerOf('registerRenameProvider');
  expect(() => provider.prepareRename?.(document, positionOf(document, 'title'), PATIENT)).toThrow('is a key of the format');
  const place = positionOf(document, 'shaft_reach');
  expect(() => provider.provideRenameEdits(document, place, 'crank_reach', PATIENT)).toThrow('already');
});

test('where no name stands nothing is found', () => {
  const document = openThrottle(FOUR_BARREL);
  const place = positionOf(document, '# Four');
  expect(providerOf('registerDefinitionProvider').provideDefinition(document, place, PATIENT)).toEqual([]);
  expect(providerOf('registerReferenceProvider').provideReferences(document, place, { includeDeclaration: true }, PATIENT)).toEqual([]);
});

test('names are those of the text as it stands, not as it was', () => {
  const document = openThrottle('format: 1\nlet:\n  a: 1 mm\n  b: a\n');
  const provider = providerOf('registerDefinitionProvider');
  expect(provider.provideDefinition(document, positionOf(document, 'a\n'), PATIENT)).toHaveLength(1);
  changeDocument(forTest(document), 'format: 1\nlet:\n  c: 1 mm\n  b: a\n');
  expect(provider.provideDefinition(document, positionOf(document, 'a\n'), PATIENT)).toEqual([]);
});
