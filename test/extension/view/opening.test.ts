import { describe, expect, test } from 'vitest';
import type * as vscode from 'vscode';
import { FOUR_BARREL, openThrottle } from '../../support/editorRequests.ts';
import { loadPage } from '../../support/fakePage.ts';
import { bringBack, hide, openView, revive, run, served, serveViews, turns } from '../../support/viewInEditor.ts';
import {
  changeDocument,
  changeLanguage,
  closeDocument,
  focusDocument,
  openDocument,
  panels,
  putInTab,
  renameFiles,
  saveDocument,
  told,
  Uri,
  WebviewPanel,
  writeFile,
} from '../../support/vscode.ts';

serveViews();

const A = 'file:///folder/a.throttle.yaml';
const B = 'file:///folder/b.throttle.yaml';

describe('a view', () => {
  test('opens beside the text, one of each file', async () => {
    const { panel, document } = await openView(FOUR_BARREL);
    expect([panel.viewType, panel.viewColumn, panel.title]).toEqual(['pedalToPlate.view', 2, 'Mechanism: a.throttle.yaml']);
    await run('openView');
    await run('openView', Uri.parse(A));
    expect(panels).toHaveLength(1);
    await openView(FOUR_BARREL, B);
    expect(panels.map(({ title }) => title)).toEqual(['Mechanism: a.throttle.yaml', 'Mechanism: b.throttle.yaml']);
    focusDocument(document);
    await run('openView');
    expect(panels).toHaveLength(2);
  });

  test('says whether it can be seen, and when that changes', async () => {
    const { panel } = await openView(FOUR_BARREL);
    const said: boolean[] = [];
    const isInSight = (uri: string) => served().isInSight(Uri.parse(uri) as unknown as vscode.Uri);
    const listening = served().onDidChange(() => said.push(isInSight(A)));
    expect([isInSight(A), isInSight(B)]).toEqual([true, false]);
    panel.turn({ visible: false });
    panel.turn({ active: false });
    panel.turn({ visible: true });
    panel.dispose();
    expect(said).toEqual([false, true, false]);
    listening.dispose();
  });

  test('is not opened of what is no throttle file', async () => {
    focusDocument(openDocument('file:///folder/a.txt', 'plaintext', FOUR_BARREL));
    await run('openView');
    await run('openView', Uri.parse('webview-panel:webview-1'));
    await run('openView', { nonsense: true });
    expect(panels).toEqual([]);
    expect(told).toEqual(Array(3).fill('message: Open a throttle file first.'));
  });

  test('is opened of the only throttle file there is where no text has the focus, as from the walkthrough', async () => {
    openThrottle(FOUR_BARREL, A);
    focusDocument(undefined);
    await run('openView');
    expect(panels.map(({ title }) => title)).toEqual(['Mechanism: a.throttle.yaml']);
    openThrottle(FOUR_BARREL, B);
    await run('openView');
    expect([panels.length, told]).toEqual([1, ['message: Open a throttle file first.']]);
  });

  test('has a page that may do nothing but run its own script', async () => {
    const { panel } = await openView(FOUR_BARREL);
    const { html, options, listenersAtHtml } = panel.webview;
    const [, policy = ''] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
    const [, nonce = ''] = /'nonce-([0-9a-f]{32})'/.exec(policy) ?? [];
    expect(policy.split('; ')).toEqual([
      `default-src 'none'`,
      `script-src 'nonce-${nonce}'`,
      `style-src ${panel.webview.cspSource}`,
      `img-src ${panel.webview.cspSource} data: blob:`,
    ]);
    expect(html.match(/<script[^>]*>/g)).toEqual([`<script nonce="${nonce}" src="https://page.example/extension/build/webview/view.js">`]);
    expect(html).toContain('<html lang="en">');
    expect(html).not.toMatch(/ (?:style|on\w+)=/);
    expect(options).toMatchObject({ enableScripts: true, enableCommandUris: false });
    expect(options.localResourceRoots?.map(String)).toEqual(['file:///extension/build/webview']);
    expect(listenersAtHtml).toBe(1);
    const other = await openView(FOUR_BARREL, B);
    expect(other.panel.webview.html).not.toContain(nonce);
  });

  test('says nothing before its page listens, and then all', async () => {
    const document = openDocument(B, 'throttle-linkage', FOUR_BARREL);
    focusDocument(document);
    await run('openView');
    const [panel] = panels;
    changeDocument(document, `${FOUR_BARREL}# more\n`);
    await turns();
    expect(panel?.webview.sent).toEqual([]);
    const page = loadPage(panel!);
    await turns();
    expect(page.types()).toEqual(['show', 'select', 'follows']);
    expect(page.last('show')).toMatchObject({ source: { uri: B, version: 2 }, fileName: 'b.throttle.yaml', trial: [] });
  });

  test('leaves a page of another build and what is no message alone', async () => {
    const { panel, page } = await openView(FOUR_BARREL);
    const count = page.told.length;
    for (const message of [undefined, null, 'ready', {}, { protocol: 0, kind: 'notice', notice: { type: 'ready' } }, { protocol: 1 }])
      panel.webview.say(message);
    panel.webview.say({ protocol: 1, kind: 'notice', notice: { type: 'reveal', source: 7 } });
    await turns();
    expect(page.told).toHaveLength(count);
  });

  test('is taken up when the editor brings it back, also before the file is open', async () => {
    writeFile(A, FOUR_BARREL);
    const panel = new WebviewPanel('pedalToPlate.view', 'old', 1, {});
    revive(panel, { uri: A });
    const page = loadPage(panel);
    await turns();
    expect(panel.title).toBe('Mechanism: a.throttle.yaml');
    expect(page.last('show').source.uri).toBe(A);
    expect(panel.webview.options.localResourceRoots?.map(String)).toEqual(['file:///extension/build/webview']);
  });

  test('that is hidden is told nothing, and all anew once it is seen again', async () => {
    const view = await openView(FOUR_BARREL);
    hide(view);
    const sent = view.panel.webview.sent.length;
    changeDocument(view.document, `${FOUR_BARREL}# one\n`);
    changeDocument(view.document, `${FOUR_BARREL}# two\n`);
    await turns();
    expect(view.panel.webview.sent).toHaveLength(sent);
    await bringBack(view);
    expect(view.page.last('show').source.version).toBe(3);
  });
});

