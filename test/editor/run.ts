/** The tests inside an editor: bundled into one file for each kind of host, which calls `run`. */
import { env, UIKind } from 'vscode';
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
import { viewComparing } from './suites/viewComparing.ts';
import { viewPanel } from './suites/viewPanel.ts';

/** Activation comes first: later suites open throttle files, and an extension stays active. */
export function run(): Promise<void> {
  const inText = [activation, codePages, problems, fixes, completion, hover, names, structure, annotations, starting];
  // Desktop VS Code shows no page that could be looked at.
  return report(env.uiKind === UIKind.Web ? [...inText, testExplorer, statusBar, viewPanel, viewComparing] : inText);
}
