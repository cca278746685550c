import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PROTOCOL } from '../../src/protocol/messages.ts';
import type { ToView, Trial } from '../../src/protocol/messages.ts';
import { receive } from '../../webview/receive.ts';
import { connect, tryFigures, writeFigures } from '../../webview/send.ts';
import { complaint, missing, shown, trial, written } from '../../webview/state.ts';
import { handMadeShow } from '../support/handMadeShown.ts';

interface Posted {
  readonly kind: string;
  readonly id: string;
  /** Of a notice alone. */
  readonly notice?: { readonly type: string; readonly trial: Trial };
}

let posted: Posted[] = [];
let hear: (message: unknown) => void;

const figure = (value: number): Trial => [{ kind: 'value', path: 'let.reach', value }];
const tell = (notice: ToView) => hear({ protocol: PROTOCOL, kind: 'notice', notice });
const show = (of: Trial, version = 1) => tell({ ...handMadeShow(version), trial: of });
/** The trials that went out since the page was connected. */
const tried = () => posted.flatMap(({ notice }) => (notice?.type === 'try' ? [notice.trial] : []));

beforeEach(() => {
  vi.useFakeTimers();
  posted = [];
  receive({ type: 'gone', reason: 'another test' });
  const port = {
    post: (message: unknown) => void posted.push(structuredClone(message) as Posted),
    listen: (heard: (message: unknown) => void) => {
      hear = heard;
      return () => undefined;
    },
  };
  connect(port, receive, () => undefined);
  show([]);
});

afterEach(() => {
  tryFigures([]);
  show([]);
  vi.useRealTimers();
  complaint.value = undefined;
});

describe('trials', () => {
  test('go out one at a time, and the newest wins', () => {
    for (const value of [39, 40, 41, 42]) tryFigures(figure(value));
    expect(tried()).toEqual([figure(39)]);
    show(figure(39));
    expect(tried()).toEqual([figure(39), figure(42)]);
    show(figure(42));
    expect(tried()).toHaveLength(2);
    expect(trial.value).toEqual(figure(42));
  });

  test('are not answered by a repeated picture of before', () => {
    tryFigures(figure(39));
    tryFigures(figure(40));
    show([]);
    expect(tried()).toEqual([figure(39)]);
  });

  test('are asked for again when the text has changed under them', () => {
    tryFigures(figure(39));
    show(figure(39));
    show([], 2);
    expect(tried()).toEqual([figure(39), figure(39)]);
  });

  test('are asked for again when an answer is lost, and given up in words after three', () => {
    tryFigures(figure(39));
    vi.advanceTimersByTime(3000);
    tryFigures(figure(40));
    vi.advanceTimersByTime(3000);
    expect(tried()).toEqual([figure(39), figure(39), figure(40)]);
    vi.advanceTimersByTime(3000);
    expect(trial.value).toEqual([]);
    expect(complaint.value).toContain('does not answer');
    vi.advanceTimersByTime(60_000);
    expect(tried()).toHaveLength(3);
  });

  test('keep the picture of the written text to compare with', () => {
    const before = written.value;
    tryFigures(figure(39));
    show(figure(39));
    expect(written.value).toBe(before);
    tryFigures([]);
    expect(tried()).toEqual([figure(39), []]);
  });

  test('are over once they are written, whichever comes first, the answer or the picture', async () => {
    tryFigures(figure(39));
    show(figure(39));
    const writing = writeFigures();
    const asked = posted.at(-1)!;
    expect(asked).toMatchObject({ kind: 'request', name: 'write', asks: { trial: figure(39) } });
    show([], 2);
    expect(tried()).toHaveLength(1);
    hear({ protocol: PROTOCOL, kind: 'answer', id: asked.id, answers: { version: 2 } });
    expect(await writing).toBe(true);
    expect(trial.value).toEqual([]);
    expect(tried()).toHaveLength(1);
  });

  test('that are tried while others are being written stay, and are tried on the new text', async () => {
    tryFigures(figure(39));
    show(figure(39));
    const writing = writeFigures();
    const { id } = posted.at(-1)!;
    tryFigures(figure(40));
    show([], 2);
    hear({ protocol: PROTOCOL, kind: 'answer', id, answers: { version: 2 } });
    expect(await writing).toBe(true);
    expect(trial.value).toEqual(figure(40));
    expect(tried().at(-1)).toEqual(figure(40));
  });

  test('stay when they cannot be written, and why is said', async () => {
    tryFigures(figure(39));
    const writing = writeFigures();
    hear({ protocol: PROTOCOL, kind: 'refusal', id: posted.at(-1)!.id, message: 'the file is read-only' });
    expect(await writing).toBe(false);
    expect([trial.value, complaint.value]).toEqual([figure(39), 'Not written: the file is read-only']);
  });

  test('are dropped when they are refused, with the reason, unless something else is wanted by then', () => {
    const refuse = (of: Trial) =>
      tell({ type: 'refused', source: handMadeShow(1).source, trial: of, reason: 'the value follows from a formula' });
    tryFigures(figure(39));
    tryFigures(figure(40));
    refuse(figure(39));
    expect([trial.value, complaint.value, tried().at(-1)]).toEqual([figure(40), undefined, figure(40)]);
    refuse(figure(39));
    expect(trial.value).toEqual(figure(40));
    refuse(figure(40));
    expect([trial.value, complaint.value]).toEqual([[], 'the value follows from a formula']);
    expect(tried()).toHaveLength(2);
  });

  test('wait for a text that can be solved', () => {
    tryFigures(figure(39));
    tell({ type: 'broken', source: handMadeShow(2).source, fileName: 'a', missing: [] });
    tryFigures(figure(40));
    show([], 3);
    expect(tried().at(-1)).toEqual(figure(40));
  });
});

describe('what comes late', () => {
  test('is left aside when it is of an older text', () => {
    show([], 5);
    show([], 4);
    tell({ type: 'broken', source: handMadeShow(3).source, fileName: 'a', missing: [] });
    expect([shown.value?.source.version, missing.value]).toEqual([5, undefined]);
  });

  test('is not late when the file was away, or is another one', () => {
    show([], 5);
    tell({ type: 'gone', reason: 'closed' });
    show([], 1);
    expect(shown.value?.source.version).toBe(1);
    tell({ ...handMadeShow(0), source: { uri: 'file:///renamed.throttle.yaml', version: 0 } });
    expect(shown.value?.source.version).toBe(0);
  });
});
