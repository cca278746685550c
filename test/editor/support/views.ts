/** Views of mechanisms, as the editor's tabs tell of them. */
import { commands, type TextDocument, ViewColumn, window, workspace } from 'vscode';
import { inWorkspace, openFile } from './editor.ts';
import { until } from './wait.ts';

/** An example that has most of what there is. */
export const FOUR_BARREL = 'four-barrel.throttle.yaml';

/** Stands in a view that shows a linkage. */
export const READY = 'Load path';

/** Opens a throttle file of the folder, and its view beside it. */
export async function openView(name: string, folder = 0): Promise<{ readonly document: TextDocument }> {
  const { document } = await openFile(inWorkspace(name, folder), { viewColumn: ViewColumn.One });
  const before = viewTabs().length;
  await commands.executeCommand('pedalToPlate.openView');
  await untilViews(before + 1);
  return { document };
}

export async function untilViews(count: number): Promise<void> {
  await until(
    `${count} views`,
    window.tabGroups.onDidChangeTabs,
    () => (viewTabs().length === count ? true : undefined),
    () => JSON.stringify(viewTabs()),
  );
}

export interface ViewTab {
  readonly label: string;
  readonly column: ViewColumn;
}

export function viewTabs(): readonly ViewTab[] {
  return window.tabGroups.all.flatMap(({ tabs, viewColumn }) =>
    tabs.filter(isView).map(({ label }): ViewTab => ({ label, column: viewColumn })),
  );
}

export function isView({ label }: { readonly label: string }): boolean {
  return label.startsWith('Mechanism: ');
}

/** What stands in a file of the folder. */
export async function textOf(name: string): Promise<string> {
  return (await workspace.openTextDocument(inWorkspace(name))).getText();
}

/** Until a document has a text that is as wanted. @param again what would make it so is asked once more by this */
export async function untilText(document: TextDocument, holds: (text: string) => boolean, again?: () => void): Promise<void> {
  await until(
    'the text to change',
    workspace.onDidChangeTextDocument,
    () => (holds(document.getText()) ? true : undefined),
    () => document.getText(),
    again,
  );
}
