import { expect, test } from 'vitest';
import { Range } from 'vscode';
import type * as vscode from 'vscode';
import { provideInlayHints } from '../../../extension/features/inlayHints.ts';
import { cancelledToken, FOUR_BARREL, forTest, openThrottle, PATIENT, providerOf, serveEach, set } from '../../support/editorRequests.ts';
import { changeDocument, InlayHintKind } from '../../support/vscode.ts';

serveEach(provideInlayHints);

const provider = (): vscode.InlayHintsProvider => providerOf('registerInlayHintsProvider');

async function hintsIn(document: vscode.TextDocument, token = PATIENT, from = 0, to = document.getText().length) {
  const range = new Range(document.positionAt(from), document.positionAt(to));
  return (await provider().provideInlayHints(document, range, token)) as vscode.InlayHint[] | undefined;
}

const labels = (hints: readonly vscode.InlayHint[] | undefined): unknown => hints?.map(({ label, kind }) => [label, kind]);

const RESULT = [expect.stringMatching(/^= 38 mm/), InlayHintKind.Type];
const LENGTH = [expect.stringMatching(/^length .* mm$/), InlayHintKind.Parameter];

test.each(['\n', '\r\n'])('results stand behind their formulas, lengths behind their rods (%j)', async (end) => {
  const document = openThrottle(FOUR_BARREL.replaceAll('\n', end));
  const hints = await hintsIn(document);
  expect(labels(hints)).toEqual([RESULT, [expect.stringMatching(/^= 32 mm/), InlayHintKind.Type], LENGTH]);
  const [first] = hints ?? [];
  expect(first && document.offsetAt(first.position)).toBe(document.getText().indexOf(', angle: 166'));
  expect(first?.paddingLeft).toBe(true);
});

test('only what is in sight is asked for', async () => {
  const document = openThrottle(FOUR_BARREL);
  const from = FOUR_BARREL.indexOf('rods:');
  expect(labels(await hintsIn(document, PATIENT, from))).toEqual([LENGTH]);
});

test('what a hint means is told when it is pointed at', async () => {
  const document = openThrottle(FOUR_BARREL);
  const [hint] = (await hintsIn(document)) ?? [];
  expect(hint?.tooltip).toBeUndefined();
  const resolved = await provider().resolveInlayHint?.(hint!, PATIENT);
  expect((resolved?.tooltip as vscode.MarkdownString).value).toBe('`38 mm` = `38 mm`');
});

test('each kind can be switched off, and the editor asks again at once', async () => {
  const document = openThrottle(FOUR_BARREL);
  let asks = 0;
  const listening = provider().onDidChangeInlayHints?.(() => asks++);
  set('pedalToPlate.inlayHints.formula', false);
  expect(asks).toBe(1);
  expect(labels(await hintsIn(document))).toEqual([LENGTH]);
  set('pedalToPlate.inlayHints.rodLength', false);
  set('pedalToPlate.inlayHints.rest', false);
  expect(await hintsIn(document)).toBeUndefined();
  set('pedalToPlate.codeLens', false);
  expect(asks).toBe(3);
  listening?.dispose();
});

test('none are made where nobody waits for them, nor of a text that has changed', async () => {
  const document = openThrottle(FOUR_BARREL);
  expect(await hintsIn(document, cancelledToken())).toBeUndefined();
  const asked = hintsIn(document);
  changeDocument(forTest(document), 'format: 1\n');
  expect(await asked).toBeUndefined();
});
