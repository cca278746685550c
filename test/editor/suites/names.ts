/** Where a name is declared and used, and giving it another. */
import { EndOfLine, type TextDocument, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { shownProblems, untilProblem } from '../support/problems.ts';
import { definitionsAt, highlightsAt, hoverAt, lensesOf, positionOf, referencesAt, renameEdits } from '../support/requests.ts';
import { EXAMPLE, untilSolved } from '../support/solved.ts';

/** Where a name is used, and where it is declared. */
const DECLARED = [
  ['reach, angle', 'reach: 40'],
  ['shaft.arm #', 'shaft: #'],
  ['arm # by', 'arm: {'],
  ['shaft.opening', 'shaft: #'],
  ['twice >=', 'twice: 2'],
] as const;

export const names: Suite = {
  about: 'names',
  tests: {
    'lead from where they are used to where they are declared': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      for (const [use, declaration] of DECLARED) {
        const found = await definitionsAt(document, positionOf(document, use, 1));
        expectEqual(
          found.map(({ start }) => start),
          [positionOf(document, declaration)],
          `where ${use} is declared`,
        );
      }
    },

    'are found wherever they stand, and are marked there': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const places = ['shaft: #', 'shaft.arm #', 'shaft.opening'].map((each) => positionOf(document, each));
      const references = await referencesAt(document, positionOf(document, 'shaft.opening', 2));
      expectEqual(
        references.map(({ range }) => range.start),
        places,
        'the references to shaft',
      );
      const marked = await highlightsAt(document, positionOf(document, 'shaft: #', 2));
      expectEqual(
        marked.map(({ range }) => range.start),
        places,
        'the places of shaft that are marked',
      );
    },

    'are given another everywhere: the file solves the same, and comments stay': async () => {
      for (const [file, end] of [
        ['rename.throttle.yaml', '\n'],
        ['rename-crlf.throttle.yaml', '\r\n'],
      ] as const) {
        const { document } = await openFile(await writeFile(file, EXAMPLE.replaceAll('\n', end)));
        await untilSolved(document);
        const before = await figuresOf(document);
        for (const [use, name] of [
          ['shaft.opening', 'spindle'],
          ['reach, angle', 'crank_reach'],
          ['arm # by', 'horn'],
        ] as const) {
          const edit = await renameEdits(document, positionOf(document, use, 1), name);
          expectTrue(await workspace.applyEdit(edit), `the editor refused to call it ${name}`);
        }
        const renamed = EXAMPLE.replace('shaft: #', 'spindle: #')
          .replace('shaft.arm #', 'spindle.horn #')
          .replace('shaft.opening', 'spindle.opening')
          .replaceAll('reach', 'crank_reach')
          .replace('arms: {arm:', 'arms: {horn:');
        expectEqual(document.getText(), renamed.replaceAll('\n', end), 'the text');
        expectEqual(document.eol, end === '\n' ? EndOfLine.LF : EndOfLine.CRLF, 'the line ends');
        expectEqual(await figuresOf(document), before, 'what the lenses say');
        expectEqual(shownProblems(document.uri), [], 'the problems');
        const said = await hoverAt(document, positionOf(document, '2 * crank_reach', 1));
        expectTrue(said.includes('80 mm'), said);
      }
    },

    'cannot be one that is taken or reserved': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      for (const [name, reason] of [
        ['twice', /twice/],
        ['mm', /mm/],
        ['Two words', /letters|Two words/],
      ] as const) {
        const refusal = await renameEdits(document, positionOf(document, 'reach: 40', 1), name).then(
          () => 'not refused',
          (error: unknown) => String(error),
        );
        expectTrue(reason.test(refusal) && refusal !== 'not refused', `why it cannot be called ${name}: ${refusal}`);
      }
      expectEqual(document.getText(), EXAMPLE, 'the text');
    },

    'that are nowhere declared are a problem at their place, with the nearest as a cure': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE.replace('shaft.arm #', 'shaft.arn #'));
      const { message, range } = await untilProblem(document.uri, 'unknown-name');
      expectEqual(range.start, positionOf(document, 'arn #'), 'its place');
      expectTrue(message.includes('`arm`'), message);
    },
  },
};

/** What the lenses of parts say. One that begins a study says nothing of the text, and is not there before the text was solved. */
async function figuresOf(document: TextDocument): Promise<readonly string[]> {
  return (await lensesOf(document)).map(({ command }) => command?.title ?? '').filter((title) => title !== 'What tolerances do');
}
