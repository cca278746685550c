/** The extension's door: what lives while throttle files are open, and is disposed of with the extension. */
import type { ExtensionContext } from 'vscode';
import { publishProblems } from './liveProblems.ts';

export function activate(context: ExtensionContext): void {
  context.subscriptions.push(publishProblems());
}
