import { expect, test } from 'vitest';
import type { ReportedMark } from '../../../src/protocol/report.ts';
import { movedMarks } from '../../../webview/panels/movedMarks.ts';
import { handMadeShow } from '../../support/handMadeShown.ts';

const mark = (code: string, part: string, message: string): ReportedMark => ({ ...handMadeShow().report.marks[0]!, code, part, message });

test('what a trial does to findings is told by the finding: new ones, those that say something else, those that went', () => {
  const before = [mark('a', 'link', 'at 98 %'), mark('b', 'link', 'stays'), mark('c', 'shaft', 'goes'), mark('a', 'main', 'other part')];
  const now = [mark('b', 'link', 'stays'), mark('a', 'link', 'at 94 %'), mark('d', 'shaft', 'comes'), mark('a', 'main', 'other part')];
  expect(movedMarks(before, now)).toEqual([
    { how: 'came', message: 'comes' },
    { how: 'moved', message: 'at 94 %' },
    { how: 'went', message: 'goes' },
  ]);
  expect(movedMarks(now, now)).toEqual([]);
});

test('of two of one kind at one part each stands for one', () => {
  const before = [mark('a', 'link', 'one')];
  expect(movedMarks(before, [mark('a', 'link', 'two'), mark('a', 'link', 'three')])).toEqual([
    { how: 'came', message: 'three' },
    { how: 'moved', message: 'two' },
  ]);
});