describe('the file of a view', () => {
  test('is missed where it is not there, and shown once it is', async () => {
    const panel = new WebviewPanel('pedalToPlate.view', 'old', 1, {});
    revive(panel, { uri: A });
    const page = loadPage(panel);
    await turns();
    expect(page.last('gone').reason).toBe('a.throttle.yaml cannot be found. It is shown again once it is back.');
    writeFile(A, FOUR_BARREL);
    await turns();
    expect(page.last('show').source.uri).toBe(A);
  });

  test('is followed where it, or a folder above it, is renamed', async () => {
    const { document, panel, page } = await openView(FOUR_BARREL, 'file:///folder/one/a.throttle.yaml');
    closeDocument(document);
    writeFile('file:///folder/two/a.throttle.yaml', FOUR_BARREL);
    writeFile('file:///folder/one/a.throttle.yaml', undefined);
    renameFiles('file:///folder/one', 'file:///folder/two');
    await turns();
    expect(page.last('show').source.uri).toBe('file:///folder/two/a.throttle.yaml');
    writeFile('file:///folder/two/z.throttle.yaml', FOUR_BARREL);
    renameFiles('file:///folder/two/a.throttle.yaml', 'file:///folder/two/z.throttle.yaml');
    await turns();
    expect([panel.title, page.last('show').fileName]).toEqual(['Mechanism: z.throttle.yaml', 'z.throttle.yaml']);
    const count = page.told.length;
    renameFiles('file:///folder/tw', 'file:///folder/three');
    await turns();
    expect(page.told).toHaveLength(count);
  });

  test('is opened again where its editor is closed', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeDocument(document, `${FOUR_BARREL}# not saved\n`);
    await turns();
    closeDocument(document);
    await turns();
    expect(page.last('show').source).toEqual({ uri: A, version: 1 });
    expect(page.types()).not.toContain('gone');
  });

  test('that is deleted is gone, unless its text is still in a tab or not saved', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    putInTab(document.uri, true);
    writeFile(A, undefined);
    await turns();
    expect(page.types()).not.toContain('gone');
    putInTab(document.uri, false);
    await turns();
    expect(page.last('gone').reason).toContain('cannot be found');
    writeFile(A, FOUR_BARREL);
    await turns();
    expect(page.types().lastIndexOf('show')).toBeGreaterThan(page.types().lastIndexOf('gone'));
    document.isDirty = true;
    writeFile(A, undefined);
    await turns();
    expect(page.types().lastIndexOf('show')).toBeGreaterThan(page.types().lastIndexOf('gone'));
  });

  test.each(['a[1]', 'a{1,2}', 'a*b'])('%s.throttle.yaml is found gone and back under just that name', async (name) => {
    const uri = `file:///folder/${name}.throttle.yaml`;
    const panel = new WebviewPanel('pedalToPlate.view', 'old', 1, {});
    revive(panel, { uri });
    const page = loadPage(panel);
    await turns();
    writeFile('file:///folder/a1.throttle.yaml', FOUR_BARREL);
    writeFile('file:///folder/axb.throttle.yaml', FOUR_BARREL);
    await turns();
    expect(page.types()).not.toContain('show');
    writeFile(uri, FOUR_BARREL);
    await turns();
    expect(page.last('show').source.uri).toBe(uri);
    writeFile('file:///folder/a1.throttle.yaml', undefined);
    writeFile('file:///folder/axb.throttle.yaml', undefined);
    await turns();
    expect(page.types().at(-1)).not.toBe('gone');
    writeFile(uri, undefined);
    await turns();
    expect(page.types().at(-1)).toBe('gone');
  });

  test('that was never saved goes on as the file that it was saved as, not as a copy that was open', async () => {
    const copy = openDocument(B, 'throttle-linkage', FOUR_BARREL);
    const closed = await openView(FOUR_BARREL, 'untitled:Untitled-1');
    closeDocument(closed.document);
    await turns();
    expect(closed.page.last('gone').reason).toBe('Untitled-1 was closed without being saved.');

    const saved = await openView(FOUR_BARREL, 'untitled:Untitled-2');
    writeFile(A, FOUR_BARREL);
    openDocument(A, 'throttle-linkage', FOUR_BARREL);
    openDocument('untitled:Untitled-3', 'throttle-linkage', FOUR_BARREL);
    closeDocument(saved.document);
    await turns();
    expect(saved.page.last('show').source.uri).toBe(A);

    // Over a file that is open: that is saved, and not opened.
    const over = await openView(FOUR_BARREL, 'untitled:Untitled-4');
    writeFile(B, FOUR_BARREL);
    saveDocument(copy);
    closeDocument(over.document);
    await turns();
    expect(over.page.last('show').source.uri).toBe(B);
  });

  test('that was never saved does not go on as one that was opened before its text was changed', async () => {
    const { document, page } = await openView(FOUR_BARREL, 'untitled:Untitled-5');
    openDocument(B, 'throttle-linkage', FOUR_BARREL);
    changeDocument(document, FOUR_BARREL);
    closeDocument(document);
    await turns();
    expect(page.last('gone').reason).toBe('Untitled-5 was closed without being saved.');
  });

  test('that was never saved is gone when it is closed, and followed when it is saved', async () => {
    const view = await openView(FOUR_BARREL, 'untitled:Untitled-7');
    expect(view.page.last('show').source.uri).toBe('untitled:Untitled-7');
    writeFile(A, FOUR_BARREL);
    openDocument(A, 'throttle-linkage', FOUR_BARREL);
    closeDocument(view.document);
    await turns();
    expect([view.page.last('show').source.uri, view.panel.title]).toEqual([A, 'Mechanism: a.throttle.yaml']);
    const other = await openView(FOUR_BARREL.replace('title: ', 'title: Other '), 'untitled:Untitled-8');
    closeDocument(other.document);
    await turns();
    expect(other.page.last('gone').reason).toBe('Untitled-8 was closed without being saved.');
  });

  test('is left when it is given another language, and taken up when it comes back', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeLanguage(document, 'yaml');
    await turns();
    expect(page.last('gone').reason).toBe('a.throttle.yaml is not a throttle file any more.');
    changeLanguage(document, 'throttle-linkage');
    await turns();
    expect(page.types().lastIndexOf('show')).toBeGreaterThan(page.types().lastIndexOf('gone'));
  });
});
