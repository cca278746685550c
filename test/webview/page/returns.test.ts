/** How far the work is that the page has asked for, without a page: what comes late, twice or out of turn changes nothing. */
import { beforeEach, expect, test, vi } from 'vitest';
import { PROTOCOL } from '../../../src/protocol/messages.ts';
import type { ToView } from '../../../src/protocol/messages.ts';
import { workOutReturns } from '../../../webview/page/returns.ts';
import { receive } from '../../../webview/receive.ts';
import { connect } from '../../../webview/send.ts';
import { returns, returnsComing, returnsRefused } from '../../../webview/state.ts';
import { handMadeReturns } from '../../support/handMadeReturns.ts';
import { handMadeShow } from '../../support/handMadeShown.ts';

let posted: { readonly kind: string; readonly id: string }[] = [];
let ignored: string[] = [];
let hear: (message: unknown) => void;

const { source } = handMadeShow();
const raw = (notice: unknown) => hear({ protocol: PROTOCOL, kind: 'notice', notice });
const tell = (notice: ToView) => raw(notice);
const work = (done: number, all = 24, of = source) => tell({ type: 'working', source: of, trial: [], done, all });
const progress = () => returnsComing.value?.progress;
const reply = (message: object) => hear({ protocol: PROTOCOL, id: posted.findLast(({ kind }) => kind === 'request')!.id, ...message });

beforeEach(() => {
  vi.useFakeTimers();
  posted = [];
  ignored = [];
  returns.value = undefined;
  connect(
    {
      post: (message) => void posted.push(structuredClone(message) as (typeof posted)[number]),
      listen: (heard) => {
        hear = heard;
        return () => undefined;
      },
    },
    receive,
    (why) => ignored.push(why),
  );
  tell(handMadeShow());
  return () => void vi.useRealTimers();
});

test('is told while it is under way, and no more once it has come', async () => {
  work(3);
  expect(returnsComing.value).toBeUndefined();
  const asked = workOutReturns();
  expect(returnsComing.value).toEqual({ of: { source, trial: [] }, progress: undefined });
  work(7);
  expect(progress()).toEqual({ done: 7, all: 24 });
  reply({ kind: 'answer', answers: handMadeReturns() });
  await asked;
  expect(returnsComing.value).toBeUndefined();
  work(24);
  expect(returnsComing.value).toBeUndefined();
  expect(ignored).toEqual([]);
});

test('never goes back, and is of what was asked for alone', async () => {
  const asked = workOutReturns();
  work(7);
  work(7);
  work(5);
  work(9, 24, { ...source, version: source.version + 1 });
  tell({ type: 'working', source, trial: [{ kind: 'value', path: 'let.reach', value: 1 }], done: 9, all: 24 });
  expect(progress()).toEqual({ done: 7, all: 24 });
  work(8);
  expect(progress()).toEqual({ done: 8, all: 24 });
  reply({ kind: 'refusal', message: 'another text' });
  await asked;
  expect([returnsComing.value, returnsRefused.value]).toEqual([undefined, 'Not worked out: another text']);
});

test('begins anew where it is asked for anew', async () => {
  const first = workOutReturns();
  work(20);
  reply({ kind: 'refusal', message: 'no' });
  await first;
  const second = workOutReturns();
  expect(progress()).toBeUndefined();
  work(1);
  expect(progress()).toEqual({ done: 1, all: 24 });
  reply({ kind: 'answer', answers: handMadeReturns() });
  await second;
});

test.each([{ done: 25 }, { done: -1 }, { all: 0 }, { done: '7' }, { trial: undefined }, { source: 7 }])(
  'is left aside where it cannot be read: %j',
  async (wrong) => {
    const asked = workOutReturns();
    work(7);
    raw({ type: 'working', source, trial: [], done: 9, all: 24, ...wrong });
    expect(progress()).toEqual({ done: 7, all: 24 });
    expect(ignored).toEqual(['malformed']);
    reply({ kind: 'answer', answers: handMadeReturns() });
    await asked;
  },
);
