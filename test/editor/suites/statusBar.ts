/** What the window shows besides the text: the item of the status bar, and the walkthrough. */
import { commands } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { untilProblem } from '../support/problems.ts';
import { EXAMPLE, untilSolved } from '../support/solved.ts';

export const statusBar: Suite = {
  about: 'window',
  tests: {
    'the walkthrough opens with its steps': async () => {
      await commands.executeCommand('workbench.action.openWalkthrough', 'pedal-to-plate.pedal-to-plate#start', false);
      await expectSeen('steps', ['Open an example', 'Read what was found', 'Check what you require']);
    },

    'the status bar says how the file stands, and nothing of other files': async () => {
      const { document } = await openFile(await writeFile('status.throttle.yaml', EXAMPLE));
      await untilSolved(document);
      await expectSeen('status', ['1 requirement not met']);
      await replaceText(document, 'twice >= 100 mm', 'twice >= 10 mm');
      await expectSeen('status', ['no errors']);
      await openUntitled('yaml', 'a: 1\n');
      const other = await seen('status');
      expectEqual(
        other.filter((text) => /requirement|no errors/.test(text)),
        [],
        'what is said of another file',
      );
    },

    'a click on the status bar shows the problems': async () => {
      const { uri } = await openUntitled(LANGUAGE_ID, 'format: 1\nnonsense: 2\n');
      const { message } = await untilProblem(uri, 'unknown-key');
      await commands.executeCommand('workbench.action.closePanel');
      await seen('clickStatus');
      const shown = await seen('problems');
      expectTrue(
        shown.some((label) => label.includes(message)),
        `shown is\n${shown.join('\n')}`,
      );
    },
  },
};
