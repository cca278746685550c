/** What the view has the editor itself do to the text: choose among fixes, undo, redo. */
import { afterEach, describe, expect, test } from 'vitest';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { openView, serveViews, turns } from '../../support/viewInEditor.ts';
import { changeDocument, focusDocument, registeredCommands, told, window } from '../../support/vscode.ts';

serveViews();

const asked: string[] = [];
const OWN = ['undo', 'redo', 'editor.action.quickFix', 'workbench.action.focusActiveEditorGroup'];
/** How often the page has the focus still when the text is to have it. */
let deaf = 0;

/** @param undone what the text becomes by an undo, or by a redo */
function standIn(undone?: () => void): void {
  for (const name of OWN) registeredCommands.set(name, () => void asked.push(name));
  for (const name of ['undo', 'redo']) {
    registeredCommands.set(name, () => {
      asked.push(name);
      if (deaf-- > 0) return;
      undone?.();
    });
  }
}

afterEach(() => {
  for (const name of OWN) registeredCommands.delete(name);
  asked.length = 0;
  deaf = 0;
  told.length = 0;
});

describe('the editor', () => {
  test.each(['undo', 'redo'] as const)('does an %s of the view to its text, which has the focus for that', async (type) => {
    const { document, page } = await openView(FOUR_BARREL);
    standIn(() => changeDocument(document, `# once\n${FOUR_BARREL}`));
    focusDocument(undefined);
    page.say({ type });
    await turns();
    expect(told).toEqual(['shown: file:///folder/a.throttle.yaml']);
    expect(asked).toEqual(['workbench.action.focusActiveEditorGroup', type]);
  });

  test('is asked again while the page has the focus still, once more than it did not hear, and not for ever', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    standIn(() => changeDocument(document, `# once\n${FOUR_BARREL}`));
    const undos = (): number => asked.filter((each) => each === 'undo').length;
    deaf = 2;
    page.say({ type: 'undo' });
    await turns();
    expect(undos()).toBe(3);
    deaf = Infinity;
    page.say({ type: 'undo' });
    await turns();
    expect(undos()).toBe(8);
  });

  test('offers its fixes at the place of a finding', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    standIn();
    const start = FOUR_BARREL.indexOf('166 deg');
    page.say({ type: 'mend', source: page.last('show').source, place: { start, end: start + 7 } });
    await turns();
    expect(asked).toEqual(['editor.action.quickFix']);
    const [editor] = window.visibleTextEditors;
    expect(document.offsetAt(editor!.selection.start)).toBe(start);
    expect(document.offsetAt(editor!.selection.end)).toBe(start);
  });

  test('offers none at a place of an older text', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    standIn();
    const { source } = page.last('show');
    changeDocument(document, `# first\n${FOUR_BARREL}`);
    await turns();
    page.say({ type: 'mend', source, place: { start: 5, end: 6 } });
    await turns();
    expect(asked).toEqual([]);
  });
});
