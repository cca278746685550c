import { describe, expect, test, vi } from 'vitest';
import { Disposable, EventEmitter } from 'vscode';
import type * as vscode from 'vscode';
import type { DocumentAnswers } from '../../../extension/answers.ts';
import { provideCodeLenses } from '../../../extension/features/codeLenses.ts';
import { REVEAL_PART, revealParts } from '../../../extension/features/revealPart.ts';
import {
  cancelledToken,
  FOUR_BARREL,
  forTest,
  openThrottle,
  PATIENT,
  providerOf,
  serveEach,
  set,
  textIn,
} from '../../support/editorRequests.ts';
import { changeDocument, type CodeLens, commands, showEditor } from '../../support/vscode.ts';

let answers: DocumentAnswers | undefined;
/** Of the file whose view can be seen. */
let inSight: string | undefined;
let seen: EventEmitter<void>;
serveEach((served) => {
  answers = served;
  inSight = undefined;
  seen = new EventEmitter<void>();
  const views = { isInSight: (uri: vscode.Uri) => uri.toString() === inSight, onDidChange: seen.event };
  return Disposable.from(provideCodeLenses(served, views), revealParts(served));
});

const provider = (): vscode.CodeLensProvider => providerOf('registerCodeLensProvider');
const placesOf = async (document: vscode.TextDocument, token = PATIENT): Promise<readonly CodeLens[] | undefined> =>
  (await provider().provideCodeLenses(document, token)) as unknown as readonly CodeLens[] | undefined;
const resolved = async (lens: CodeLens, token = PATIENT): Promise<CodeLens> =>
  (await provider().resolveCodeLens?.(lens as unknown as vscode.CodeLens, token)) as unknown as CodeLens;
/** Those of parts, as they are once each was seen. */
const lensesOf = async (document: vscode.TextDocument): Promise<readonly Told[]> => {
  const all = await Promise.all(((await placesOf(document)) ?? []).map(async (lens) => (await resolved(lens)) as Told));
  return all.filter(({ command }) => command.command === REVEAL_PART);
};
type Told = CodeLens & { readonly command: NonNullable<CodeLens['command']> };

test.each(['\n', '\r\n'])('each part of the load path has one, with the figure that matters (%j)', async (end) => {
  const document = openThrottle(FOUR_BARREL.replaceAll('\n', end));
  const lenses = await lensesOf(document);
  const shaft = lenses.find(({ range }) => textIn(document, range as never) === 'shaft');
  expect(shaft?.command.title).toContain('opens 82°');
  expect(shaft?.command.arguments).toEqual([{ uri: document.uri.toString(), part: 'lever', name: 'shaft' }]);
  const named = lenses.map(({ range }) => textIn(document, range as never));
  expect(named).toEqual(['bellcrank', 'shaft', 'pedal', 'main', 'link', 'bank', 'position', 'return_front', 'return_rear']);
});

test('they stay where they are while nothing can be solved, and say so', async () => {
  const document = openThrottle(FOUR_BARREL);
  const before = await lensesOf(document);
  changeDocument(
    forTest(document),
    FOUR_BARREL.replace('pedal: {lever: pedal,', 'pedal: {lever: peda,').replace('  link:', '  drag_link:'),
  );
  const during = await lensesOf(document);
  expect(new Set(during.map(({ command }) => command.title))).toEqual(new Set(['not solved']));
  const lines = (lenses: readonly CodeLens[]): unknown => lenses.map(({ range }) => range.start.line);
  expect(lines(during)).toEqual(lines(before));
  changeDocument(forTest(document), FOUR_BARREL);
  expect((await lensesOf(document)).map(({ command }) => command.title)).toEqual(before.map(({ command }) => command.title));
});

test('where they stand is told without solving, and what one says when it is asked for, of the text as it stands', async () => {
  const document = openThrottle(FOUR_BARREL);
  changeDocument(forTest(document), `${FOUR_BARREL}# changed\n`);
  const before = answers?.latest(document);
  const places = (await placesOf(document)) ?? [];
  const [, ...parts] = places;
  expect([parts.length, parts.filter(({ command }) => command !== undefined)]).toEqual([9, []]);
  expect(answers?.latest(document)).toBe(before);
  const shaft = places.find(({ range }) => textIn(document, range as never) === 'shaft')!;
  expect((await resolved(shaft)).command?.title).toContain('opens 82°');
  // Asked for of a text that is gone by then, it says what it said, and of one that was never solved nothing.
  const again = resolved(shaft);
  changeDocument(forTest(document), FOUR_BARREL.replace('open: 82 deg', 'open: 70 deg'));
  expect((await again).command?.title).toContain('opens 82°');
  expect((await resolved(shaft)).command?.title).toContain('opens 70°');
  const other = openThrottle(FOUR_BARREL);
  const [, first] = (await placesOf(other)) ?? [];
  expect((await resolved(first!, cancelledToken())).command?.title).toBe('not solved');
});

const TUNE =
  'tune:\n  free: {crank_reach: {from: 30 mm, to: 45 mm}}\n  curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 82 deg]]}\n';

