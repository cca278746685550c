/** What is written between the lines: hints, lenses and colours. */
import { type CodeLens, ConfigurationTarget, type Position, type TextDocument, window, workspace } from 'vscode';
import { commands } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openUntitled, replaceText } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { hintsOf, legendOf, lensesOf, positionOf, tokensOf } from '../support/requests.ts';
import { ours, untilFaded } from '../support/problems.ts';
import { EXAMPLE } from '../support/solved.ts';
import { untilViews } from '../support/views.ts';

export const annotations: Suite = {
  about: 'annotations',
  tests: {
    'are hints with the result of a formula and the length of a rod': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const hints = await hintsOf(document);
      const said = hints.map(
        ({ label, position }) => `${position.line} ${typeof label === 'string' ? label : label.map(({ value }) => value).join('')}`,
      );
      expectTrue(said.includes(`${positionOf(document, '2 * reach').line} = 80 mm`), `the formula: ${said.join(', ')}`);
      expectTrue(said.includes(`${positionOf(document, 'link:').line} length 100 mm`), `the rod: ${said.join(', ')}`);
    },

    'of either kind are switched off by its setting': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const count = async (): Promise<number> => (await hintsOf(document)).length;
      const all = await count();
      await withSetting('pedalToPlate.inlayHints.rodLength', false, async () => expectEqual(await count(), all - 1, 'hints without rods'));
      await withSetting('pedalToPlate.codeLens', false, async () => expectEqual((await lensesOf(document)).length, 0, 'lenses'));
      expectEqual(await count(), all, 'hints afterwards');
    },

    'are lenses above the parts, with a figure each, of the text as it stands': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      expectEqual(await lensAt(document, positionOf(document, 'shaft: #')), 'opens 60° at 100 % of pedal travel', 'what is said of shaft');
      await replaceText(document, 'travel: 60 deg', 'travel: 50 deg');
      expectEqual(
        await lensAt(document, positionOf(document, 'shaft: #')),
        'opens 50° at 100 % of pedal travel',
        'what is said of shaft then',
      );
    },

    'lead to their part when they are chosen': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const lens = (await lensesOf(document)).find(({ range }) => range.start.isEqual(positionOf(document, 'link:')));
      if (lens?.command === undefined) throw new Error('the rod has no lens');
      await commands.executeCommand(lens.command.command, ...((lens.command.arguments ?? []) as readonly unknown[]));
      expectEqual(document.getText(window.activeTextEditor?.selection), 'link', 'what is selected');
    },

    'are a lens at the top that opens the view, and goes while that is in sight': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const opening = async (): Promise<CodeLens | undefined> =>
        (await lensesOf(document)).find(({ command }) => command?.title === 'Open mechanism view');
      const lens = await opening();
      if (lens?.command === undefined) throw new Error('there is no lens at the top');
      expectEqual(document.getText(document.getWordRangeAtPosition(lens.range.start)), 'format', 'where it stands');
      await commands.executeCommand(lens.command.command, ...((lens.command.arguments ?? []) as readonly unknown[]));
      await untilViews(1);
      expectEqual(await opening(), undefined, 'the lens once the view is there');
    },

    'fade names that nothing uses, until something does': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE.replace('  twice: 2', '  spare: 3 mm\n  twice: 2'));
      const tail = 'tail: Nothing in this file uses tail';
      await untilFaded(document, ['spare: Nothing in this file uses spare', tail]);
      expectTrue(
        ours(document.uri).every(({ message }) => !message.includes('uses')),
        'the list of problems has none of them',
      );
      await replaceText(document, '2 * reach', '2 * spare');
      await untilFaded(document, [tail]);
    },

    'are colours for quantities, units, names and formulas': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const { tokenTypes, tokenModifiers } = await legendOf(document);
      const { data } = await tokensOf(document);
      const typeAt = (wanted: string): string => {
        const { line, character } = positionOf(document, wanted);
        let [row, column] = [0, 0];
        for (let i = 0; i < data.length; i += 5) {
          const [down = 0, along = 0, , type = 0, modifiers = 0] = data.subarray(i, i + 5);
          column = down === 0 ? column + along : along;
          row += down;
          if (row !== line || column !== character) continue;
          return [tokenTypes[type], ...tokenModifiers.filter((_, bit) => (modifiers & (1 << bit)) !== 0)].join('.');
        }
        return 'none';
      };
      const found = ['reach: 40', '40 mm ±', 'mm ±', '0.1 mm', 'reach, angle', 'at(100%', 'shaft.opening', 'pedal.out'].map((each) =>
        typeAt(each),
      );
      expectEqual(
        found,
        ['variable.declaration', 'number', 'type', 'number.tolerance', 'variable', 'function.defaultLibrary', 'class', 'class'],
        'the colours',
      );
    },
  },
};

async function lensAt(document: TextDocument, at: Position): Promise<string> {
  return (await lensesOf(document)).find(({ range }) => range.start.isEqual(at))?.command?.title ?? 'none';
}

async function withSetting(id: string, value: unknown, work: () => Promise<void>): Promise<void> {
  const change = (to: unknown): Thenable<void> => workspace.getConfiguration().update(id, to, ConfigurationTarget.Global);
  await change(value);
  try {
    await work();
  } finally {
    await change(undefined);
  }
}
