/** The tests inside an editor: bundled into one file for each kind of host, which calls `run`. */
import { env, UIKind, workspace } from 'vscode';
import { report } from './report.ts';
import { activation } from './suites/activation.ts';
import { annotations } from './suites/annotations.ts';
import { codePages } from './suites/codePages.ts';
import { completion } from './suites/completion.ts';
import { fixes } from './suites/fixes.ts';
import { hover } from './suites/hover.ts';
import { log } from './suites/log.ts';
import { mishaps } from './suites/mishaps.ts';
import { names } from './suites/names.ts';
import { problems } from './suites/problems.ts';
import { readOnly } from './suites/readOnly.ts';
import { sameFile } from './suites/sameFile.ts';
import { starting } from './suites/starting.ts';
import { structure } from './suites/structure.ts';
import { testExplorer } from './suites/testExplorer.ts';
import { statusBar } from './suites/statusBar.ts';
import { tasks } from './suites/tasks.ts';
import { viewComparing, viewComparingWithGit } from './suites/viewComparing.ts';
import { viewPanel } from './suites/viewPanel.ts';
import { afterReload, beforeReload } from './suites/viewReload.ts';
import { viewSaving } from './suites/viewSaving.ts';
import { viewStudies } from './suites/viewStudies.ts';
import { viewThemes } from './suites/viewThemes.ts';
import { isReloaded, reloadWindow } from './support/acts.ts';
import { saveOnlyWhenAsked } from './support/editor.ts';

/**
 * Activation comes first: later suites open throttle files, and an extension stays active. Tasks come late, for their marks stay, and what
 * makes a repository of the folder later still. Last of all the window is loaded anew, which calls `run` again.
 */
export async function run(): Promise<void> {
  await saveOnlyWhenAsked();
  const isShown = env.uiKind === UIKind.Web;
  if (isShown && (await isReloaded())) return report([afterReload]);
  const inText = [activation, codePages, problems, fixes, completion, hover, names, structure, annotations, mishaps, starting, log];
  // Desktop VS Code shows no page that could be looked at.
  const shown = isShown ? [testExplorer, statusBar, viewPanel, sameFile, readOnly, viewSaving, viewStudies, viewComparing, viewThemes] : [];
  // Of files in memory the editor's own matching makes addresses of a remote that there is not.
  const isOnDisk = workspace.workspaceFolders?.[0]?.uri.scheme === 'file';
  const onDisk = isOnDisk ? [tasks] : [];
  return isShown
    ? report([...inText, ...shown, ...onDisk, ...(isOnDisk ? [viewComparingWithGit] : []), beforeReload], reloadWindow)
    : report([...inText, ...onDisk]);
}
