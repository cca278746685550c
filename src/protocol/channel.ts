/**
 * The line between the editor and the view; each end holds one. Notices go out and are forgotten; a request waits for its answer, for a word
 * why there is none, or until its time is up. What the other end may have said wrongly, twice or too late is left aside and reported.
 */
import { PROTOCOL } from './messages.ts';
import type { Guard } from './guard.ts';

/** What carries messages: to a web page, or from one. */
export interface Port {
  /** May throw where the other end is gone. */
  readonly post: (message: unknown) => void;
  /** @returns a function that ends the listening */
  readonly listen: (heard: (message: unknown) => void) => () => void;
}

/** @returns a function that stops the timer */
export type SetTimer = (callback: () => void, milliseconds: number) => () => void;

/** Requests by name: what each carries and what comes back. */
export type RequestMap<Map> = { readonly [Name in keyof Map]: { readonly asks: unknown; readonly answers: unknown } };

/** How one end checks and answers a request of the other. A refusal is an error thrown; its message reaches the other end. */
export interface Service<Asks, Answers> {
  readonly isAsked: Guard<Asks>;
  readonly answer: (asks: Asks) => Answers | Promise<Answers>;
}

/** Why a message was left aside. */
export type Ignored = 'malformed' | 'unknown-request' | 'repeated' | 'late' | 'not-posted';

export interface ChannelEnd<In, Asks extends RequestMap<Asks>, Serves extends RequestMap<Serves>> {
  readonly port: Port;
  readonly setTimer: SetTimer;
  /** Differs between any two pages that one editor ever talks to, so that the first request of a new page is not taken for a repeated one. */
  readonly session: string;
  readonly isNotice: Guard<In>;
  readonly onNotice: (notice: In) => void;
  /** Of each request that this end may make: whether what comes back is an answer. */
  readonly isAnswer: { readonly [Name in keyof Asks]: Guard<Asks[Name]['answers']> };
  /** Each request that the other end may make. */
  readonly serves: { readonly [Name in keyof Serves]: Service<Serves[Name]['asks'], Serves[Name]['answers']> };
  readonly onIgnored: (why: Ignored, message: unknown) => void;
  /** The other end is of another build and speaks otherwise; its messages are left aside. */
  readonly onOtherProtocol: (theirs: number) => void;
}

export interface Channel<Out, Asks extends RequestMap<Asks>> {
  readonly notify: (notice: Out) => void;
  /**
   * Rejects with a `ChannelError`. `withinMs`: how long to wait; undefined where a person may take all the time that they want.
   */
  readonly request: <Name extends keyof Asks & string>(
    name: Name,
    asks: Asks[Name]['asks'],
    withinMs: number | undefined,
  ) => Promise<Asks[Name]['answers']>;
  /** Rejects what still waits; nothing goes out or comes in afterwards. */
  readonly dispose: () => void;
}

/** Why there is no answer: the other end refused, the time is up, this end was closed, or what came back was no answer. */
export class ChannelError extends Error {
  readonly reason: 'refused' | 'timed-out' | 'closed' | 'malformed';

  constructor(reason: ChannelError['reason'], message: string) {
    super(message);
    this.name = 'ChannelError';
    this.reason = reason;
  }
}

interface Waiting {
  readonly isAnswer: Guard<unknown>;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: ChannelError) => void;
  readonly stopTimer: () => void;
}

type Envelope =
  | { readonly kind: 'notice'; readonly notice: unknown }
  | { readonly kind: 'request'; readonly id: string; readonly name: string; readonly asks: unknown }
  | { readonly kind: 'answer'; readonly id: string; readonly answers: unknown }
  | { readonly kind: 'refusal'; readonly id: string; readonly message: string };

/** How many requests back a repeated one is known again. */
const REMEMBERED = 256;

