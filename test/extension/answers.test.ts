import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepAnswers, type DocumentAnswers } from '../../extension/answers.ts';
import { cancelledToken, forEditor, forTest, openThrottle, tidyUp } from '../support/editorRequests.ts';
import { CancellationTokenSource, changeDocument, changeLanguage, closeDocument, openDocument, touchDocument } from '../support/vscode.ts';

const WRONG = 'format: 1\nnonsense: 2\n';
const MORE_WRONG = 'format: 1\nnonsense: 2\nrubbish: 3\n';

let answers: DocumentAnswers;
let told: string[];

beforeEach(() => {
  vi.useFakeTimers();
  answers = keepAnswers();
  told = [];
  answers.onDidSolve(({ document, answers: solved }) => told.push(`${document.uri.path}: ${solved.text}`));
  answers.onDidForget((document) => told.push(`${document.uri.path} forgotten`));
});

afterEach(() => {
  answers.dispose();
  expect(vi.getTimerCount()).toBe(0);
  vi.useRealTimers();
  tidyUp();
});

/** Asks, and lets the editor have its turns. */
async function asked<T>(request: Promise<T>): Promise<T> {
  await vi.runAllTimersAsync();
  return request;
}

describe('answers of a document', () => {
  test('are told once it is open, not before its opening is over', () => {
    openThrottle(WRONG, 'file:///a');
    expect(told).toEqual([]);
    vi.runAllTimers();
    expect(told).toEqual([`/a: ${WRONG}`]);
  });

  test('are told of what was open before', () => {
    openThrottle(WRONG, 'file:///a');
    answers.dispose();
    answers = keepAnswers();
    answers.onDidSolve(({ document }) => told.push(`${document.uri.path} again`));
    vi.runAllTimers();
    expect(told).toEqual(['/a again']);
  });

  test('are told once typing pauses, of the last text only', () => {
    const document = openThrottle(WRONG, 'file:///a');
    vi.runAllTimers();
    changeDocument(forTest(document), `${WRONG}r`);
    changeDocument(forTest(document), MORE_WRONG);
    vi.advanceTimersByTime(50);
    expect(told).toHaveLength(1);
    vi.runAllTimers();
    expect(told.slice(1)).toEqual([`/a: ${MORE_WRONG}`]);
  });

  test('are not told again where nothing of the text has changed', () => {
    const document = openThrottle(WRONG);
    vi.runAllTimers();
    touchDocument(forTest(document));
    expect(vi.getTimerCount()).toBe(0);
  });

  test('are worked out once a version, whoever asks', async () => {
    const document = openThrottle(WRONG);
    const first = await asked(answers.solved(document));
    expect(await asked(answers.solved(document))).toBe(first);
    expect(answers.solveNow(document)).toBe(first);
    expect(answers.names(document)).toBe(answers.names(document));
    changeDocument(forTest(document), MORE_WRONG);
    expect(answers.latest(document)).toBe(first);
    expect((await asked(answers.solved(document)))?.text).toBe(MORE_WRONG);
    expect(answers.names(document).text).toBe(MORE_WRONG);
  });

  test('are not given to a request that was cancelled, before or after it was made', async () => {
    const document = openThrottle(WRONG);
    expect(await asked(answers.solved(document, cancelledToken()))).toBeUndefined();
    const source = new CancellationTokenSource();
    const request = answers.solved(document, source.token);
    source.cancel();
    expect(await asked(request)).toBeUndefined();
  });

  test('are not given to a request about a text that has changed since', async () => {
    const document = openThrottle(WRONG);
    const request = answers.solved(document);
    changeDocument(forTest(document), MORE_WRONG);
    expect(await asked(request)).toBeUndefined();
  });

  test('are not given of a document that was closed since, and nothing of it is kept', async () => {
    const document = openThrottle(WRONG, 'file:///a');
    vi.runAllTimers();
    const request = answers.solved(document);
    closeDocument(forTest(document));
    expect(await asked(request)).toBeUndefined();
    expect(answers.latest(document)).toBeUndefined();
    expect(told.at(-1)).toBe('/a forgotten');
    answers.solveNow(document);
    answers.names(document);
    expect(answers.latest(document)).toBeUndefined();
  });

  test('never come late: what closes while its text waits is not told of', () => {
    const document = openThrottle(WRONG, 'file:///a');
    changeDocument(forTest(document), MORE_WRONG);
    closeDocument(forTest(document));
    vi.runAllTimers();
    expect(told).toEqual(['/a forgotten']);
  });

  test('of several documents do not mix', async () => {
    const [one, other] = [openThrottle(WRONG), openThrottle(MORE_WRONG)];
    expect((await asked(answers.solved(other)))?.problems).toHaveLength(2);
    expect((await asked(answers.solved(one)))?.problems).toHaveLength(1);
  });

  test('come and go with the language of a document that was never saved', async () => {
    const document = openDocument('untitled:Untitled-1', 'yaml', WRONG);
    vi.runAllTimers();
    expect(await asked(answers.solved(forEditor(document)))).toBeUndefined();
    changeLanguage(document, 'throttle-linkage');
    vi.runAllTimers();
    expect(told).toEqual([`Untitled-1: ${WRONG}`]);
    changeLanguage(document, 'yaml');
    vi.runAllTimers();
    expect(told.slice(1)).toEqual(['Untitled-1 forgotten']);
  });

  test('are told to nobody after they are disposed of', () => {
    const document = openThrottle(WRONG);
    changeDocument(forTest(document), MORE_WRONG);
    answers.dispose();
    vi.runAllTimers();
    expect(told).toEqual([]);
  });
});

test('in a storm of edits each version is answered or dropped, and only what is asked last is solved', async () => {
  const document = openThrottle(WRONG);
  const requests = Array.from({ length: 1000 }, (_, index) => {
    changeDocument(forTest(document), `format: 1\n# ${index}\n`);
    return answers.solved(document);
  });
  await vi.runAllTimersAsync();
  const given = await Promise.all(requests);
  expect(given.slice(0, -1).every((each) => each === undefined)).toBe(true);
  expect(given.at(-1)?.text).toBe(document.getText());
  expect(told).toHaveLength(1);
});
