/** A workspace of two folders with files of the same names, in the editor's own memory. */
import { commands, ConfigurationTarget, type Location, type LocationLink, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { inWorkspace, openFile, rangeOf } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { untilProblems, writtenProblems } from '../support/problems.ts';
import { referencesAt, renameEdits } from '../support/requests.ts';
import { BROKEN, eachHasItsOwnProblems } from '../support/twoFolders.ts';
import { until } from '../support/wait.ts';

export const folders: Suite = {
  about: 'two folders',
  tests: {
    'are what the editor has open': async () => {
      const read = (): true | undefined => (namesOfFolders() === 'examples, second' ? true : undefined);
      await until('two folders', workspace.onDidChangeWorkspaceFolders, read, namesOfFolders);
    },

    'show the problems of files with the same name, each its own': eachHasItsOwnProblems,

    'keep names apart: definition, references and rename stay in the file of their folder': async () => {
      const { document } = await openFile(inWorkspace(BROKEN, 1));
      const at = rangeOf(document, 'to: shaft.arm').end.translate(0, -'shaft.arm'.length);
      const own = [document.uri.toString()];
      const definitions = await commands.executeCommand<readonly (Location | LocationLink)[]>(
        'vscode.executeDefinitionProvider',
        document.uri,
        at,
      );
      const places = definitions.map((each) => ('targetUri' in each ? each.targetUri : each.uri).toString());
      expectEqual(places, own, 'where the definition is');
      const references = await referencesAt(document, at);
      expectEqual([...new Set(references.map(({ uri }) => uri.toString()))], own, 'the files with references');
      const edited = (await renameEdits(document, at, 'throttle_shaft')).entries().map(([uri]) => uri.toString());
      expectEqual(edited, own, 'the files that a rename edits');
    },

    'have settings of their own: a severity of one folder is not that of the other': async () => {
      const [first, second] = [inWorkspace(BROKEN, 0), inWorkspace(BROKEN, 1)];
      const written = writtenProblems((await openFile(first)).document.getText());
      await openFile(second);
      const settings = workspace.getConfiguration('pedalToPlate', second);
      await settings.update('severity', { 'single-return-spring': 'off' }, ConfigurationTarget.WorkspaceFolder);
      await untilProblems(
        second,
        written.filter((each) => !JSON.stringify(each).includes('single-return-spring')),
      );
      await untilProblems(first, written);
      await settings.update('severity', undefined, ConfigurationTarget.WorkspaceFolder);
      await untilProblems(second, written);
    },
  },
};

function namesOfFolders(): string {
  return (workspace.workspaceFolders ?? []).map(({ name }) => name).join(', ');
}
