import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { publishProblems } from '../../extension/liveProblems.ts';
import { changeDocument, closeDocument, openDocument, shownProblems, workspace } from '../support/vscode.ts';

const NAME = 'file:///a.throttle.yaml';
const WRONG = 'format: 1\nnonsense: 2\n';
const MORE_WRONG = 'format: 1\nnonsense: 2\nrubbish: 3\n';

const codesShown = (): unknown[] => (shownProblems.get(NAME) ?? []).map(({ code }) => code);
const unknownKeys = (): number => codesShown().filter((code) => code === 'unknown-key').length;

let published: { dispose(): unknown } | undefined;

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  published?.dispose();
  [...workspace.textDocuments].forEach(closeDocument);
  vi.useRealTimers();
});

test('a throttle file that opens shows its problems at once', () => {
  published = publishProblems();
  openDocument(NAME, 'throttle-linkage', WRONG);
  expect(unknownKeys()).toBe(1);
});

test('a throttle file that was open before shows its problems too, after activation has returned', () => {
  openDocument(NAME, 'throttle-linkage', WRONG);
  published = publishProblems();
  expect(codesShown()).toEqual([]);
  vi.runAllTimers();
  expect(unknownKeys()).toBe(1);
});

test('typing is left in peace, and the text is read once it pauses', () => {
  published = publishProblems();
  const document = openDocument(NAME, 'throttle-linkage', WRONG);
  changeDocument(document, MORE_WRONG);
  expect(unknownKeys()).toBe(1);
  vi.runAllTimers();
  expect(unknownKeys()).toBe(2);
});

test('a file that closes takes its problems with it, also when a change was still waiting', () => {
  published = publishProblems();
  const document = openDocument(NAME, 'throttle-linkage', WRONG);
  changeDocument(document, MORE_WRONG);
  closeDocument(document);
  vi.runAllTimers();
  expect(shownProblems.has(NAME)).toBe(false);
});

test('other YAML files are not touched', () => {
  published = publishProblems();
  openDocument('file:///b.yaml', 'yaml', WRONG);
  vi.runAllTimers();
  expect(shownProblems.size).toBe(0);
});

test('nothing is shown or awaited after it is disposed of', () => {
  published = publishProblems();
  const document = openDocument(NAME, 'throttle-linkage', WRONG);
  changeDocument(document, MORE_WRONG);
  published.dispose();
  expect(vi.getTimerCount()).toBe(0);
  expect(shownProblems.size).toBe(0);
});
