/** A workspace of several folders that the person does not trust. */
import { commands, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { chooseFile, doInWindow, exactly } from '../support/acts.ts';
import { folderPath, inWorkspace, openFile, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { eachHasItsOwnProblems } from '../support/twoFolders.ts';
import { FOUR_BARREL, openView, READY, untilText } from '../support/views.ts';

export const restricted: Suite = {
  about: 'two folders that are not trusted',
  tests: {
    'is what the editor has open': () => {
      expectEqual(workspace.isTrusted, false, 'whether the workspace is trusted');
      expectEqual(
        workspace.workspaceFolders?.map(({ name }) => name),
        ['examples', 'second'],
        'the folders',
      );
      return Promise.resolve();
    },

    'show the problems of files with the same name, each its own': eachHasItsOwnProblems,

    'show the mechanism, which follows the text, is written to and steps as elsewhere': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY, 'Four barrels, one shaft']);
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      await expectSeen('views', ['Failed: opens fully']);
      await commands.executeCommand('pedalToPlate.nextPart');
      await expectSeen('views', ['pedal, 1 of 9']);
      const before = document.getText();
      await seen('dragPivot');
      await untilText(document, (text) => text !== before);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },

    'are compared with files, and not with git, of which nothing is run': async () => {
      await plantRepository();
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      for (const way of ['With the last commit', 'With a revision…']) {
        await doInWindow(['press', way]);
        await expectSeen('views', ['The editor uses no git in a folder that you do not trust.']);
      }
      const other = await writeFile('other.throttle.yaml', document.getText().replace('open: 82 deg', 'open: 60 deg'));
      await doInWindow(['press', 'With a file…'], chooseFile(exactly(folderPath()), other));
      await expectSeen('views', ['Compared with other.throttle.yaml', 'levers.shaft.stops.open was 60 deg, is 82 deg']);
      const names = (await workspace.fs.readDirectory(inWorkspace(''))).map(([name]) => name);
      expectEqual(names.includes(TRAP), false, 'whether something of the folder was run');
    },

    'show what looks like a page as text, and run nothing of it': async () => {
      const { document } = await openFile(inWorkspace(FOUR_BARREL));
      const text = document.getText().replace('Four barrels, one shaft', `'${MARKUP}'`).replace('opens fully:', `'${MARKUP}':`);
      await writeFile('markup.throttle.yaml', text);
      await openView('markup.throttle.yaml');
      await expectSeen('views', [READY, MARKUP]);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },
  },
};

/** Would leave a mark on the page, were it one. */
const MARKUP = '<img src=x onerror="document.querySelector(`body>div`).dataset.ran=1"><b>bold</b>';

/** The file that comes of running git here. */
const TRAP = 'was-run';

/** A repository whose own settings have git run a program as soon as it looks at the folder. */
async function plantRepository(): Promise<void> {
  for (const folder of ['.git/objects', '.git/refs/heads']) await workspace.fs.createDirectory(inWorkspace(folder));
  await writeFile('.git/HEAD', 'ref: refs/heads/main\n');
  await writeFile('.git/config', `[core]\n\trepositoryformatversion = 0\n\tbare = false\n\tfsmonitor = "touch ${TRAP}; false"\n`);
}
