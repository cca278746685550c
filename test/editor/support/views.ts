/** Views of mechanisms, as the editor's tabs tell of them. */
import { commands, type TextDocument, ViewColumn, window, workspace } from 'vscode';
import { inWorkspace, openFile } from './editor.ts';
import { expectEqual } from './expect.ts';
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

/**
 * Takes back what was written into a document last; one step has to bring the text from before. Undo means what has the focus, and a page that
 * was used has it, or is yet to get it: so the text is gone to each time.
 */
export async function undoOnce(document: TextDocument, before: string): Promise<void> {
  const after = document.getText();
  const between: string[] = [];
  const watching = workspace.onDidChangeTextDocument(({ document: { uri } }) => {
    const text = document.getText();
    if (uri.toString() === document.uri.toString() && text !== before && text !== after) between.push(text);
  });
  const undo = async (): Promise<void> => {
    await window.showTextDocument(document, ViewColumn.One);
    await commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await commands.executeCommand('undo');
  };
  try {
    await undo();
    await untilText(
      document,
      (text) => text === before,
      () => void undo(),
    );
  } finally {
    watching.dispose();
  }
  expectEqual(between, [], 'texts between');
}
