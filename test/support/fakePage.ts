/** The page's end of the line to the editor, without a page: what it was told, each message held to the guards of the real one. */
import { expect } from 'vitest';
import { openChannel, type Channel } from '../../src/protocol/channel.ts';
import { isAnswered, isToView } from '../../src/protocol/guards.ts';
import type { Requests, ToEditor, ToView, Trial } from '../../src/protocol/messages.ts';
import type { Report } from '../../src/protocol/report.ts';
import type { WebviewPanel } from './vscode.ts';

type Told<Type extends ToView['type']> = ToView & { readonly type: Type };

export interface FakePage {
  readonly told: ToView[];
  say(notice: ToEditor): void;
  request: Channel<ToEditor, Requests>['request'];
  /** The last of a kind; fails where there was none. */
  last<Type extends ToView['type']>(type: Type): Told<Type>;
  /** The newest report that it was told, with its drawing or after it; fails where there was none. */
  report(): Report;
  types(): readonly string[];
  /** What has been shown last, as the source of what the page says of it. */
  try(trial: Trial): void;
}

/** Loads the page anew, as the editor does when its panel comes to be seen; it says that it listens. */
export function loadPage(panel: WebviewPanel): FakePage {
  const told: ToView[] = [];
  const channel = openChannel<ToEditor, ToView, Requests, Record<string, never>>({
    port: {
      post: (message) => panel.webview.say(message),
      listen: (heard) => {
        panel.webview.arriving = heard;
        return () => (panel.webview.arriving = undefined);
      },
    },
    setTimer: (callback, milliseconds) => {
      const timer = setTimeout(callback, milliseconds);
      return () => clearTimeout(timer);
    },
    session: `page ${count++}`,
    isNotice: isToView,
    onNotice: (notice) => told.push(notice),
    isAnswer: isAnswered,
    serves: {},
    onIgnored: (why, message) => expect.fail(`${why}: ${JSON.stringify(message).slice(0, 500)}`),
    onOtherProtocol: (theirs) => expect.fail(`protocol ${theirs}`),
  });
  channel.notify({ type: 'ready' });
  const last = <Type extends ToView['type']>(type: Type): Told<Type> => {
    const found = told.findLast((each): each is Told<Type> => each.type === type);
    if (found === undefined) throw new Error(`the page was told no “${type}”, but ${told.map((each) => each.type).join(', ')}`);
    return found;
  };
  return {
    told,
    say: channel.notify,
    request: channel.request,
    last,
    report() {
      const found = told.findLast((each) => (each.type === 'show' || each.type === 'follows') && each.report !== undefined);
      if (found?.type !== 'show' && found?.type !== 'follows') throw new Error('the page was told no report');
      return found.report!;
    },
    types: () => told.map(({ type }) => type),
    try: (trial) => channel.notify({ type: 'try', source: last('show').source, trial }),
  };
}

let count = 0;
