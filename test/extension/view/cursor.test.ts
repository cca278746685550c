import { describe, expect, test } from 'vitest';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { loadPage } from '../../support/fakePage.ts';
import { bringBack, hide, openView, run, serveViews, turns } from '../../support/viewInEditor.ts';
import { changeDocument, closeDocument, focusDocument, openDocument, panels, putCursor, told, window } from '../../support/vscode.ts';

serveViews();

const at = (words: string, behind = 0): number => FOUR_BARREL.indexOf(words) + behind;

describe('the cursor', () => {
  test('lights up the part that it stands in, and offers the number under it as a dial', async () => {
    const { page } = await openView(FOUR_BARREL);
    putCursor(at('angle: 166 deg', 8));
    await turns();
    expect(page.last('select')).toMatchObject({
      part: { kind: 'lever', name: 'bellcrank' },
      step: false,
      dial: { path: 'levers.bellcrank.arms.out.angle', value: 166, unit: 'deg' },
    });
    putCursor(at('from: bellcrank.out', 8));
    await turns();
    expect(page.last('select')).toMatchObject({ part: { kind: 'rod', name: 'link' }, dial: undefined });
    putCursor(at('pedal: {lever', 2));
    await turns();
    expect(page.last('select').part).toEqual({ kind: 'pedal', name: 'pedal' });
    putCursor(at('38 mm'));
    await turns();
    expect(page.last('select')).toMatchObject({ part: undefined, dial: { path: 'let.crank_reach', label: 'crank_reach' } });
  });

  test('is told of once for each place that means another, and again when the text gives the number another value', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    putCursor(at('166 deg'));
    await turns();
    const count = page.told.length;
    putCursor(at('166 deg', 1));
    await turns();
    expect(page.told).toHaveLength(count);
    changeDocument(document, FOUR_BARREL.replace('166 deg', '167 deg'));
    await turns();
    expect(page.last('select').dial?.value).toBe(167);
  });
});

describe('a place that is chosen in the view', () => {
  test('is selected in the text, which keeps out of the way', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const start = at('166 deg');
    page.say({ type: 'reveal', source, place: { start, end: start + 7 } });
    await turns();
    const [editor] = window.visibleTextEditors;
    expect(document.offsetAt(editor!.selection.start)).toBe(start);
    expect(document.offsetAt(editor!.selection.end)).toBe(start + 7);
    expect(told).toEqual([]);
  });

  test('of an older text is nowhere', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    changeDocument(document, `# first\n${FOUR_BARREL}`);
    await turns();
    page.say({ type: 'reveal', source, place: { start: 5, end: 6 } });
    await turns();
    expect(window.visibleTextEditors[0]?.revealed).toBeUndefined();
  });

  test('opens the text beside where it is closed', async () => {
    const { page } = await openView(FOUR_BARREL);
    window.visibleTextEditors.length = 0;
    focusDocument(undefined);
    page.say({ type: 'reveal-part', source: page.last('show').source, part: { kind: 'rod', name: 'link' } });
    await turns();
    expect(told).toEqual(['shown: file:///folder/a.throttle.yaml']);
    const [editor] = window.visibleTextEditors;
    expect(editor?.document.offsetAt(editor.selection.start)).toBe(at('  link:', 2));
    expect(page.last('select')).toMatchObject({ part: { kind: 'rod', name: 'link' }, step: false });
  });
});

describe('stepping', () => {
  test('goes along the load path, in text and view, and stays at its ends', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const parts = page.report().parts.map(({ kind, name }) => `${kind} ${name}`);
    expect(parts.slice(0, 4)).toEqual(['pedal pedal', 'cable main', 'lever bellcrank', 'rod link']);
    const seen: string[] = [];
    const place = (): string => {
      const { selection } = window.activeTextEditor!;
      return document.getText().slice(document.offsetAt(selection.start), document.offsetAt(selection.end));
    };
    for (let i = 0; i <= parts.length; i++) {
      await run('nextPart');
      const { part, step } = page.last('select');
      expect(step).toBe(true);
      expect(place()).toBe(part?.name);
      seen.push(`${part?.kind} ${part?.name}`);
    }
    expect(seen).toEqual([...parts, parts.at(-1)]);
    page.say({ type: 'step', way: -1 });
    await turns();
    expect(page.last('select').part?.name).toBe(parts.at(-2)?.split(' ')[1]);
  });

  test('goes on from where the cursor stands, or from what was chosen in the view', async () => {
    const { page } = await openView(FOUR_BARREL);
    putCursor(at('angle: 166 deg', 8));
    await turns();
    await run('nextPart');
    expect(page.last('select').part).toEqual({ kind: 'rod', name: 'link' });
    page.say({ type: 'reveal-part', source: page.last('show').source, part: { kind: 'cable', name: 'main' } });
    await turns();
    await run('previousPart');
    expect(page.last('select').part).toEqual({ kind: 'pedal', name: 'pedal' });
  });

  test('shows the card of the part in a page that comes only then, and once', async () => {
    const document = openDocument('file:///folder/c.throttle.yaml', 'throttle-linkage', FOUR_BARREL);
    focusDocument(document);
    await run('nextPart');
    const panel = panels.find(({ title }) => title === 'Mechanism: c.throttle.yaml')!;
    const page = loadPage(panel);
    await turns();
    expect(page.last('select')).toMatchObject({ part: { kind: 'pedal', name: 'pedal' }, step: true });
    putCursor(at('166 deg'));
    await turns();
    expect(page.last('select').step).toBe(false);
    const view = { document, panel, page };
    hide(view);
    await run('nextPart');
    await bringBack(view);
    expect(view.page.last('select')).toMatchObject({ part: { kind: 'rod', name: 'link' }, step: true });
    closeDocument(document);
    await turns();
  });

  test('opens the view where there is none, and says where there is nothing to step through', async () => {
    const document = openDocument('file:///folder/b.throttle.yaml', 'throttle-linkage', 'format: 1\n');
    focusDocument(document);
    await run('nextPart');
    expect(panels.map(({ title }) => title)).toEqual(['Mechanism: b.throttle.yaml']);
    expect(told).toEqual([expect.stringContaining('The linkage is not solved')]);
    closeDocument(document);
    await turns();
  });
});
