/** The item of the status bar. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepAnswers } from '../../extension/answers.ts';
import { showStatus } from '../../extension/statusBar.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import {
  changeDocument,
  changeLanguage,
  closeDocument,
  focusDocument,
  listening,
  openDocument,
  setSetting,
  statusBarItems,
  StatusBarAlignment,
  workspace,
  type StatusBarItem,
  type TextDocument,
} from '../support/vscode.ts';

const SOUND = readFileSync(new URL('../../examples/four-barrel.throttle.yaml', import.meta.url), 'utf8');
const BROKEN = readFileSync(new URL('../../examples/binding-broken.throttle.yaml', import.meta.url), 'utf8');

let disposables: { dispose(): void }[] = [];
let listenedBefore = 0;

beforeEach(() => {
  vi.useFakeTimers();
  listenedBefore = listening.count;
});

afterEach(() => {
  disposables.forEach((each) => each.dispose());
  disposables = [];
  focusDocument(undefined);
  [...workspace.textDocuments].forEach(closeDocument);
  vi.useRealTimers();
  expect([statusBarItems.size, listening.count]).toEqual([0, listenedBefore]);
});

function show(): StatusBarItem {
  const answers = keepAnswers();
  disposables.push(showStatus(answers), answers);
  const [item, second] = statusBarItems;
  if (item === undefined || second !== undefined) throw new Error('there should be one item');
  return item;
}

function open(text: string, name = 'a', language = 'throttle-linkage'): TextDocument {
  const document = openDocument(`file:///${name}.throttle.yaml`, language, text);
  focusDocument(document);
  vi.runAllTimers();
  return document;
}

test('counts findings as severe as the settings make them, at once, and none that is off', () => {
  const item = show();
  open(BROKEN);
  expect(item.text).toContain('1 error');
  setSetting('pedalToPlate.severity', { 'toggle-opening': 'warning', 'not-assembled': 'warning', 'transmission-angle': 'warning' });
  expect(item.text).toContain('$(warning) 2 warnings');
  setSetting('pedalToPlate.severity', { 'toggle-opening': 'off', 'not-assembled': 'off', 'transmission-angle': 'off' });
  expect(item.text).toContain('$(warning) 2 warnings');
  const tooltip = item.tooltip as { readonly value: string };
  expect(tooltip.value).toContain('no errors, 2 warnings, no notes');
  setSetting('pedalToPlate.severity', {});
  expect(item.text).toContain('1 error');
});

test('there is one item, on the right, which shows the problems', () => {
  const item = show();
  expect([item.alignment, item.command?.command]).toEqual([StatusBarAlignment.Right, 'workbench.actions.view.problems']);
});

test('it is there while a throttle file has the focus, and only then', () => {
  const item = show();
  expect(item.isShown).toBe(false);
  const document = open(SOUND);
  expect(item.isShown).toBe(true);
  focusDocument(undefined);
  expect(item.isShown).toBe(false);
  focusDocument(document);
  expect(item.isShown).toBe(true);
  changeLanguage(document, 'yaml');
  expect(item.isShown).toBe(false);
});

test('another YAML file has none', () => {
  const item = show();
  open(SOUND, 'b', 'yaml');
  expect(item.isShown).toBe(false);
});

test('it says how the file stands, for eyes and for ears', () => {
  const item = show();
  open(SOUND);
  expect(item.text).toMatch(/^\$\((?:info|check)\) no errors · opens 82°$/);
  expect(item.accessibilityInformation?.label).toBe('Throttle linkage: no errors · opens 82°');
  const broken = open(BROKEN, 'broken');
  expect(item.text).toMatch(/^\$\(error\) 1 error/);
  changeDocument(broken, 'format: 1\n');
  vi.runAllTimers();
  expect(item.text).not.toMatch(/1 error/);
});

test('on hover it gives the verdict, the requirements, what was not checked, and the caution', () => {
  const item = show();
  open(SOUND);
  const words = item.tooltip?.value.replaceAll('\\', '') ?? '';
  const places = ['no errors', '**Requirements**', 'opens fully: passed', '**Not checked**', CAUTION].map((part) => words.indexOf(part));
  expect(places.includes(-1)).toBe(false);
  expect([...places].sort((a, b) => a - b)).toEqual(places);
});

test('names of a file are text on hover, never markup', () => {
  const item = show();
  open(SOUND.replace('opens fully:', '"[x](command:y) **z**":'));
  expect(item.tooltip?.value).toContain('\\[x\\]\\(command:y\\) \\*\\*z\\*\\*');
});

test('a change of a file that has not the focus does not show', () => {
  const item = show();
  const first = open(SOUND);
  open(BROKEN, 'broken');
  const { text } = item;
  changeDocument(first, 'format: 1\n');
  vi.runAllTimers();
  expect(item.text).toBe(text);
});

test('a file that closes takes it along', () => {
  const item = show();
  closeDocument(open(SOUND));
  expect(item.isShown).toBe(false);
});
