/** Comparing in the view: with git where the editor has it, and what is said where it has not. */
import { commands, extensions, type Uri, ViewColumn, window } from 'vscode';
import type { Suite } from '../suite.ts';
import { inWorkspace, openFile, replaceText } from '../support/editor.ts';
import { expectSeen } from '../support/page.ts';
import { until } from '../support/wait.ts';

/** Stands in a view that shows a linkage. */
const READY = 'Load path';

export const viewComparing: Suite = {
  about: 'view, comparing',
  tests: {
    'with the last commit shows what changed, live; without git it says so': async () => {
      const uri = inWorkspace('four-barrel.throttle.yaml');
      const hasRepository = await commit(uri);
      const { document } = await openFile(uri, { viewColumn: ViewColumn.One });
      await commands.executeCommand('pedalToPlate.openView');
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.compareWithHead');
      if (!hasRepository) {
        await expectSeen('views', ['four-barrel.throttle.yaml is in no git repository that the editor knows.']);
        return;
      }
      await expectSeen('views', ['no difference']);
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      await expectSeen('views', ['levers.shaft.stops.open 82 deg → 60 deg']);
      await commands.executeCommand('pedalToPlate.stopComparing');
    },
  },
};

/** As far as it is used of what the editor's git offers to others. */
interface Git {
  activate(): Promise<{ getAPI(version: 1): { init(folder: Uri): Promise<Repository | null> } }>;
}
interface Repository {
  readonly state: { readonly HEAD?: { readonly commit?: string }; readonly onDidChange: typeof window.onDidChangeActiveTextEditor };
  setConfig(key: string, value: string): Promise<string>;
  add(paths: readonly string[]): Promise<void>;
  commit(message: string): Promise<void>;
}

/** Puts a file into a repository of its folder; false where there is no git. */
async function commit(uri: Uri): Promise<boolean> {
  const git = extensions.getExtension('vscode.git') as Git | undefined;
  if (git === undefined) return false;
  // One host has it without a module that it needs.
  const api = await git.activate().then(
    (exported) => exported.getAPI(1),
    () => undefined,
  );
  if (api === undefined) return false;
  const repository = await api.init(inWorkspace(''));
  if (repository === null) throw new Error('the editor made no repository');
  await repository.setConfig('user.name', 'Test');
  await repository.setConfig('user.email', 'test@example.com');
  await repository.add([uri.fsPath]);
  await repository.commit('Rev A');
  await until('the commit', repository.state.onDidChange, () => repository.state.HEAD?.commit);
  return true;
}
