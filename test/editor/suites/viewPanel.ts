/** The view of a mechanism beside its text: that it opens, follows, and lives through what a person does to it and its file. */
import { commands, type TextDocument, ViewColumn, window, workspace, WorkspaceEdit } from 'vscode';
import type { Suite } from '../suite.ts';
import { doInWindow, type Act } from '../support/acts.ts';
import { inWorkspace, LANGUAGE_ID, openFile, openUntitled, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { FOUR_BARREL, isView, openView, READY, textOf, undoOnce, untilText, untilViews, viewTabs } from '../support/views.ts';
import { until } from '../support/wait.ts';

export const viewPanel: Suite = {
  about: 'view',
  tests: {
    'opens beside the text, which keeps the focus, and once': async () => {
      const { document } = await openView(FOUR_BARREL);
      expectEqual(window.activeTextEditor?.document.uri.path, document.uri.path, 'what has the focus');
      expectEqual(viewTabs(), [{ label: `Mechanism: ${FOUR_BARREL}`, column: ViewColumn.Two }], 'tabs of views');
      await commands.executeCommand('pedalToPlate.openView');
      expectEqual(viewTabs().length, 1, 'views after the command was given twice');
      await expectSeen('views', ['bellcrank']);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },

    'follows the text as it is typed, and says what is missing': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      const lines = await expectSeen('views', ['Failed: opens fully']);
      expectTrue(
        lines.some((line) => line.startsWith('opens 60°')),
        'the load path says how far the shaft opens',
      );
      await replaceText(document, 'pedal: {lever: pedal, opens: counterclockwise', 'pedal: {lever: pedal, opens: sideways');
      await expectSeen('views', ['Last picture that could be drawn. Missing or wrong:']);
    },

    'lives through being hidden, moved to another group, and its page being loaded anew': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await commands.executeCommand('vscode.open', await writeFile('other.yaml', 'a: 1\n'), ViewColumn.Two);
      await until('the view to be hidden', window.tabGroups.onDidChangeTabs, () => (activeTabs().some(isView) ? undefined : true));
      await commands.executeCommand('workbench.action.closeActiveEditor');
      await expectSeen('views', [READY]);
      await commands.executeCommand('workbench.action.focusSecondEditorGroup');
      await commands.executeCommand('workbench.action.moveEditorToNextGroup');
      await expectSeen('views', [READY]);
      await commands.executeCommand('workbench.action.webview.reloadWebviewAction');
      await expectSeen('views', [READY]);
    },

    'writes a drag as one step for undo, and keeps every comment': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const before = document.getText();
      await seen('dragPivot');
      await untilText(document, (text) => text !== before);
      const after = document.getText();
      const place = /crank_pivot: \[(-?\d+(?:\.\d)?), (-?\d+(?:\.\d)?)\]/;
      expectEqual(after.replace(place, ''), before.replace(place, ''), 'all but the place that was dragged');
      const moved = place.exec(after)?.[0];
      expectTrue(moved !== undefined && moved !== place.exec(before)?.[0], `the place is written as ${String(moved)}`);
      await undoOnce(document, before);
    },

    'has what it wrote taken back and made again, by its button and by keys': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const before = document.getText();
      await seen('dragPivot');
      await untilText(document, (text) => text !== before);
      const after = document.getText();
      // What is pressed while the focus is on its way goes nowhere: it is pressed again. More than was done cannot be taken back.
      const doUntil = async (what: Act, text: string): Promise<void> => {
        let doing: Promise<unknown> | undefined;
        const act = (): void => {
          doing ??= doInWindow(what).finally(() => (doing = undefined));
        };
        act();
        await untilText(document, (now) => now === text, act);
        await doing;
      };
      await doUntil(['press', 'Undo'], before);
      await doUntil(['key', 'Control+Shift+z'], after);
      await doUntil(['key', 'Control+z'], before);
    },

    'goes along the load path by command and by its own button, in text and view': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.nextPart');
      await untilSelected(document, 'pedal');
      await expectSeen('views', ['pedal, 1 of 9']);
      await commands.executeCommand('pedalToPlate.nextPart');
      await untilSelected(document, 'main');
      await seen('stepInView');
      await untilSelected(document, 'bellcrank');
      await expectSeen('views', ['lever bellcrank, 3 of 9']);
      await commands.executeCommand('pedalToPlate.previousPart');
      await untilSelected(document, 'main');
    },

    'of two files are two, each of its own': async () => {
      await openView(FOUR_BARREL);
      await openFile(inWorkspace('two-banks.throttle.yaml'), { viewColumn: ViewColumn.One });
      await commands.executeCommand('pedalToPlate.openView');
      await untilViews(2);
      await expectSeen('views', ['front_link']);
    },

    'of a file that was never saved shows it': async () => {
      await openUntitled(LANGUAGE_ID, await textOf(FOUR_BARREL));
      await commands.executeCommand('pedalToPlate.openView');
      await expectSeen('views', [READY]);
    },

    'follows a file that is renamed, and says so when it is deleted and when it comes back': async () => {
      const text = await textOf(FOUR_BARREL);
      await writeFile('first.throttle.yaml', text);
      await openView('first.throttle.yaml');
      await expectSeen('views', [READY]);
      const renaming = new WorkspaceEdit();
      renaming.renameFile(inWorkspace('first.throttle.yaml'), inWorkspace('second.throttle.yaml'), { overwrite: true });
      expectTrue(await workspace.applyEdit(renaming), 'the file could not be renamed');
      await until('the title to follow', window.tabGroups.onDidChangeTabs, () =>
        viewTabs()[0]?.label === 'Mechanism: second.throttle.yaml' ? true : undefined,
      );
      await expectSeen('views', [READY]);
      await commands.executeCommand('workbench.action.focusFirstEditorGroup');
      await commands.executeCommand('workbench.action.closeEditorsInGroup');
      const deleting = new WorkspaceEdit();
      deleting.deleteFile(inWorkspace('second.throttle.yaml'));
      expectTrue(await workspace.applyEdit(deleting), 'the file could not be deleted');
      await expectSeen('views', ['second.throttle.yaml cannot be found. It is shown again once it is back.']);
      await writeFile('second.throttle.yaml', text);
      await expectSeen('views', [READY]);
    },
  },
};

function activeTabs(): readonly { readonly label: string }[] {
  return window.tabGroups.all.flatMap(({ activeTab }) => activeTab ?? []);
}

async function untilSelected(document: TextDocument, words: string): Promise<void> {
  const selected = (): string => {
    const editor = window.visibleTextEditors.find((each) => each.document === document);
    return editor === undefined ? '' : document.getText(editor.selection);
  };
  await until(
    `“${words}” to be selected`,
    window.onDidChangeTextEditorSelection,
    () => (selected() === words ? true : undefined),
    () => `selected is “${selected()}”`,
  );
}
