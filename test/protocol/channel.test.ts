import { describe, expect, test } from 'vitest';
import { PROTOCOL } from '../../src/protocol/messages.ts';
import { openLine, settled } from './line.ts';

const open = () => openLine(({ figure }) => ({ figure: 2 * figure }));

/** A request of `a` that has reached `b`; what `b` says to it is on its way. */
async function ask(line: ReturnType<typeof open>, figure: number, withinMs: number | undefined = 1000) {
  const answer = line.a.channel.request('double', { figure }, withinMs);
  const outcome = answer.then(
    ({ figure: doubled }) => doubled,
    (error: unknown) => String(error),
  );
  line.toB.deliverAll();
  await settled();
  return outcome;
}

describe('a channel', () => {
  test('carries notices both ways, in their order', () => {
    const line = open();
    line.a.channel.notify({ text: 'one' });
    line.a.channel.notify({ text: 'two' });
    line.b.channel.notify({ text: 'back' });
    line.toB.deliverAll();
    line.toA.deliverAll();
    expect(line.b.heard).toEqual(['one', 'two']);
    expect(line.a.heard).toEqual(['back']);
  });

  test('brings each answer to its own request, whatever their order', async () => {
    const line = open();
    const one = line.a.channel.request('double', { figure: 1 }, 1000);
    const two = line.a.channel.request('double', { figure: 2 }, 1000);
    line.toB.deliverAll();
    await settled();
    line.toA.under.reverse();
    line.toA.deliverAll();
    expect(await Promise.all([one, two])).toEqual([{ figure: 2 }, { figure: 4 }]);
    expect(line.timers).toEqual([]);
  });

  test('tells why a request was refused', async () => {
    const line = openLine(() => {
      throw new Error('the file is read-only');
    });
    const outcome = ask(line, 1);
    await settled();
    line.toA.deliverAll();
    expect(await outcome).toBe('ChannelError: the file is read-only');
  });

  test('gives a lost request up when its time is over, and leaves a late answer aside', async () => {
    const line = open();
    const outcome = ask(line, 3);
    await settled();
    line.pass(999);
    expect(line.timers).toHaveLength(1);
    line.pass(1);
    expect(await outcome).toBe('ChannelError: No answer within 1 s');
    line.toA.deliverAll();
    expect(line.a.ignored).toEqual(['late']);
  });

  test('waits as long as a person takes where no time is set', async () => {
    const line = open();
    const answer = line.a.channel.request('double', { figure: 4 }, undefined);
    line.pass(1e9);
    line.toB.deliverAll();
    await settled();
    line.toA.deliverAll();
    expect(await answer).toEqual({ figure: 8 });
  });

  test('answers a repeated request once, and takes a repeated answer once', async () => {
    let count = 0;
    const line = openLine(({ figure }) => ({ figure: figure + ++count }));
    const answer = line.a.channel.request('double', { figure: 0 }, 1000);
    line.toB.deliver(line.toB.under[0]);
    line.toB.deliverAll();
    await settled();
    expect(line.toA.under).toHaveLength(1);
    line.toA.deliver(line.toA.under[0]);
    line.toA.deliverAll();
    expect(await answer).toEqual({ figure: 1 });
    expect([line.b.ignored, line.a.ignored, count]).toEqual([['repeated'], ['late'], 1]);
  });

  test('knows a repeated request after many others, and forgets the oldest', async () => {
    const line = open();
    for (let n = 0; n < 400; n++) {
      line.toB.deliver({ protocol: PROTOCOL, kind: 'request', id: `x:${n}`, name: 'double', asks: { figure: 1 } });
    }
    line.toB.deliver({ protocol: PROTOCOL, kind: 'request', id: 'x:399', name: 'double', asks: { figure: 1 } });
    line.toB.deliver({ protocol: PROTOCOL, kind: 'request', id: 'x:144', name: 'double', asks: { figure: 1 } });
    await settled();
    expect(line.b.ignored).toEqual(['repeated', 'repeated']);
    line.toB.deliver({ protocol: PROTOCOL, kind: 'request', id: 'x:0', name: 'double', asks: { figure: 1 } });
    expect(line.b.ignored).toHaveLength(2);
  });

  test.each([
    ['nothing', undefined],
    ['a text', 'show'],
    ['no envelope', { text: 'hello' }],
    ['an unknown kind', { protocol: PROTOCOL, kind: 'shout', id: 'x:1' }],
    ['no kind', { protocol: PROTOCOL }],
    ['a notice that is none', { protocol: PROTOCOL, kind: 'notice', notice: { text: 7 } }],
    ['a request without an id', { protocol: PROTOCOL, kind: 'request', name: 'double', asks: { figure: 1 } }],
    ['an id of a megabyte', { protocol: PROTOCOL, kind: 'answer', id: 'x'.repeat(1e6), answers: { figure: 1 } }],
    ['a request without a name', { protocol: PROTOCOL, kind: 'request', id: 'x:1', asks: { figure: 1 } }],
    ['a refusal without words', { protocol: PROTOCOL, kind: 'refusal', id: 'x:1' }],
  ])('leaves aside %s, and counts it', (_, message) => {
    const line = open();
    line.toB.deliver(message);
    expect([line.b.ignored, line.b.heard, line.toA.under]).toEqual([['malformed'], [], []]);
  });

  test.each([
    ['an unknown request', 'constructor', { figure: 1 }, 'unknown-request', 'There is no request “constructor”'],
    ['a request that cannot be read', 'double', { figure: 'a' }, 'malformed', 'What “double” carries cannot be read'],
  ])('refuses %s', (_, name, asks, ignored, message) => {
    const line = open();
    line.toB.deliver({ protocol: PROTOCOL, kind: 'request', id: 'x:1', name, asks });
    expect(line.b.ignored).toEqual([ignored]);
    expect(line.toA.under).toEqual([{ protocol: PROTOCOL, kind: 'refusal', id: 'x:1', message }]);
  });

  test('does not take for an answer what is none', async () => {
    const line = open();
    const outcome = ask(line, 1);
    await settled();
    line.toA.under.length = 0;
    line.toA.deliver({ protocol: PROTOCOL, kind: 'answer', id: 'a:1', answers: { figure: -1 } });
    expect(await outcome).toBe('ChannelError: What came back cannot be read');
    expect(line.a.ignored).toEqual(['malformed']);
  });

  test('tells that the other end speaks otherwise, and does not try to understand it', () => {
    const line = open();
    line.toB.deliver({ protocol: PROTOCOL + 1, kind: 'notice', notice: { text: 'hello' } });
    expect([line.b.otherProtocols, line.b.heard, line.b.ignored]).toEqual([[PROTOCOL + 1], [], []]);
  });

  test('rejects what waits when it is closed, and is silent and deaf afterwards', async () => {
    const line = open();
    const outcome = ask(line, 1);
    await settled();
    line.a.channel.dispose();
    line.a.channel.dispose();
    expect(await outcome).toBe('ChannelError: The line was closed');
    expect(line.timers).toEqual([]);
    line.a.channel.notify({ text: 'too late' });
    expect(line.toB.under).toEqual([]);
    await expect(line.a.channel.request('double', { figure: 1 }, 1000)).rejects.toThrow('The line is closed');
    line.toA.deliverAll();
    expect([line.a.heard, line.a.ignored]).toEqual([[], []]);
  });

  test('says nothing to a request that it was still at when it was closed', async () => {
    let finish: (answer: { figure: number }) => void = () => undefined;
    const line = openLine(() => new Promise((resolve) => (finish = resolve)));
    void ask(line, 1);
    await settled();
    line.b.channel.dispose();
    finish({ figure: 2 });
    await settled();
    expect(line.toA.under).toEqual([]);
  });

  test('rejects a request that cannot be posted', async () => {
    const line = open();
    Object.defineProperty(line.toB.under, 'push', {
      value: () => {
        throw new Error('the page is gone');
      },
    });
    await expect(line.a.channel.request('double', { figure: 1 }, 1000)).rejects.toThrow('The other end is gone');
    expect(() => line.a.channel.notify({ text: 'one' })).not.toThrow();
    expect([line.a.ignored, line.timers]).toEqual([['not-posted', 'not-posted'], []]);
  });
});
