/** Fixes worked out ahead for what is found under the cursor, and given up as soon as somebody moves on. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepAnswers, type DocumentAnswers } from '../../../extension/answers.ts';
import { keepFixWorks, type FixWorks } from '../../../extension/features/fixWorks.ts';
import { solveAhead } from '../../../extension/features/solveAhead.ts';
import type { FixWork } from '../../../src/language/fixWork.ts';
import { offeredFixes } from '../../../src/language/offeredFixes.ts';
import type { Answers } from '../../../src/solve.ts';
import { BINDING, forTest, openThrottle, set, tidyUp } from '../../support/editorRequests.ts';
import { changeDocument, closeDocument, focusDocument, putCursor } from '../../support/vscode.ts';

let answers: DocumentAnswers;
let works: FixWorks;
let ending: (() => void) | undefined;
/** Pieces done, over all fixes. */
let pieces: number;

beforeEach(() => {
  vi.useFakeTimers();
  answers = keepAnswers();
  pieces = 0;
  const kept = keepFixWorks();
  const seen = new Map<FixWork, FixWork>();
  // A clock that stands still would let one piece do it all: here each piece is one step.
  works = (of, offer) => {
    const work = kept(of, offer);
    const stepping: FixWork = seen.get(work) ?? {
      get result() {
        return work.result;
      },
      go() {
        pieces++;
        return work.go(() => true);
      },
    };
    seen.set(work, stepping);
    return stepping;
  };
  const ahead = solveAhead(answers, works);
  ending = () => {
    ahead.dispose();
    answers.dispose();
  };
});

afterEach(() => {
  focusDocument(undefined);
  ending?.();
  expect(vi.getTimerCount()).toBe(0);
  vi.useRealTimers();
  tidyUp();
});

/** One that is mended by the least work: what to write is known. */
const GROOVE = BINDING.replace('wraps: clockwise}', 'wraps: clockwise, groove: 60 deg}');
const AT_GROOVE = GROOVE.indexOf('60 deg}');

function focus(text: string): { readonly document: ReturnType<typeof openThrottle>; readonly solved: () => Answers } {
  const document = openThrottle(text);
  focusDocument(forTest(document));
  return { document, solved: () => answers.solveNow(document) };
}

const worksAt = (of: Answers, offset: number): readonly FixWork[] =>
  offeredFixes(of, { start: offset, end: offset }).map((offer) => works(of, offer));

test('what is found under a cursor that rests is worked out', async () => {
  const { solved } = focus(GROOVE);
  putCursor(AT_GROOVE);
  await vi.advanceTimersByTimeAsync(10_000);
  const found = worksAt(solved(), AT_GROOVE);
  expect(found.length).toBeGreaterThan(0);
  expect(found.map(({ result }) => result?.kind)).toEqual(found.map(() => 'solved'));
});

test('where nothing is found under it, nothing is worked out', async () => {
  focus(GROOVE);
  putCursor(0);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(pieces).toBe(0);
});

test.each([
  ['the cursor moves', () => putCursor(0)],
  ['the focus goes elsewhere', () => focusDocument(undefined)],
  ['a character is typed', (document: ReturnType<typeof openThrottle>) => changeDocument(forTest(document), `${GROOVE}#`)],
  ['the file is closed', (document: ReturnType<typeof openThrottle>) => closeDocument(forTest(document))],
])('it is given up when %s', async (_when, move) => {
  const at = GROOVE.indexOf('link:');
  const { document, solved } = focus(GROOVE);
  putCursor(at);
  const before = solved();
  await vi.advanceTimersByTimeAsync(255);
  expect(pieces).toBeGreaterThan(0);
  expect(worksAt(before, at)[0]?.result).toBeUndefined();
  move(document);
  const done = pieces;
  // Not even the turns that were waiting do more than look; and what has moved has nothing under its cursor, or rests anew.
  await vi.advanceTimersByTimeAsync(100);
  expect(pieces).toBe(done);
});

test('a cursor that only passes by asks for nothing', async () => {
  focus(GROOVE);
  for (let i = 0; i < 10; i++) {
    putCursor(AT_GROOVE + (i % 2));
    await vi.advanceTimersByTimeAsync(100);
  }
  expect(pieces).toBe(0);
});

test('what is switched off is not worked out', async () => {
  set('pedalToPlate.severity', { 'groove-left': 'off' });
  focus(GROOVE);
  putCursor(AT_GROOVE);
  await vi.advanceTimersByTimeAsync(2_000);
  expect(pieces).toBe(0);
});
