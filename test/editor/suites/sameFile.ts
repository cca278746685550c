/** One file in two groups of the editor: it is one text, with one set of problems and one view. */
import { commands, ViewColumn, window } from 'vscode';
import type { Suite } from '../suite.ts';
import { openFile, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { expectSeen } from '../support/page.ts';
import { shownProblems, untilProblem, untilProblems } from '../support/problems.ts';
import { lensesOf } from '../support/requests.ts';
import { FOUR_BARREL, READY, textOf, viewTabs } from '../support/views.ts';

const NAME = 'twice.throttle.yaml';

export const sameFile: Suite = {
  about: 'one file in two groups',
  tests: {
    'has its problems, its lenses and its view once, and all of them follow what is typed in either': async () => {
      const uri = await writeFile(NAME, await textOf(FOUR_BARREL));
      const { document } = await openFile(uri, { viewColumn: ViewColumn.One });
      await commands.executeCommand('pedalToPlate.openView');
      await expectSeen('views', [READY]);
      const [problems, lenses] = [shownProblems(uri), (await lensesOf(document)).length];
      await openFile(uri, { viewColumn: ViewColumn.Three });
      await commands.executeCommand('pedalToPlate.openView');
      expectEqual(
        window.visibleTextEditors.map((each) => each.document === document),
        [true, true],
        'whether both show the one text',
      );
      expectEqual(viewTabs(), [{ label: `Mechanism: ${NAME}`, column: ViewColumn.Two }], 'views');
      expectEqual([shownProblems(uri), (await lensesOf(document)).length], [problems, lenses], 'problems and count of lenses');
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      await untilProblem(uri, 'opening-early');
      await expectSeen('views', ['Failed: opens fully']);
      await replaceText(document, 'open: 60 deg', 'open: 82 deg');
      await untilProblems(uri, problems);
    },

    'keeps them while one of the two is closed, and the last takes the problems along': async () => {
      const uri = await writeFile(NAME, (await textOf(FOUR_BARREL)).replace('format: 1', 'format: 1\nnonsense: 2'));
      await openFile(uri, { viewColumn: ViewColumn.One });
      await untilProblem(uri, 'unknown-key');
      await openFile(uri, { viewColumn: ViewColumn.Two });
      const problems = shownProblems(uri);
      await commands.executeCommand('workbench.action.closeActiveEditor');
      expectEqual(shownProblems(uri), problems, 'problems while one is open');
      await commands.executeCommand('workbench.action.closeActiveEditor');
      await untilProblems(uri, []);
    },

    'is what another window has saved of it, wherever it is shown': async () => {
      const text = await textOf(FOUR_BARREL);
      const uri = await writeFile(NAME, text);
      const { document } = await openFile(uri, { viewColumn: ViewColumn.One });
      await commands.executeCommand('pedalToPlate.openView');
      await expectSeen('views', [READY]);
      await writeFile(NAME, text.replace('open: 82 deg', 'open: 60 deg'));
      await untilProblem(uri, 'opening-early');
      await expectSeen('views', ['Failed: opens fully']);
      expectEqual(document.isDirty, false, 'whether something is left to be saved');
    },
  },
};
