import { expect, test, vi } from 'vitest';
import { codeOf } from '../../../extension/features/diagnostic.ts';
import { publishProblems } from '../../../extension/features/liveProblems.ts';
import { BINDING, forTest, openThrottle, serveEachInTime, set, textIn } from '../../support/editorRequests.ts';
import { changeDocument, closeDocument, DiagnosticSeverity, openDocument, shownProblems } from '../../support/vscode.ts';

const NAME = 'file:///a.throttle.yaml';
const WRONG = 'format: 1\nnonsense: 2\n';
const MORE_WRONG = 'format: 1\nnonsense: 2\nrubbish: 3\n';

const shown = (): { code: string | undefined; severity: number; range: never }[] =>
  (shownProblems.get(NAME) ?? []).map((each) => ({ code: codeOf(each as never), severity: each.severity, range: each.range as never }));
const codesShown = (): (string | undefined)[] => shown().map(({ code }) => code);

const { end } = serveEachInTime(publishProblems);

test('a throttle file that opens shows its problems', () => {
  openThrottle(WRONG, NAME);
  vi.runAllTimers();
  expect(codesShown()).toEqual(['unknown-key']);
});

test('findings about the linkage stand at what they are about, behind the problems of the text', () => {
  const document = openThrottle(`${BINDING}nonsense: 1\n`, NAME);
  vi.runAllTimers();
  expect(shown().map(({ code, range }) => `${code ?? ''} ${textIn(document, range)}`)).toEqual([
    'unknown-key nonsense',
    'toggle-opening link',
    'single-return-spring return_one',
  ]);
});

test('typing is left in peace, and the text is read once it pauses', () => {
  const document = openThrottle(WRONG, NAME);
  vi.runAllTimers();
  changeDocument(forTest(document), MORE_WRONG);
  expect(codesShown()).toHaveLength(1);
  vi.runAllTimers();
  expect(codesShown()).toHaveLength(2);
  changeDocument(forTest(document), 'format: 1\n');
  vi.runAllTimers();
  expect(codesShown()).not.toContain('unknown-key');
});

test('a file that closes takes its problems with it, also when a change was still waiting', () => {
  const document = openThrottle(WRONG, NAME);
  vi.runAllTimers();
  changeDocument(forTest(document), MORE_WRONG);
  closeDocument(forTest(document));
  vi.runAllTimers();
  expect(shownProblems.has(NAME)).toBe(false);
});

test('other YAML files are not touched, nor other revisions of a throttle file', () => {
  openDocument('file:///b.yaml', 'yaml', WRONG);
  openThrottle(WRONG, 'git:/a.throttle.yaml?HEAD');
  vi.runAllTimers();
  expect(shownProblems.size).toBe(0);
});

test('a finding has the severity that the settings give it, at once, and the problems of the text keep theirs', () => {
  openThrottle(`${BINDING}nonsense: 1\n`, NAME);
  vi.runAllTimers();
  set('pedalToPlate.severity', { 'not-assembled': 'note', 'toggle-opening': 'off', 'opening-missed': 'loud', 'unknown-key': 'off' });
  // What was told with the one that is off stands in its place.
  expect(shown().map(({ code, severity }) => [code, severity])).toEqual([
    ['unknown-key', DiagnosticSeverity.Error],
    ['not-assembled', DiagnosticSeverity.Information],
    ['opening-missed', DiagnosticSeverity.Warning],
    ['transmission-angle', DiagnosticSeverity.Error],
    ['single-return-spring', DiagnosticSeverity.Warning],
  ]);
});

test('a setting that cannot be meant changes nothing', () => {
  openThrottle(BINDING, NAME);
  vi.runAllTimers();
  set('pedalToPlate.severity', 'off');
  expect(codesShown()).toEqual(['toggle-opening', 'single-return-spring']);
});

test('a change of the settings shows nothing of a text that is typed in just then', () => {
  const document = openThrottle(WRONG, NAME);
  vi.runAllTimers();
  changeDocument(forTest(document), 'format: 1\n');
  const before = shownProblems.get(NAME);
  set('pedalToPlate.severity', {});
  expect(shownProblems.get(NAME)).toBe(before);
});

test('nothing is shown or awaited after it is disposed of', () => {
  const document = openThrottle(WRONG, NAME);
  vi.runAllTimers();
  changeDocument(forTest(document), MORE_WRONG);
  end();
  expect(vi.getTimerCount()).toBe(0);
  expect(shownProblems.size).toBe(0);
});
