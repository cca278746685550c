/**
 * A thousand random edits of the largest example, while everything asks for answers as an editor would: each request is answered for the
 * text as it is then, or dropped, and nothing piles up.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keepAnswers, type DocumentAnswers } from '../../extension/answers.ts';
import { nextTurn } from '../../extension/turns.ts';
import type { Answers } from '../../src/solve.ts';
import { example, forTest, openThrottle, tidyUp } from '../support/editorRequests.ts';
import { CancellationTokenSource, changeDocument } from '../support/vscode.ts';

const EDITS = 1000;

/** One in so many edits is followed by a pause in which the editor has its turn, as between fast keystrokes. */
const PAUSE_EVERY = 12;

const PIECES = ['a', '7', ' ', ':', '\n', '\r\n', '{', '}', '[', ',', '"', '#', '±', ' mm', ' deg', '🔧', 'shaft.', '  x: 1\n', '*', '&a '];

let answers: DocumentAnswers;

beforeEach(() => {
  answers = keepAnswers();
});

afterEach(() => {
  answers.dispose();
  tidyUp();
});

test('a storm of edits leaves no stale answer and no memory behind', async () => {
  const original = example('two-banks');
  const document = openThrottle(original);
  const random = generator(20_480);
  const late: string[] = [];
  answers.onDidSolve(({ document: told, answers: { text } }) => {
    if (text !== told.getText()) late.push('told of an old text');
  });

  let answered = 0;
  let dropped = 0;
  const ask = async (): Promise<void> => {
    const { version } = document;
    const source = new CancellationTokenSource();
    if (random() < 0.1) source.cancel();
    const given = await answers.solved(document, source.token);
    if (given === undefined) dropped++;
    else {
      answered++;
      everGiven.push(new WeakRef(given));
      if (document.version !== version || given.text !== document.getText()) late.push(`version ${version}`);
    }
  };

  const everGiven: WeakRef<Answers>[] = [];
  const heaps: number[] = [];
  let requests: Promise<void>[] = [];
  let text = original;
  for (let edit = 1; edit <= EDITS; edit++) {
    text = edit % 50 === 0 ? original : mutated(text, random);
    changeDocument(forTest(document), text);
    requests.push(ask(), ask());
    if (random() * PAUSE_EVERY < 1) {
      answers.names(document);
      await nextTurn();
    }
    if (edit % 250 === 0) {
      await Promise.all(requests);
      requests = [];
      // What is known of the last texts is as large as they are: it is counted where those are the same.
      for (const last of [original.replace('22 mm', '23 mm'), original]) {
        changeDocument(forTest(document), last);
        await answers.solved(document);
      }
      heaps.push(heapUsed());
    }
  }
  expect(late).toEqual([]);
  expect(answered + dropped).toBe(2 * EDITS);
  expect(answered).toBeGreaterThan(EDITS / 30);
  expect(dropped).toBeGreaterThan(EDITS);
  expect((await answers.solved(document))?.text).toBe(text);
  // What a reference has shown lives until the next turn.
  await nextTurn();
  heapUsed();
  expect(new Set(everGiven.flatMap((given) => given.deref() ?? [])).size).toBeLessThanOrEqual(MOST_KEPT);
  // The first half still warms up; what an edit left behind would show in the half that follows.
  expect(heaps.at(-1)! - heaps[1]!).toBeLessThan(LEFT_PER_EDIT * EDITS * 0.5);
});

/** The one of the text as it stands, and one that a request was given at last. */
const MOST_KEPT = 2;

/** Bytes: an answer of this example takes 1.7 MB, so that one kept in four hundred edits would be seen. */
const LEFT_PER_EDIT = 4000;

/** Xorshift (Marsaglia 2003), so that each run makes the same edits. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** With a piece put in, taken out, or both. */
function mutated(text: string, random: () => number): string {
  const at = Math.floor(random() * (text.length + 1));
  const removed = random() < 0.5 ? 0 : Math.floor(random() * 6);
  const piece = random() < 0.7 ? PIECES[Math.floor(random() * PIECES.length)]! : '';
  return text.slice(0, at) + piece + text.slice(at + removed);
}

function heapUsed(): number {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  collect();
  return process.memoryUsage().heapUsed;
}
