/** Quick fixes, chosen and applied: the text reads as it should, what was wrong is gone, and nothing else has come. */
import { type CodeAction, commands, DiagnosticSeverity, EndOfLine, Selection, type TextDocument, window, workspace } from 'vscode';
import { FIGURE_CASES } from '../fixCases/figureCases.ts';
import { announced, type FixCase, mended } from '../fixCases/fixCase.ts';
import { TEXT_CASES } from '../fixCases/textCases.ts';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { codeOf, ours, untilNoProblem, untilProblem, untilText } from '../support/problems.ts';
import { fixesAt, positionOf } from '../support/requests.ts';

const [KEY, BESIDE] = [TEXT_CASES[0], FIGURE_CASES.find(({ code }) => code === 'held-open')];

export const fixes: Suite = {
  about: 'fixes',
  tests: {
    ...Object.fromEntries([...TEXT_CASES, ...FIGURE_CASES].map((fixCase) => [nameOf(fixCase), () => tryCase(fixCase)])),

    'of a file with CRLF line ends leave each of them': async () => {
      for (const fixCase of [KEY, BESIDE]) {
        if (fixCase === undefined) throw new Error('there is no such case');
        const { document } = await openFile(await writeFile('crlf.throttle.yaml', fixCase.text.replaceAll('\n', '\r\n')));
        await solvedOnce(document, fixCase);
        await choose(document, fixCase);
        expectEqual(document.eol, EndOfLine.CRLF, 'the line ends');
        expectEqual(document.getText(), mended(fixCase).replaceAll('\n', '\r\n'), 'the text');
        await gone(document, fixCase);
        await commands.executeCommand('workbench.action.files.revert');
      }
    },

    'are one step to undo': async () => {
      if (BESIDE === undefined) throw new Error('there is no such case');
      const { document } = await openFile(await writeFile('undo.throttle.yaml', BESIDE.text));
      await solvedOnce(document, BESIDE);
      await choose(document, BESIDE);
      await commands.executeCommand('undo');
      await untilText(document, BESIDE.text);
      await untilProblem(document.uri, 'held-open');
    },

    'are carried out by the command that a key is bound to, where there is one right answer': async () => {
      if (KEY === undefined) throw new Error('there is no such case');
      const { document } = await openFile(await writeFile('key.throttle.yaml', KEY.text));
      await solvedOnce(document, KEY);
      putCursor(document, KEY);
      // A key means what has the focus.
      await commands.executeCommand('workbench.action.focusActiveEditorGroup');
      await commands.executeCommand('editor.action.autoFix');
      await untilText(document, mended(KEY));
      await gone(document, KEY);
    },

    'mend all that has one right answer at once': async () => {
      const text = 'format: 1\nlevers:\n  shaft: {pivit: [100, 0]}\npedal: {lever: shaft, opens: clockwis, travel: 22,5 deg}\n';
      const { document } = await openFile(await writeFile('all.throttle.yaml', text));
      await untilProblem(document.uri, 'bad-quantity');
      const fixAll = (): void => void commands.executeCommand('editor.action.fixAll');
      fixAll();
      const sound = 'format: 1\nlevers:\n  shaft: {pivot: [100, 0]}\npedal: {lever: shaft, opens: clockwise, travel: 22.5 deg}\n';
      // Marks that come while the editor looks for fixes make it forget what it was asked.
      await untilText(document, sound, fixAll);
      await untilNoProblem(document.uri, 'bad-quantity');
      expectEqual(wrongCodes(document), [], 'what is wrong afterwards');
    },

    'that no figure can bring about say why': async () => {
      // Of the length of the rod alone this shaft would be held open.
      const fixCase = FIGURE_CASES.find(({ code, figure }) => code === 'opening-missed' && figure === 'levers.arms.radius');
      if (fixCase === undefined) throw new Error('there is no such case');
      const { document } = await openFile(await writeFile('why.throttle.yaml', fixCase.text));
      await solvedOnce(document, fixCase);
      const title = 'Solve for the length of link so that shaft opens fully';
      const fixes = await whileBusy(() => fixesAt(document, positionOf(document, fixCase.at)));
      const found = fixes.find((each) => each.title === title);
      const told = found?.disabled?.reason ?? String(found?.command?.arguments?.map((each) => (each as { readonly why?: string }).why));
      expectTrue(/^The length of link would have to be [\d.]+ mm, but then: shaft is held /.test(told), `what is told: ${told}`);
      expectEqual(document.getText(), fixCase.text, 'the text');
    },
  },
};

