/** Two ends of a line in one process: what goes over it can be held back, repeated or lost, and time passes when the test says so. */
import type { Ignored, Port, Service, SetTimer } from '../../src/protocol/channel.ts';
import { openChannel } from '../../src/protocol/channel.ts';
import { isCount, isText, shape } from '../../src/protocol/guard.ts';

interface Notice {
  readonly text: string;
}

interface Calls {
  readonly double: { readonly asks: { readonly figure: number }; readonly answers: { readonly figure: number } };
}

/** One end, and what has reached it. */
function openEnd(port: Port, setTimer: SetTimer, session: string, double: Service<{ figure: number }, { figure: number }>['answer']) {
  const heard: string[] = [];
  const ignored: Ignored[] = [];
  const otherProtocols: number[] = [];
  const channel = openChannel<Notice, Notice, Calls, Calls>({
    port,
    setTimer,
    session,
    isNotice: shape<Notice>({ text: isText }),
    onNotice: ({ text }) => void heard.push(text),
    isAnswer: { double: shape({ figure: isCount }) },
    serves: { double: { isAsked: shape({ figure: isCount }), answer: double } },
    onIgnored: (why) => void ignored.push(why),
    onOtherProtocol: (theirs) => void otherProtocols.push(theirs),
  });
  return { channel, heard, ignored, otherProtocols };
}

/** Messages on their way, oldest first, and those who listen at the far end. */
function openWay() {
  const under: unknown[] = [];
  const listeners = new Set<(message: unknown) => void>();
  const deliver = (message: unknown) => listeners.forEach((heard) => heard(structuredClone(message)));
  return { under, listeners, deliver, deliverAll: () => under.splice(0).forEach(deliver) };
}

/** An end at the near side, `a`, and one at the far side, `b`, which doubles as `double` says. */
export function openLine(double: (asks: { figure: number }) => { figure: number } | Promise<{ figure: number }>) {
  const toA = openWay();
  const toB = openWay();
  const timers: { readonly due: number; readonly callback: () => void }[] = [];
  const clock = { ms: 0 };
  const setTimer: SetTimer = (callback, milliseconds) => {
    const timer = { due: clock.ms + milliseconds, callback };
    timers.push(timer);
    return () => {
      if (timers.includes(timer)) timers.splice(timers.indexOf(timer), 1);
    };
  };
  const portOf = (out: ReturnType<typeof openWay>, into: ReturnType<typeof openWay>): Port => ({
    post: (message) => void out.under.push(message),
    listen: (heard) => {
      into.listeners.add(heard);
      return () => void into.listeners.delete(heard);
    },
  });
  const pass = (milliseconds: number) => {
    clock.ms += milliseconds;
    for (const timer of timers.filter(({ due }) => due <= clock.ms)) {
      timers.splice(timers.indexOf(timer), 1);
      timer.callback();
    }
  };
  return {
    a: openEnd(portOf(toB, toA), setTimer, 'a', (asks) => asks),
    b: openEnd(portOf(toA, toB), setTimer, 'b', double),
    toA,
    toB,
    timers,
    pass,
  };
}

/** What waits in the queue of promises has run. */
export const settled = () => new Promise<void>((resolve) => setImmediate(resolve));
