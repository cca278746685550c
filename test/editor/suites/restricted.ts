/** A workspace of several folders that the person does not trust. */
import { workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { closeActiveEditor, inWorkspace, openFile, replaceText } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { untilProblem, untilProblems, writtenProblems } from '../support/problems.ts';

const BROKEN = 'binding-broken.throttle.yaml';

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

    'show the problems of files with the same name, each its own': async () => {
      const first = (await openFile(inWorkspace(BROKEN, 0))).document;
      const second = (await openFile(inWorkspace(BROKEN, 1))).document;
      const written = writtenProblems(first.getText());
      await untilProblems(first.uri, written);
      await untilProblems(second.uri, written);
      await replaceText(second, 'format: 1\n', 'format: 1\nnonsense: 2\n');
      await untilProblem(second.uri, 'unknown-key');
      await untilProblems(first.uri, written);
      await closeActiveEditor();
      await untilProblems(second.uri, []);
      await untilProblems(first.uri, written);
    },
  },
};
