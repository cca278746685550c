import { expect, test } from 'vitest';
import type * as vscode from 'vscode';
import type { DocumentAnswers } from '../../../extension/answers.ts';
import { provideCompletion } from '../../../extension/features/completion.ts';
import { cancelledToken, FOUR_BARREL, forTest, openThrottle, PATIENT, providerOf, serveEach } from '../../support/editorRequests.ts';
import { changeDocument, CompletionItem, CompletionItemKind, providers, SnippetString } from '../../support/vscode.ts';

let answers: DocumentAnswers;

serveEach((kept) => {
  answers = kept;
  return provideCompletion(kept);
});

/** The items at `|`, which is taken out of the text. */
function itemsAt(marked: string, token = PATIENT): { readonly document: vscode.TextDocument; readonly items: readonly CompletionItem[] } {
  const document = openThrottle(marked.replace('|', ''));
  return { document, items: ask(document, marked.indexOf('|'), token) };
}

function ask(document: vscode.TextDocument, offset: number, token = PATIENT): readonly CompletionItem[] {
  const provider = providerOf('registerCompletionItemProvider');
  return provider.provideCompletionItems(document, document.positionAt(offset), token, {} as never) as unknown as readonly CompletionItem[];
}

const labelled = (items: readonly CompletionItem[], label: string): CompletionItem | undefined =>
  items.find((item) => item.label === label);

const START = FOUR_BARREL.slice(0, FOUR_BARREL.indexOf('require:'));

test('asks also behind a dot, a blank and an opening bracket', () => {
  expect(providers.get('registerCompletionItemProvider')?.rest).toEqual(['.', ' ', '{', '[']);
});

test.each(['\n', '\r\n'])('the word at the cursor is replaced, or only what stands before it (%j)', (end) => {
  const { document, items } = itemsAt(`# 🔧\nformat: 1\nlevers:\n  shaft: {piv|ot: [0, 0]}\n`.replaceAll('\n', end));
  const item = labelled(items, 'pivot');
  const at = (words: string, behind: number): vscode.Position => document.positionAt(document.getText().indexOf(words) + behind);
  expect(item?.range).toEqual({
    inserting: { start: at('pivot', 0), end: at('pivot', 3) },
    replacing: { start: at('pivot', 0), end: at('pivot', 5) },
  });
});

test('a block comes as a snippet with its meaning, in the order in which it is likely', () => {
  const { items } = itemsAt('format: 1\n|');
  const levers = labelled(items, 'levers');
  expect(levers?.kind).toBe(CompletionItemKind.Property);
  expect(levers?.insertText).toBeInstanceOf(SnippetString);
  expect(levers?.documentation?.value).not.toBe('');
  expect(levers?.sortText).toMatch(/^\d+$/);
});

test('a part whose columns follow asks again once it stands there', () => {
  const { items } = itemsAt(`${START}require:\n  opens: max(|)\n`);
  const shaft = items.find(({ insertText }) => insertText === 'shaft.');
  expect(shaft?.command?.command).toBe('editor.action.triggerSuggest');
  const column = itemsAt(`${START}require:\n  opens: max(shaft.|)\n`).items.find(({ label }) => label.includes('opening'));
  expect(column?.kind).toBe(CompletionItemKind.Value);
  expect(column?.command).toBeUndefined();
});

test('nothing is offered in comments, nor to a request that is cancelled', () => {
  expect(itemsAt('format: 1\n# lev|\n').items).toEqual([]);
  expect(itemsAt('format: 1\n|', cancelledToken()).items).toEqual([]);
});

test('what was solved before the last letter is told of a name, and nothing is solved for it', () => {
  const text = FOUR_BARREL.replace('bank: {lever: shaft', 'bank: {lever: ');
  const offset = text.indexOf('bank: {lever: ') + 'bank: {lever: '.length;
  const document = openThrottle(text);
  expect(labelled(ask(document, offset), 'shaft')?.detail).toBe('lever');
  expect(answers.latest(document)).toBeUndefined();
  changeDocument(forTest(document), FOUR_BARREL);
  answers.solveNow(document);
  changeDocument(forTest(document), text);
  expect(labelled(ask(document, offset), 'shaft')?.detail).toContain('opens 82°');
  expect(answers.latest(document)?.text).toBe(FOUR_BARREL);
});
