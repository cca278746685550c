/**
 * The page of the view alone, in Chromium, with a stub of the editor: the page's own HTML with its policy, its script and style as they are
 * bundled, theme colours as the editor sets them. Nothing is served over a network.
 */
import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { Uri } from 'vscode';
import type { Webview } from 'vscode';
import { pageHtml } from '../../extension/view/page.ts';
import { forView } from '../../scripts/build.mjs';
import { openPage } from '../../scripts/editorHosts/chromium.mjs';
import type { Page } from '../../scripts/editorHosts/chromium.mjs';
import type { ToEditor, ToView } from '../../src/protocol/messages.ts';
import { PROTOCOL } from '../../src/protocol/messages.ts';
import { THEMES } from './viewThemes.ts';
import type { ThemeKind } from './viewThemes.ts';

export interface ViewOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: ThemeKind;
  /** Of the system; `class`: of the editor. */
  readonly lessMotion?: 'system' | 'class';
  /** What the page has kept from before. */
  readonly state?: unknown;
}

/** A request of the page, as it came. */
export interface Asked {
  readonly id: string;
  readonly name: string;
  readonly asks: Readonly<Record<string, unknown>>;
}

export interface ViewPage {
  readonly page: Page;
  /** Loads the page anew, and waits until it has said that it listens. */
  readonly load: (options?: ViewOptions) => Promise<void>;
  /** Says something to it as the editor does, and waits until it has been drawn. */
  readonly tell: (notice: ToView) => Promise<void>;
  /** The same with anything at all, without an envelope. */
  readonly tellRaw: (message: unknown) => Promise<void>;
  readonly answer: (asked: Asked, answers: unknown) => Promise<void>;
  readonly refuse: (asked: Asked, message: string) => Promise<void>;
  /** What the page has told since it was loaded. */
  readonly told: () => readonly ToEditor[];
  readonly asked: () => readonly Asked[];
  /** What it has kept, and how many times since it was loaded. */
  readonly state: () => Promise<unknown>;
  readonly timesKept: () => Promise<number>;
  /** Clicks the first button of this name, or whose name begins so. */
  readonly click: (name: string) => Promise<void>;
  /** Sets a slider or a number as typing does: the first field whose name begins so. */
  readonly enter: (name: string, value: string) => Promise<void>;
  /** What stands in the first element that a selector finds. */
  readonly text: (selector: string) => Promise<string>;
  /** Errors of its script and refusals of its policy, since it was loaded. */
  readonly errors: () => readonly string[];
  /** Waits until an expression holds in the page. */
  readonly until: (holds: string) => Promise<void>;
  /** Two frames have passed. */
  readonly drawn: () => Promise<unknown>;
  readonly close: () => Promise<void>;
}

/** After this a page that was to come is given up, so that the test can tell what the page said. */
const PATIENCE_MS = 15_000;

const ORIGIN = 'https://view.test';

