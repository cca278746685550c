/** What may stand at the cursor, by place, and how it is put in. */
import { type CompletionItem, CompletionItemKind, commands, Selection, SnippetString, type TextDocument, window } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openUntitled } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { untilText } from '../support/problems.ts';
import { completionsAt } from '../support/requests.ts';
import { EXAMPLE_START, untilSolved } from '../support/solved.ts';

export const completion: Suite = {
  about: 'completion',
  tests: {
    'has the keys of a place that are not there yet, each with what it means': async () => {
      const items = await itemsAt('levers:\n  shaft:\n    pivot: [0, 0]\n    $0\n');
      expectHas(items, ['arms', 'stops', 'friction', 'opens']);
      expectLacks(items, ['pivot', 'travel', 'bore']);
      const friction = itemCalled(items, 'friction');
      expectEqual(friction.kind, CompletionItemKind.Property, 'the kind of a key');
      expectTrue(textOf(friction.documentation) !== '', 'a key says what it means');
    },

    'has the words of an enumeration': async () => {
      const items = await itemsAt('levers:\n  shaft: {pivot: [0, 0], opens: $0}\n');
      expectHas(items, ['clockwise', 'counterclockwise']);
      expectEqual(itemCalled(items, 'clockwise').kind, CompletionItemKind.EnumMember, 'the kind of a word');
    },

    'has the names that fit a place, and the parts behind a dot': async () => {
      const [before, after] = EXAMPLE_START.split('{lever: pedal, opens');
      const levers = await itemsAt(`${before ?? ''}{lever: $0, opens${after ?? ''}`);
      expectHas(levers, ['pedal', 'shaft']);
      expectLacks(levers, ['link', 'bank', 'mm']);
      const pins = await itemsAt(EXAMPLE_START.replace('to: shaft.arm', 'to: shaft.$0'), '.');
      expectHas(pins, ['shaft.arm', 'shaft.tail']);
    },

    'has the units that fit behind a figure': async () => {
      const lengths = await itemsAt('levers:\n  shaft: {pivot: [0, 0], arms: {arm: {radius: 40 $0}}}\n');
      expectHas(lengths, ['mm', 'inch']);
      expectLacks(lengths, ['deg', 'N*mm']);
      const rates = await itemsAt(`${EXAMPLE_START}springs:\n  first: {lever: shaft, rate: 2 $0}\n`);
      expectHas(rates, ['N*mm/deg']);
      expectEqual(itemCalled(rates, 'N*mm/deg').kind, CompletionItemKind.Unit, 'the kind of a unit');
    },

    'has columns, functions and values in a requirement': async () => {
      const items = await itemsAt(`let: {reach: 40 mm}\n${EXAMPLE_START}require:\n  opens: at(100%, shaft.$0) >= 50 deg\n`, '.');
      expectHas(items, ['opening', 'rotation', 'ratio']);
      const functions = await itemsAt(`let: {reach: 40 mm}\n${EXAMPLE_START}require:\n  opens: $0\n`);
      expectHas(functions, ['at', 'max', 'where', 'reach', 'shaft']);
    },

    'has a block to fill in, as a snippet, which the editor puts in with its stops': async () => {
      const at = `format: 1\nlevers:\n  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}\nro$0`;
      const items = await itemsAt(at, undefined, '');
      const rods = items.find(({ label, insertText }) => nameOf(label).startsWith('rods') && insertText instanceof SnippetString);
      if (!(rods?.insertText instanceof SnippetString)) throw new Error(`no block of rods among ${names(items).join(', ')}`);
      expectTrue(/\$\{?\d/.test(rods.insertText.value), `its stops: ${rods.insertText.value}`);
      const editor = window.activeTextEditor;
      const range = rods.range;
      if (editor === undefined || range === undefined) throw new Error('there is nowhere to put it');
      await editor.insertSnippet(rods.insertText, 'inserting' in range ? range.replacing : range);
      const text = editor.document.getText();
      expectTrue(/\nrods:\n {2}\w+:/.test(text) && !text.includes('${'), `the text is\n${text}`);
      expectTrue(!editor.selection.isEmpty || editor.selections.length > 0, 'nothing is selected to be written over');
    },

    'is put in by the key that accepts it': async () => {
      const { document, offset } = await openAt('format: 1\nlevers:\n  shaft: {pivot: [0, 0], opens: counterc$0}\n', '');
      await untilSolved(document);
      const editor = window.activeTextEditor;
      if (editor === undefined) throw new Error('there is no editor');
      const place = document.positionAt(offset);
      editor.selection = new Selection(place, place);
      await commands.executeCommand('editor.action.triggerSuggest');
      const expected = 'format: 1\nlevers:\n  shaft: {pivot: [0, 0], opens: counterclockwise}\n';
      await acceptSuggestion(document, expected);
    },
  },
};

/** The list opens some time after it is asked for, and no event tells of it: accepting it does nothing until then. */
async function acceptSuggestion(document: TextDocument, expected: string): Promise<void> {
  for (let turn = 0; turn < MANY_TURNS && document.getText() !== expected; turn++) {
    await commands.executeCommand('acceptSelectedSuggestion');
  }
  await untilText(document, expected);
}

/** Each is a round trip to the window. */
const MANY_TURNS = 2000;

async function itemsAt(marked: string, trigger?: string, head = 'format: 1\n'): Promise<readonly CompletionItem[]> {
  const { document, offset } = await openAt(marked, head);
  await untilSolved(document);
  return (await completionsAt(document, document.positionAt(offset), trigger)).items;
}

/** @param marked with `$0` where the cursor stands */
async function openAt(marked: string, head: string): Promise<{ readonly document: TextDocument; readonly offset: number }> {
  const [before, after] = `${head}${marked}`.split('$0');
  if (before === undefined || after === undefined) throw new Error('there must be one $0');
  return { document: await openUntitled(LANGUAGE_ID, before + after), offset: before.length };
}

const nameOf = (label: CompletionItem['label']): string => (typeof label === 'string' ? label : label.label);
const names = (items: readonly CompletionItem[]): readonly string[] => items.map(({ label }) => nameOf(label));
const textOf = (page: CompletionItem['documentation']): string => (typeof page === 'object' ? page.value : (page ?? ''));

function itemCalled(items: readonly CompletionItem[], wanted: string): CompletionItem {
  const item = items.find(({ label }) => nameOf(label) === wanted);
  if (item === undefined) throw new Error(`there is no ${wanted} among ${names(items).join(', ')}`);
  return item;
}

function expectHas(items: readonly CompletionItem[], wanted: readonly string[]): void {
  const found = names(items);
  expectEqual(
    wanted.filter((each) => !found.includes(each)),
    [],
    `what is not offered of ${found.join(', ')}`,
  );
}

function expectLacks(items: readonly CompletionItem[], unwanted: readonly string[]): void {
  expectEqual(
    names(items).filter((each) => unwanted.includes(each)),
    [],
    'what is offered and does not belong here',
  );
}