test('what begins a study stands above it once the text was solved, and the editor is told', async () => {
  const document = openThrottle(FOUR_BARREL);
  changeDocument(forTest(document), FOUR_BARREL + TUNE);
  let asks = 0;
  const listening = provider().onDidChangeCodeLenses?.(() => asks++);
  const studies = async (): Promise<unknown> => (await placesOf(document))?.flatMap(({ command }) => command?.command ?? []);
  expect([await studies(), asks]).toEqual([['pedalToPlate.openView'], 0]);
  await vi.waitFor(() => expect(asks).toBe(1));
  expect(await studies()).toContain('pedalToPlate.findDimensions');
  listening?.dispose();
});

test('of a text with one mistake only what depends on it loses its figure, and a part that is taken out its line', async () => {
  const document = openThrottle(FOUR_BARREL);
  const before = await lensesOf(document);
  changeDocument(forTest(document), FOUR_BARREL.replace('from: bellcrank.out', 'from: bellcrank.ou'));
  const during = await lensesOf(document);
  const named = (lenses: readonly CodeLens[]): string[] => lenses.map(({ range }) => textIn(document, range as never)).sort();
  const unsolved = during.filter(({ command }) => command.title === 'not solved');
  expect(named(unsolved)).toContain('link');
  expect(named(unsolved)).not.toContain('main');
  expect(during.map(({ range }) => range.start.line).sort()).toEqual(before.map(({ range }) => range.start.line).sort());
  changeDocument(forTest(document), FOUR_BARREL.slice(0, FOUR_BARREL.indexOf('rods:')));
  expect(named(await lensesOf(document))).not.toContain('link');
});

test('a text without parts has none', async () => {
  expect(await lensesOf(openThrottle('format: 1\n'))).toEqual([]);
});

test('the view is opened from the top of the text, while it is not in sight', async () => {
  const document = openThrottle(`# of a car\n${FOUR_BARREL}`);
  const top = async (): Promise<unknown> =>
    (await placesOf(document))?.flatMap(({ range, command }) =>
      command?.command === 'pedalToPlate.openView' ? [[textIn(document, range as never), command.title, command.arguments]] : [],
    );
  const uri = document.uri.toString();
  expect(await top()).toEqual([['format', 'Open mechanism view', [{ uri }]]]);
  let asks = 0;
  const listening = provider().onDidChangeCodeLenses?.(() => asks++);
  inSight = uri;
  seen.fire();
  expect([asks, await top()]).toEqual([1, []]);
  inSight = undefined;
  seen.fire();
  expect([asks, await top()]).toEqual([2, [['format', 'Open mechanism view', [{ uri }]]]]);
  listening?.dispose();
  // A text without a key has no place for it.
  expect(await placesOf(openThrottle('# nothing yet\n'))).toEqual([]);
});

test('they can be switched off, and the editor asks again at once', async () => {
  const document = openThrottle(FOUR_BARREL);
  let asks = 0;
  const listening = provider().onDidChangeCodeLenses?.(() => asks++);
  set('pedalToPlate.codeLens', false);
  expect([asks, await lensesOf(document)]).toEqual([1, []]);
  listening?.dispose();
});

test('none are made where nobody waits for them, nor of a text that has changed', async () => {
  const document = openThrottle(FOUR_BARREL);
  expect(await placesOf(document, cancelledToken())).toBeUndefined();
  const asked = placesOf(document);
  changeDocument(forTest(document), 'format: 1\n');
  expect(await asked).toBeUndefined();
});

describe('a lens that is chosen', () => {
  test.each(['shaft', 'pedal', 'main', 'link', 'bank', 'position', 'return_rear'])('shows %s where it is now', async (name) => {
    const document = openThrottle(FOUR_BARREL);
    const editor = showEditor(forTest(document));
    const lens = (await lensesOf(document)).find(({ range }) => textIn(document, range as never) === name);
    changeDocument(forTest(document), `# one more line\n${FOUR_BARREL}`);
    await commands.executeCommand(lens!.command.command, ...lens!.command.arguments);
    expect(textIn(document, editor.selection as never)).toBe(name);
    expect(editor.selection.start.line).toBe((lens?.range.start.line ?? NaN) + 1);
    expect(editor.revealed).toEqual({ start: editor.selection.start, end: editor.selection.end });
  });

  test('shows it in its own file, of several that are open', async () => {
    const [one, other] = [openThrottle(FOUR_BARREL), openThrottle(FOUR_BARREL)];
    const [first, second] = [showEditor(forTest(one)), showEditor(forTest(other))];
    await commands.executeCommand(REVEAL_PART, { uri: other.uri.toString(), part: 'rod', name: 'link' });
    expect([first, second].map(({ revealed }) => revealed === undefined)).toEqual([true, false]);
  });

  test.each([undefined, 'link', {}, { uri: 1, part: 'rod', name: 'link' }, { uri: '', part: 'toString', name: 'link' }])(
    'does nothing when it is given %j',
    async (argument) => {
      const editor = showEditor(forTest(openThrottle(FOUR_BARREL)));
      await commands.executeCommand(REVEAL_PART, argument);
      expect(editor.revealed).toBeUndefined();
    },
  );

  test('does nothing where the part is gone or the file not in sight', async () => {
    const document = openThrottle(FOUR_BARREL);
    const asked = { uri: document.uri.toString(), part: 'rod', name: 'link' };
    await commands.executeCommand(REVEAL_PART, asked);
    const editor = showEditor(forTest(document));
    await commands.executeCommand(REVEAL_PART, { ...asked, name: 'gone' });
    expect(editor.revealed).toBeUndefined();
  });
});
