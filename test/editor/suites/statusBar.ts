/** What the window shows besides the text: the item of the status bar, and the walkthrough. */
import { commands } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, replaceText, writeFile } from '../support/editor.ts';
import { expectSeen, seen, untilSeen } from '../support/page.ts';
import { untilProblem } from '../support/problems.ts';
import { EXAMPLE, untilSolved } from '../support/solved.ts';

export const statusBar: Suite = {
  about: 'window',
  tests: {
    'the walkthrough opens with its steps': async () => {
      await commands.executeCommand('workbench.action.openWalkthrough', 'pedal-to-plate.pedal-to-plate#start', false);
      await expectSeen('steps', ['Open an example', 'Open the mechanism beside it', 'Read what was found', 'Check what you require']);
    },

    'the status bar says how the file stands, and nothing of other files': async () => {
      const { document } = await openFile(await writeFile('status.throttle.yaml', EXAMPLE));
      await untilSolved(document);
      await expectSeen('status', ['1 requirement not met']);
      await replaceText(document, 'twice >= 100 mm', 'twice >= 10 mm');
      await expectSeen('status', ['no errors']);
      await openUntitled('yaml', 'a: 1\n');
      await untilSeen('status', 'silence about another file', (lines) => !lines.some((line) => /requirement|no errors/.test(line)));
    },

    'a click on the status bar shows the problems': async () => {
      const { uri } = await openUntitled(LANGUAGE_ID, 'format: 1\nnonsense: 2\n');
      const { message } = await untilProblem(uri, 'unknown-key');
      await commands.executeCommand('workbench.action.closePanel');
      await seen('clickStatus');
      await untilSeen('problems', `“${message}”`, (labels) => labels.some((label) => label.includes(message)));
    },
  },
};
