/** The editor's end of the line to a page. */
import type { Webview } from 'vscode';
import { openChannel, type Channel, type Service } from '../../src/protocol/channel.ts';
import { isAsked, isToEditor } from '../../src/protocol/guards.ts';
import type { Requests, ToEditor, ToView } from '../../src/protocol/messages.ts';
import { noteFailure } from '../logFailure.ts';

export type Notify = (notice: ToView) => void;

export type Answering = {
  readonly [Name in keyof Requests]: (asks: Requests[Name]['asks']) => Promise<Requests[Name]['answers']>;
};

export interface Line {
  readonly notify: Notify;
  dispose(): void;
}

/** The editor asks the page nothing. */
type NoRequests = Readonly<Record<string, never>>;

/** Listens from here on: the page's text must come after. A page of another build, or what is no message, is left alone. */
export function openLine(webview: Webview, heard: (notice: ToEditor) => void, answer: Answering): Line {
  const serve = <Name extends keyof Requests>(name: Name): Service<Requests[Name]['asks'], Requests[Name]['answers']> => ({
    isAsked: isAsked[name],
    answer: (asks) => answer[name](asks).catch((error: unknown) => refuse(name, error)),
  });
  const channel: Channel<ToView, NoRequests> = openChannel<ToView, ToEditor, NoRequests, Requests>({
    port: {
      post: (message) => void webview.postMessage(message).then(undefined, () => undefined),
      listen: (hear) => {
        const listening = webview.onDidReceiveMessage(hear);
        return () => void listening.dispose();
      },
    },
    setTimer: (callback, milliseconds) => {
      const timer = setTimeout(callback, milliseconds);
      return () => clearTimeout(timer);
    },
    // It asks nothing, so its requests need no name of their own.
    session: 'editor',
    isNotice: isToEditor,
    onNotice: heard,
    isAnswer: {},
    serves: {
      write: serve('write'),
      save: serve('save'),
      table: serve('table'),
      returns: serve('returns'),
      trace: serve('trace'),
      answer: serve('answer'),
    },
    onIgnored: (why) => noteFailure('A message of the view was left aside', why),
    onOtherProtocol: (theirs) => noteFailure('The view is of another build', `its protocol is ${theirs}`),
  });
  return { notify: channel.notify, dispose: channel.dispose };
}

/** What is refused in our own words is told to the person, and that is all of it. */
function refuse(name: string, error: unknown): never {
  if (!(error instanceof Error) || error.name !== 'Error') noteFailure(`What the view asked for: ${name}`, error);
  throw error;
}