/**
 * What is asked for while the extension's thread hardly comes to anything, so that the menu does not wait for figures. What is found not to be
 * had before the menu opens is greyed there, and the editor hands such a fix over to nobody.
 */
async function whileBusy<Found>(ask: () => Promise<Found>): Promise<Found> {
  const busy = setInterval(() => {
    const until = Date.now() + LONGER_THAN_A_MENU_WAITS_MS;
    while (Date.now() < until);
  }, 0);
  try {
    return await ask();
  } finally {
    clearInterval(busy);
  }
}

const LONGER_THAN_A_MENU_WAITS_MS = 120;

function nameOf({ code, titles: [title = ''], figure }: FixCase): string {
  return `${code}${figure === undefined ? '' : ` by ${figure}`}: ${title}`;
}

async function tryCase(fixCase: FixCase): Promise<void> {
  const document = await openUntitled(LANGUAGE_ID, fixCase.text);
  await solvedOnce(document, fixCase);
  const before = wrongCodes(document);
  await choose(document, fixCase);
  expectEqual(document.getText(), mended(fixCase), 'the text');
  await gone(document, fixCase);
  const expected = [...before, ...announced(fixCase)];
  expectEqual(
    wrongCodes(document).filter((code) => !expected.includes(code)),
    [],
    'what the fix brought about',
  );
}

/** Until the problem of a case is shown. */
async function solvedOnce(document: TextDocument, { code }: FixCase): Promise<void> {
  await untilProblem(document.uri, code);
}

/** Takes the fix out of the menu, and does with it what the editor does. */
async function choose(document: TextDocument, { at, titles }: FixCase): Promise<void> {
  const offered = await fixesAt(document, positionOf(document, at), 'quickfix', 0);
  const isMeant = ({ title }: CodeAction): boolean => titles.includes(title);
  const found = offered.filter(isMeant);
  if (found.length !== 1)
    throw new Error(`${found.length} fixes are called “${titles.join('” or “')}”, of:\n${offered.map(({ title }) => title).join('\n')}`);
  // To solve for all that is offered takes much longer than for what is chosen.
  const fix = found[0]?.edit
    ? found[0]
    : (await fixesAt(document, positionOf(document, at), 'quickfix', offered.findIndex(isMeant) + 1)).find(isMeant);
  if (fix === undefined) throw new Error(`“${found[0]?.title}” is offered no longer`);
  if (fix.edit === undefined) throw new Error(`“${fix.title}” edits nothing: ${fix.disabled?.reason ?? JSON.stringify(fix.command)}`);
  if (!(await workspace.applyEdit(fix.edit))) throw new Error(`the editor refused “${fix.title}”`);
  if (fix.command !== undefined)
    await commands.executeCommand(fix.command.command, ...((fix.command.arguments ?? []) as readonly unknown[]));
}

/** What may be left of it is a note that asks for nothing. */
async function gone(document: TextDocument, { code }: FixCase): Promise<void> {
  await untilNoProblem(document.uri, code, DiagnosticSeverity.Warning);
}

function wrongCodes({ uri }: TextDocument): readonly string[] {
  return ours(uri)
    .filter(({ severity }) => severity <= DiagnosticSeverity.Warning)
    .map(codeOf);
}

function putCursor(document: TextDocument, { at }: FixCase): void {
  const editor = window.activeTextEditor;
  if (editor?.document !== document) throw new Error('the document has no editor');
  const place = positionOf(document, at);
  editor.selection = new Selection(place, place);
}
