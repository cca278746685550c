/** The tests inside an editor: bundled into one file for each kind of host, which calls `run`. */
import { env, UIKind, workspace } from 'vscode';
import { report } from './report.ts';
import { activation } from './suites/activation.ts';
import { annotations } from './suites/annotations.ts';
import { codePages } from './suites/codePages.ts';
import { completion } from './suites/completion.ts';
import { fixes } from './suites/fixes.ts';
import { hover } from './suites/hover.ts';
import { names } from './suites/names.ts';
import { problems } from './suites/problems.ts';
import { starting } from './suites/starting.ts';
import { structure } from './suites/structure.ts';
import { testExplorer } from './suites/testExplorer.ts';
import { statusBar } from './suites/statusBar.ts';
import { tasks } from './suites/tasks.ts';
import { viewComparing } from './suites/viewComparing.ts';
import { viewPanel } from './suites/viewPanel.ts';

/** Activation comes first: later suites open throttle files, and an extension stays active. Tasks come last: their marks stay. */
export function run(): Promise<void> {
  const inText = [activation, codePages, problems, fixes, completion, hover, names, structure, annotations, starting];
  // Desktop VS Code shows no page that could be looked at.
  const shown = env.uiKind === UIKind.Web ? [testExplorer, statusBar, viewPanel, viewComparing] : [];
  // Of files in memory the editor's own matching makes addresses of a remote that there is not.
  const isOnDisk = workspace.workspaceFolders?.[0]?.uri.scheme === 'file';
  return report([...inText, ...shown, ...(isOnDisk ? [tasks] : [])]);
}