/** Opens this end; it listens from here on. */
export function openChannel<Out, In, Asks extends RequestMap<Asks>, Serves extends RequestMap<Serves>>(
  end: ChannelEnd<In, Asks, Serves>,
): Channel<Out, Asks> {
  const services = new Map(Object.entries(end.serves as Readonly<Record<string, Service<unknown, unknown>>>));
  const guards = new Map(Object.entries(end.isAnswer as Readonly<Record<string, Guard<unknown>>>));
  const waiting = new Map<string, Waiting>();
  const served = new Set<string>();
  let count = 0;
  let isOpen = true;
  const stopListening = end.port.listen(hear);

  function hear(message: unknown) {
    if (!isRecord(message) || typeof message.protocol !== 'number') return end.onIgnored('malformed', message);
    if (message.protocol !== PROTOCOL) return end.onOtherProtocol(message.protocol);
    const envelope = readEnvelope(message);
    if (envelope === undefined) return end.onIgnored('malformed', message);
    switch (envelope.kind) {
      case 'notice':
        return end.isNotice(envelope.notice) ? end.onNotice(envelope.notice) : end.onIgnored('malformed', message);
      case 'request':
        return void serve(envelope);
      case 'answer':
      case 'refusal':
        return settle(envelope);
    }
  }

  async function serve(asked: Envelope & { kind: 'request' }) {
    if (served.has(asked.id)) return end.onIgnored('repeated', asked);
    served.add(asked.id);
    if (served.size > REMEMBERED) served.delete(served.values().next().value ?? asked.id);
    const service = services.get(asked.name);
    if (service === undefined) {
      end.onIgnored('unknown-request', asked);
      return post({ kind: 'refusal', id: asked.id, message: `There is no request “${asked.name}”` });
    }
    if (!service.isAsked(asked.asks)) {
      end.onIgnored('malformed', asked);
      return post({ kind: 'refusal', id: asked.id, message: `What “${asked.name}” carries cannot be read` });
    }
    try {
      post({ kind: 'answer', id: asked.id, answers: await service.answer(asked.asks) });
    } catch (error) {
      post({ kind: 'refusal', id: asked.id, message: messageOf(error) });
    }
  }

  function settle(reply: Envelope & { kind: 'answer' | 'refusal' }) {
    const one = waiting.get(reply.id);
    if (one === undefined) return end.onIgnored('late', reply);
    waiting.delete(reply.id);
    one.stopTimer();
    if (reply.kind === 'refusal') return one.reject(new ChannelError('refused', reply.message));
    if (one.isAnswer(reply.answers)) return one.resolve(reply.answers);
    end.onIgnored('malformed', reply);
    one.reject(new ChannelError('malformed', 'What came back cannot be read'));
  }

  /** @returns whether it went out */
  function post(envelope: Envelope): boolean {
    if (!isOpen) return false;
    try {
      end.port.post({ protocol: PROTOCOL, ...envelope });
      return true;
    } catch {
      end.onIgnored('not-posted', envelope);
      return false;
    }
  }

  return {
    notify: (notice) => void post({ kind: 'notice', notice }),
    request: (name, asks, withinMs) =>
      new Promise((resolve, reject) => {
        if (!isOpen) return reject(new ChannelError('closed', 'The line is closed'));
        count += 1;
        const id = `${end.session}:${count}`;
        const stopTimer = withinMs === undefined ? () => undefined : end.setTimer(() => expire(id, withinMs), withinMs);
        waiting.set(id, { isAnswer: guards.get(name)!, resolve, reject, stopTimer });
        if (post({ kind: 'request', id, name, asks })) return;
        waiting.delete(id);
        stopTimer();
        reject(new ChannelError('closed', 'The other end is gone'));
      }),
    dispose: () => {
      if (!isOpen) return;
      isOpen = false;
      stopListening();
      for (const { stopTimer, reject } of waiting.values()) {
        stopTimer();
        reject(new ChannelError('closed', 'The line was closed'));
      }
      waiting.clear();
    },
  };

  function expire(id: string, afterMs: number) {
    const one = waiting.get(id);
    waiting.delete(id);
    one?.reject(new ChannelError('timed-out', `No answer within ${afterMs / 1000} s`));
  }
}

function readEnvelope(message: Readonly<Record<string, unknown>>): Envelope | undefined {
  const { kind, id, name } = message;
  if (kind === 'notice') return { kind, notice: message.notice };
  if (typeof id !== 'string' || id.length > LONGEST_ID) return undefined;
  if (kind === 'request') return typeof name === 'string' ? { kind, id, name, asks: message.asks } : undefined;
  if (kind === 'answer') return { kind, id, answers: message.answers };
  if (kind !== 'refusal') return undefined;
  return typeof message.message === 'string' ? { kind, id, message: message.message } : undefined;
}

const LONGEST_ID = 200;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;

const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
