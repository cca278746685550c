/** What single failures do, told as problems once typing rests. */
import { expect, test, vi } from 'vitest';
import { codeOf } from '../../extension/features/diagnostic.ts';
import { publishProblems } from '../../extension/features/liveProblems.ts';
import { provideTests } from '../../extension/tests.ts';
import { CRANK, textOf, torsion } from '../failures/throttles.ts';
import { forTest, openThrottle, serveEachInTime, set, textIn } from '../support/editorRequests.ts';
import { changeDocument, closeDocument, shownProblems } from '../support/vscode.ts';

const NAME = 'file:///a.throttle.yaml';
/** Both springs before the rod: without it the shaft is loose. */
const LOOSE = textOf(CRANK, { springs: { first: torsion('crank', 450), second: torsion('crank', 450) } });
const SOUND = textOf(CRANK);
/** ms; the pause in typing is 120, the rest after it 480. */
const PAUSE = 200;
const REST = 1000;

const codes = (): readonly (string | undefined)[] => (shownProblems.get(NAME) ?? []).map((each) => codeOf(each as never));
const isTold = (): boolean => codes().includes('failure-holds-open');

const { answers } = serveEachInTime(publishProblems);

test('they are told at the part that is lost, behind what is told at once', () => {
  const document = openThrottle(LOOSE, NAME);
  vi.advanceTimersByTime(PAUSE);
  const before = codes();
  expect(isTold()).toBe(false);
  vi.advanceTimersByTime(REST);
  expect(codes().filter((code) => code !== 'failure-holds-open')).toEqual(before);
  const told = (shownProblems.get(NAME) ?? []).filter((each) => codeOf(each as never) === 'failure-holds-open');
  expect(told.map(({ range, message }) => [textIn(document, range as never), message])).toEqual([
    ['link', expect.stringMatching(/^Without link, shaft stays open: nothing brings shaft back/)],
  ]);
});

test('a change before they are worked out calls them off, and they never stand at a text that is another', () => {
  const document = openThrottle(LOOSE, NAME);
  vi.advanceTimersByTime(PAUSE);
  changeDocument(forTest(document), `${LOOSE}# more\n`);
  vi.advanceTimersByTime(REST / 2);
  // So long after the first text they would have come.
  expect(isTold()).toBe(false);
  vi.advanceTimersByTime(REST);
  expect(isTold()).toBe(true);
  changeDocument(forTest(document), SOUND);
  vi.advanceTimersByTime(PAUSE);
  expect(isTold()).toBe(false);
  vi.advanceTimersByTime(REST);
  expect(isTold()).toBe(false);
});

test('a change between two pieces of the work ends it', () => {
  const document = openThrottle(LOOSE, NAME);
  const heard: number[] = [];
  const listening = answers().onDidLookAtFailures(() => heard.push(document.version));
  // Each look at the clock is a piece later.
  let now = Date.now();
  const clock = vi.spyOn(Date, 'now').mockImplementation(() => (now += 10));
  // It is solved, rests, and a few pieces are done.
  for (let turn = 0; turn < 6; turn++) vi.advanceTimersToNextTimer();
  expect([vi.getTimerCount(), heard]).toEqual([1, []]);
  changeDocument(forTest(document), 'format: 1\n');
  vi.advanceTimersByTime(REST);
  clock.mockRestore();
  expect(heard).toEqual([]);
  expect(isTold()).toBe(false);
  listening.dispose();
});

test('a file that closes before they are worked out is left alone', () => {
  const document = openThrottle(LOOSE, NAME);
  vi.advanceTimersByTime(PAUSE);
  closeDocument(forTest(document));
  vi.advanceTimersByTime(REST);
  expect(shownProblems.has(NAME)).toBe(false);
});

test('they have the severity that the settings give them, also when that is changed behind', () => {
  openThrottle(LOOSE, NAME);
  vi.advanceTimersByTime(REST);
  expect(isTold()).toBe(true);
  set('pedalToPlate.severity', { 'failure-holds-open': 'off' });
  expect(isTold()).toBe(false);
  set('pedalToPlate.severity', {});
  expect(isTold()).toBe(true);
});

test('what counts all that was found has them then; what is asked of the text alone has not', () => {
  const document = openThrottle(LOOSE, NAME);
  vi.advanceTimersByTime(REST);
  const whole = answers().latestWhole(document);
  expect(whole?.findings.map(({ code }) => code)).toContain('failure-holds-open');
  expect(
    answers()
      .latest(document)
      ?.findings.map(({ code }) => code),
  ).not.toContain('failure-holds-open');
  expect(whole?.notChecked.some(({ message }) => message.includes('any one spring'))).toBe(false);
  // The tests of `require` lines are of the same answers, and none of them waits for this.
  const tests = provideTests(answers());
  expect(whole?.requirements).toBe(answers().latest(document)?.requirements);
  tests.dispose();
});
