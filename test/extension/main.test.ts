import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { ExtensionContext } from 'vscode';
import { activate } from '../../extension/main.ts';
import { nextTurn } from '../../extension/turns.ts';
import { forTest, leftBehind, NOTHING, openThrottle, tidyUp } from '../support/editorRequests.ts';
import { changeDocument, openDocument, providers, registeredCommands, shownProblems, testControllers, Uri } from '../support/vscode.ts';

let subscriptions: { dispose(): unknown }[];

beforeEach(() => {
  subscriptions = [];
});

afterEach(() => {
  end();
  tidyUp();
});

function begin(): void {
  activate({ subscriptions, extensionUri: Uri.parse('file:///extension') } as unknown as ExtensionContext);
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
  expect(count).toBe(13);
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

test('a command that the manifest names is there without any throttle file', () => {
  begin();
  expect([...registeredCommands.keys()]).toEqual(['pedalToPlate.newThrottleFile']);
});
