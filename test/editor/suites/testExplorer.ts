/** The requirements of a file as tests of the editor: how they come out is read off its test view. */
import { commands, type TextDocument } from 'vscode';
import type { Suite } from '../suite.ts';
import { openFile, replaceText, writeFile } from '../support/editor.ts';
import { expectTrue } from '../support/expect.ts';
import { expectSeen } from '../support/page.ts';
import { EXAMPLE, untilSolved } from '../support/solved.ts';

/** It opens 60°, and its arm is 40 mm long. */
const REQUIRES = EXAMPLE.slice(0, EXAMPLE.indexOf('require:'));
const requiring = (lines: string): string => `${REQUIRES}require:\n${lines}`;

export const testExplorer: Suite = {
  about: 'tests',
  tests: {
    'pass and fail by the text as it stands, which is not saved': async () => {
      const document = await listed('outcomes', 'opens to sixty: at(100%, shaft.opening) >= 59.9 deg');
      await replaceText(
        document,
        'require:\n',
        'require:\n  reaches far: twice >= 100 mm\n  has no such part: max(shaff.opening) > 0 deg\n',
      );
      expectTrue(document.isDirty, 'the file was saved');
      await untilSolved(document);
      await expectSeen('tests', ['reaches far (Not yet run)', 'has no such part (Not yet run)']);
      await commands.executeCommand('testing.runAll');
      await expectSeen('tests', ['opens to sixty (Passed)', 'reaches far (Failed)', 'has no such part (Errored)']);
    },

    'tell what was required and what was found': async () => {
      await listed('message', 'is twice as long: twice >= 101 mm');
      await commands.executeCommand('testing.clearTestResults');
      await commands.executeCommand('testing.runCurrentFile');
      await expectSeen('tests', ['is twice as long (Failed)']);
      await commands.executeCommand('workbench.panel.testResults.view.focus');
      await expectSeen('results', ['is twice as long: 80 mm, not ≥ 101 mm (21 mm short)']);
    },

    'run again at every change where that is wanted, and no more once it is not': async () => {
      const document = await listed('watched', 'keeps short: twice <= 70 mm');
      await commands.executeCommand('testing.startContinuousRun');
      try {
        await replaceText(document, 'twice: 2 * reach', 'twice: 2 * reach - 0 mm');
        await expectSeen('tests', ['keeps short (Failed)']);
        await replaceText(document, '2 * reach - 0 mm', '1.5 * reach');
        await expectSeen('tests', ['keeps short (Passed)']);
      } finally {
        await commands.executeCommand('testing.stopContinuousRun');
      }
      await replaceText(document, '1.5 * reach', '3 * reach');
      await replaceText(document, 'keeps short: twice <= 70 mm', 'keeps short: twice <= 70 mm\n  comes later: twice > 0 mm');
      // Listed after the change was taken in, and not run.
      await expectSeen('tests', ['keeps short (Passed)', 'comes later (Not yet run)']);
    },

    'of files that were never opened run as well': async () => {
      await writeFile('unopened.throttle.yaml', requiring('  is not open: twice > 79 mm\n'));
      await commands.executeCommand('testing.refreshTests');
      await commands.executeCommand('workbench.view.testing.focus');
      await expectSeen('tests', ['is not open (Not yet run)']);
      await commands.executeCommand('testing.runAll');
      await expectSeen('tests', ['is not open (Passed)']);
    },
  },
};

/** A file that is open, with one requirement whose test is listed in the test view, one a row. The editor runs only what is listed. */
async function listed(name: string, requirement: string): Promise<TextDocument> {
  const { document } = await openFile(await writeFile(`${name}.throttle.yaml`, requiring(`  ${requirement}\n`)));
  await untilSolved(document);
  await commands.executeCommand('workbench.view.testing.focus');
  await commands.executeCommand('testing.viewAsList');
  await expectSeen('tests', [`${requirement.slice(0, requirement.indexOf(':'))} (Not yet run)`]);
  await openFile(document.uri);
  return document;
}
