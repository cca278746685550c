import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { ExtensionContext } from 'vscode';
import { activate } from '../../extension/main.ts';
import { nextTurn } from '../../extension/turns.ts';
import { FOUR_BARREL, forTest, leftBehind, NOTHING, openThrottle, tidyUp } from '../support/editorRequests.ts';
import {
  changeDocument,
  commands,
  emptyDisk,
  logs,
  openDocument,
  panels,
  providers,
  registeredCommands,
  serializers,
  shownLogs,
  shownProblems,
  testControllers,
  Uri,
  WebviewPanel,
  writeFile,
} from '../support/vscode.ts';

let subscriptions: { dispose(): unknown }[];

beforeEach(() => {
  subscriptions = [];
});

afterEach(() => {
  end();
  tidyUp();
});

function begin(): void {
  const extension = { packageJSON: { version: '1.2.3' } };
  activate({ subscriptions, extension, extensionUri: Uri.parse('file:///extension') } as unknown as ExtensionContext);
}

function end(): void {
  for (const each of subscriptions.splice(0)) each.dispose();
}

/** Lets everything that was put off come to its end. */
async function settled(): Promise<void> {
  await nextTurn();
  await vi.dynamicImportSettled();
  await nextTurn();
}

test('nothing is given to other files, and nothing is loaded for them', async () => {
  begin();
  openDocument('file:///a.yaml', 'yaml', 'format: 1\nnonsense: 2\n');
  await settled();
  expect([providers.size, shownProblems.size, testControllers.size]).toEqual([0, 0, 0]);
});

test('the log is there with the first throttle file, says what runs in what, and goes with the extension', async () => {
  begin();
  expect(logs.size).toBe(0);
  openThrottle('format: 1\n');
  await settled();
  expect([...logs]).toEqual([['Pedal to Plate', ['Version 1.2.3, in VS Code 0.0.0']]]);
  end();
  expect(logs.size).toBe(0);
});

test('the log is shown to who asks for it, also before it has a line', async () => {
  begin();
  await commands.executeCommand('pedalToPlate.showLog');
  expect(shownLogs.splice(0)).toEqual(['Pedal to Plate']);
  expect([...logs]).toEqual([['Pedal to Plate', []]]);
});

test('activation is over before anything is read', async () => {
  openThrottle('format: 1\nnonsense: 2\n', 'file:///a');
  begin();
  expect(providers.size).toBe(0);
  await settled();
  expect(shownProblems.get('file:///a')).toHaveLength(1);
});

test('the first throttle file brings everything, a second one nothing more', async () => {
  begin();
  openThrottle('format: 1\n');
  openThrottle('format: 1\n');
  await settled();
  const count = providers.size;
  expect(count).toBe(14);
  openThrottle('format: 1\n');
  await settled();
  expect(providers.size).toBe(count);
});

test('nothing is left of it when it ends, also where changes still wait', async () => {
  const before = leftBehind();
  expect(before).toEqual(NOTHING);
  begin();
  const document = openThrottle('format: 1\nnonsense: 2\n');
  await settled();
  expect(shownProblems.size).toBe(1);
  changeDocument(forTest(document), 'format: 1\nrubbish: 2\n');
  end();
  await settled();
  expect(leftBehind()).toEqual(NOTHING);
  expect(testControllers.size).toBe(0);
});

test('it may end before it has begun', async () => {
  begin();
  openThrottle('format: 1\n');
  end();
  await settled();
  expect(leftBehind()).toEqual(NOTHING);
  begin();
  openThrottle('format: 1\n');
  // The core is being read.
  await nextTurn();
  end();
  await settled();
  expect(leftBehind()).toEqual(NOTHING);
});

test('what cannot be loaded is told once, to the log or to who asked, and loaded with the next throttle file', async () => {
  const why = new Error('a file of the extension cannot be read');
  let tries = 0;
  vi.doMock('../../extension/throttleFiles.ts', () => {
    tries++;
    throw why;
  });
  begin();
  openThrottle('format: 1\n', 'file:///a');
  await settled();
  const failure = expect.objectContaining({ cause: why }) as unknown;
  expect(logs.get('Pedal to Plate')).toEqual([failure]);
  await expect(commands.executeCommand('pedalToPlate.openView')).rejects.toMatchObject({ cause: why });
  expect([logs.get('Pedal to Plate')?.length, tries, providers.size]).toEqual([1, 2, 0]);
  vi.doUnmock('../../extension/throttleFiles.ts');
  openThrottle('format: 1\nnonsense: 2\n', 'file:///b');
  await settled();
  expect(shownProblems.get('file:///b')).toHaveLength(1);
});

test('every command that the manifest names is there without any throttle file, and no other', () => {
  begin();
  const named = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    readonly contributes: { readonly commands: readonly { readonly command: string }[] };
  };
  expect([...registeredCommands.keys()].sort()).toEqual(named.contributes.commands.map(({ command }) => command).sort());
  expect([...serializers.keys()]).toEqual(['pedalToPlate.view']);
});

test('a command of the view that is given before any throttle file is open loads what it needs, and opens the view', async () => {
  begin();
  writeFile('file:///folder/a.throttle.yaml', FOUR_BARREL);
  await commands.executeCommand('pedalToPlate.openView', Uri.parse('file:///folder/a.throttle.yaml'));
  expect(panels.map(({ title }) => title)).toEqual(['Mechanism: a.throttle.yaml']);
  end();
  await settled();
  expect(panels).toEqual([]);
  emptyDisk();
});

test('a view that the editor brings back is taken up, and one of which nothing is known is closed', async () => {
  begin();
  writeFile('file:///folder/a.throttle.yaml', FOUR_BARREL);
  const serializer = serializers.get('pedalToPlate.view');
  const revive = async (state: unknown): Promise<WebviewPanel> => {
    const panel = new WebviewPanel('pedalToPlate.view', '', 1, {});
    await serializer?.deserializeWebviewPanel(panel, state);
    return panel;
  };
  const revived = await revive({ uri: 'file:///folder/a.throttle.yaml', travel: 0.5 });
  expect(revived.webview.html).toContain('view.js');
  expect(revived.webview.options.enableScripts).toBe(true);
  for (const state of [undefined, null, 7, 'file:///folder/a.throttle.yaml', {}, { uri: 7 }, { uri: 'file:///folder/a.throttle.yaml' }])
    await revive(state);
  expect(panels).toEqual([revived]);
  end();
  await settled();
  emptyDisk();
});
