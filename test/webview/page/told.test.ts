/** What the column tells of while pictures come, frame by frame, with the frames of the browser counted here. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Coming } from '../../../src/protocol/messages.ts';
import { handMadeShow } from '../../support/handMadeShown.ts';
import { shown, shownTrial } from '../../../webview/state.ts';
import { followShown, toldCharts, toldReport } from '../../../webview/page/told.ts';

let clock = 0;
let asked: ((at: number) => void)[] = [];
vi.stubGlobal('requestAnimationFrame', (call: (at: number) => void) => asked.push(call));
vi.spyOn(performance, 'now').mockImplementation(() => clock);
followShown();

/** A sixtieth of a second goes by. */
const frame = () => {
  clock += 1000 / 60;
  const due = asked;
  asked = [];
  for (const call of due) call(clock);
};

const picture = (version: number) => {
  const { source, fileName, picture: drawn, charts, report, dials } = handMadeShow();
  const former = { charts: [], facts: [] };
  const now = { ...source, version };
  return { source: now, reportSource: now, fileName, picture: drawn, charts, report, dials, coming: [] as readonly Coming[], former };
};
const tried = () => {
  shownTrial.value = [{ kind: 'value', path: 'let.reach', value: 40 }];
  return (shown.value = picture(1));
};

beforeEach(() => {
  shownTrial.value = [];
  shown.value = picture(1);
  while (asked.length > 0) frame();
});

describe('what the column tells of', () => {
  test('is a new text at once', () => {
    const next = (shown.value = picture(2));
    expect([toldReport.value, toldCharts.value]).toEqual([next, next]);
    expect(asked.length).toBe(0);
  });

  test('is no text whose report is still to come, and its charts at once', () => {
    const before = toldReport.value;
    const next = (shown.value = { ...picture(2), coming: ['report'] });
    expect([toldReport.value, toldCharts.value]).toEqual([before, next]);
    const whole = (shown.value = { ...next, coming: [] });
    expect(toldReport.value).toBe(whole);
    shownTrial.value = [{ kind: 'value', path: 'let.reach', value: 40 }];
    const late = (shown.value = { ...whole, coming: ['report'] });
    for (let i = 0; i < 4; i++) frame();
    expect([toldReport.value, toldCharts.value]).toEqual([whole, late]);
  });

  test('is what is tried in the frames after its picture, the lists before the charts, and then nothing is asked for any more', () => {
    const next = tried();
    expect(toldReport.value).not.toBe(next);
    frame();
    expect(toldReport.value).not.toBe(next);
    frame();
    expect(toldReport.value).toBe(next);
    expect(toldCharts.value).not.toBe(next);
    frame();
    expect(toldCharts.value).toBe(next);
    expect(asked.length).toBe(0);
  });

  test('is never later than two tenths of a second, and one of the two a frame, though every frame has a picture', () => {
    const late: number[] = [];
    for (let i = 0; i < 60; i++) {
      const before = [toldReport.value, toldCharts.value];
      tried();
      frame();
      const changed = [toldReport.value, toldCharts.value].filter((each, k) => each !== before[k]).length;
      expect(changed).toBeLessThanOrEqual(1);
      late.push(changed);
    }
    // A second: each tenth has one of them.
    const times = late.reduce((sum, each) => sum + each, 0);
    expect(times).toBeGreaterThanOrEqual(8);
    expect(times).toBeLessThanOrEqual(10);
  });

  test('is the newest picture in the end, whatever came between, and the written text at once when the trial is dropped', () => {
    for (let i = 0; i < 5; i++) {
      tried();
      if (i % 2 === 0) frame();
    }
    const last = tried();
    for (let i = 0; i < 4; i++) frame();
    expect([toldReport.value, toldCharts.value]).toEqual([last, last]);
    tried();
    shownTrial.value = [];
    const written = (shown.value = picture(1));
    expect(toldReport.value).toBe(written);
    expect(toldCharts.value).toBe(written);
  });
});
