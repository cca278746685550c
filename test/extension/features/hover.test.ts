import { expect, test } from 'vitest';
import type * as vscode from 'vscode';
import { provideHover } from '../../../extension/features/hover.ts';
import {
  BINDING,
  cancelledToken,
  FOUR_BARREL,
  forTest,
  openThrottle,
  PATIENT,
  positionOf,
  providerOf,
  serveEach,
  set,
  textIn,
} from '../../support/editorRequests.ts';
import { changeDocument, type Hover } from '../../support/vscode.ts';

serveEach(provideHover);

const hoverAt = async (document: vscode.TextDocument, position: vscode.Position, token = PATIENT): Promise<Hover | undefined> =>
  (await providerOf('registerHoverProvider').provideHover(document, position, token)) as unknown as Hover | undefined;

test.each(['\n', '\r\n'])('says what a name stands for, at the name (%j)', async (end) => {
  const document = openThrottle(FOUR_BARREL.replaceAll('\n', end));
  const hover = await hoverAt(document, positionOf(document, 'crank_reach, angle', 3));
  expect(hover?.contents.value).toContain('38 mm');
  expect(hover && textIn(document, hover.range as never)).toBe('crank_reach');
});

test('says what a part does, in a document that was never saved', async () => {
  const document = openThrottle(FOUR_BARREL, 'untitled:Untitled-1');
  const hover = await hoverAt(document, positionOf(document, 'link:'));
  expect(hover?.contents.value).toContain('transmission');
});

test('tells of findings as severe as the settings make them, and of none that is off', async () => {
  const document = openThrottle(BINDING);
  const told = async (): Promise<string> => (await hoverAt(document, positionOf(document, 'link:')))?.contents.value ?? '';
  expect(await told()).toContain('**error** The rod link comes in line');
  set('pedalToPlate.severity', { 'toggle-opening': 'note' });
  expect(await told()).toContain('**note** The rod link comes in line');
  set('pedalToPlate.severity', { 'toggle-opening': 'off', 'not-assembled': 'off', 'transmission-angle': 'off' });
  expect(await told()).not.toContain('**error**');
  set('pedalToPlate.severity', {});
});

test('says nothing where there is nothing to say', async () => {
  const document = openThrottle(FOUR_BARREL);
  expect(await hoverAt(document, positionOf(document, '# Four', 4))).toBeUndefined();
});

test('is not worked out where nobody waits for it, nor told of a text that has changed', async () => {
  const document = openThrottle(FOUR_BARREL);
  const place = positionOf(document, 'link:');
  expect(await hoverAt(document, place, cancelledToken())).toBeUndefined();
  const asked = hoverAt(document, place);
  changeDocument(forTest(document), 'format: 1\n');
  expect(await asked).toBeUndefined();
});