/** Opens a browser with the page, not yet loaded. */
export async function openViewPage(): Promise<ViewPage> {
  const [script, style] = await Promise.all([bundled('main.tsx', 'iife'), bundled('view.css')]);
  const { page, close } = await openPage();
  let heard: (ToEditor | Asked)[] = [];
  let errors: string[] = [];
  let html = '';
  page.on('pageerror', (error) => void errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') errors.push(message.text());
  });
  await page.exposeFunction('toEditor', (text) => void heard.push(readPosted(text)));
  await page.route(`${ORIGIN}/**`, async (route) => {
    const path = new URL(route.request().url()).pathname;
    if (path.endsWith('.js')) return route.fulfill({ contentType: 'text/javascript', body: script });
    if (path.endsWith('.css')) return route.fulfill({ contentType: 'text/css', body: style });
    if (path === '/') return route.fulfill({ contentType: 'text/html', body: html });
    return route.fulfill({ status: 404 });
  });

  const drawn = () => page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())))');
  const until = async (holds: string) => {
    const waiting = `new Promise((done) => {
      const end = performance.now() + ${PATIENCE_MS};
      const look = () => (${holds} ? done(true) : performance.now() > end ? done(false) : requestAnimationFrame(look));
      look();
    })`;
    if (!(await page.evaluate<boolean>(waiting))) throw new Error(`The page never came to ${holds}; it said: ${errors.join('; ')}`);
  };
  const tellRaw = async (message: unknown) => {
    await page.evaluate(`window.postMessage(revived(${JSON.stringify(packed(message))}), '*')`);
    await drawn();
  };
  const reply = (asked: Asked, rest: object) => tellRaw({ protocol: PROTOCOL, id: asked.id, ...rest });
  return {
    page,
    load: async ({ width = 1000, height = 800, theme = 'dark', lessMotion, state } = {}) => {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ reducedMotion: lessMotion === 'system' ? 'reduce' : 'no-preference' });
      html = stubbedHtml(theme, lessMotion === 'class', state);
      [heard, errors] = [[], []];
      await page.goto(`${ORIGIN}/`);
      await until('window.isReady === true');
    },
    tell: async (notice) => {
      await tellRaw({ protocol: PROTOCOL, kind: 'notice', notice });
      // Of what is tried the lists are told a frame later, and the charts another.
      if (notice.type === 'show' && notice.trial.length > 0) await drawn();
    },
    tellRaw,
    answer: (asked, answers) => reply(asked, { kind: 'answer', answers }),
    refuse: (asked, message) => reply(asked, { kind: 'refusal', message }),
    told: () => heard.filter((message) => 'type' in message),
    asked: () => heard.filter((message) => 'asks' in message),
    state: () => page.evaluate('window.keptState'),
    timesKept: () => page.evaluate('window.timesKept'),
    click: async (name) => {
      await page.evaluate(`named('button, summary', ${JSON.stringify(name)}).click()`);
      await drawn();
    },
    enter: async (name, value) => {
      await page.evaluate(`entered(named('input, select', ${JSON.stringify(name)}), ${JSON.stringify(value)})`);
      await drawn();
    },
    text: (selector) => page.evaluate(`document.querySelector(${JSON.stringify(selector)})?.textContent ?? 'nothing there'`),
    errors: () => errors,
    drawn,
    until,
    close,
  };
}

async function bundled(entry: string, format?: 'iife'): Promise<string> {
  const { outputFiles } = await build({
    ...forView,
    entryPoints: [`webview/${entry}`],
    external: ['#*'],
    write: false,
    ...(format && { format }),
  });
  return outputFiles[0]!.text;
}

/** The page as the extension gives it, with the editor's stub before its script. */
function stubbedHtml(theme: ThemeKind, hasLessMotion: boolean, state: unknown): string {
  const webview = {
    cspSource: ORIGIN,
    asWebviewUri: (uri: Uri) => ({ toString: () => `${ORIGIN}${new URL(uri.toString()).pathname}` }),
  } as unknown as Webview;
  const html = pageHtml(webview, Uri.parse('file:///extension'));
  const nonce = /nonce-([0-9a-zA-Z]+)/.exec(html)![1]!;
  const given = JSON.stringify({
    colours: THEMES[theme],
    classes: [theme, ...(hasLessMotion ? ['vscode-reduce-motion'] : [])],
    state,
  }).replaceAll('<', '\\u003c');
  return html.replace('<body>', () => `<body><script nonce="${nonce}">(${STUB})(${given})</script>`);
}

/** Runs in the page: what the editor puts there. */
const STUB = readFileSync(new URL('viewStub.js', import.meta.url), 'utf8')
  .trim()
  .replace(/;$/, '');

/** Messages go to the page and back as text; arrays of figures, with their NaN, are written out. */
const packed = (value: unknown): unknown =>
  value instanceof Float64Array
    ? { figures: Array.from(value, (figure) => (Number.isNaN(figure) ? null : figure)) }
    : Array.isArray(value)
      ? value.map(packed)
      : typeof value === 'object' && value !== null
        ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, packed(inner)]))
        : value;

function readPosted(text: string): ToEditor | Asked {
  const posted = JSON.parse(text, (_, value: unknown) => {
    const bytes = typeof value === 'object' && value !== null && 'bytes' in value ? value.bytes : undefined;
    return Array.isArray(bytes) ? Uint8Array.from(bytes as number[]) : value;
  }) as { kind: string; notice: ToEditor } & Asked;
  return posted.kind === 'notice' ? posted.notice : { id: posted.id, name: posted.name, asks: posted.asks };
}
