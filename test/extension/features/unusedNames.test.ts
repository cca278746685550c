import { expect, test, vi } from 'vitest';
import { fadeUnusedNames } from '../../../extension/features/unusedNames.ts';
import { FOUR_BARREL, forTest, openThrottle, serveEachInTime, textIn } from '../../support/editorRequests.ts';
import { changeDocument, closeDocument, DiagnosticSeverity, DiagnosticTag, shownProblems } from '../../support/vscode.ts';

const NAME = 'file:///a.throttle.yaml';
const SPARE = FOUR_BARREL.replace('let:\n', 'let:\n  spare: 3 mm\n');
/** ms; problems are told 120 after the last key, and this 480 later. */
const PAUSE = 200;

serveEachInTime(fadeUnusedNames);

test('a name that nothing uses fades once typing rests, and is in no list of problems', () => {
  const document = openThrottle(SPARE, NAME);
  vi.advanceTimersByTime(PAUSE);
  expect(shownProblems.has(NAME)).toBe(false);
  vi.runAllTimers();
  const shown = shownProblems.get(NAME) ?? [];
  expect(shown.map(({ range, message, severity, tags }) => [textIn(document, range as never), message, severity, tags])).toEqual([
    ['spare', 'Nothing in this file uses spare', DiagnosticSeverity.Hint, [DiagnosticTag.Unnecessary]],
  ]);
});

test('it stands out again once it is used, while the text cannot be read, and when the file closes', () => {
  const document = openThrottle(SPARE, NAME);
  const fades = (text: string): boolean => {
    changeDocument(forTest(document), text);
    vi.runAllTimers();
    return shownProblems.has(NAME);
  };
  vi.runAllTimers();
  expect([SPARE, SPARE.replace('38 mm', 'spare + 35 mm'), SPARE, `${SPARE}nonsense: 1\n`, SPARE].map(fades)).toEqual([
    true,
    false,
    true,
    false,
    true,
  ]);
  closeDocument(forTest(document));
  expect(shownProblems.has(NAME)).toBe(false);
});
