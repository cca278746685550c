/** The drawing alone in Chromium, without the page around it: what it tries, writes and reveals is kept for a test to read. */
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { forView } from '../../scripts/build.mjs';
import { openPage } from '../../scripts/editorHosts/chromium.mjs';
import type { Page } from '../../scripts/editorHosts/chromium.mjs';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import type { Shown } from '../../src/protocol/messages.ts';
import { solve } from '../../src/solve.ts';
import { THEMES, type ThemeKind } from './viewThemes.ts';

export interface DrawingPage {
  readonly page: Page;
  /** Shows a picture and waits until it is drawn. */
  readonly show: (shown: Shown, uri?: string) => Promise<void>;
  /** Sets a signal of the page's state and waits until that is drawn. */
  readonly set: (name: string, value: unknown) => Promise<void>;
  /** The value of an expression of the page's script: `state` has the signals, `looks` what is kept of views, `one` and `all` find elements by selector, `unmount` and `mount` take the drawing away and put it there. */
  readonly value: <Result>(expression: string) => Promise<Result>;
  /** What has left by the callbacks, oldest first. */
  readonly calls: () => Promise<readonly Call[]>;
  /** Middle of the first element that a selector finds, CSS pixels of the window. */
  readonly middleOf: (selector: string) => Promise<{ readonly x: number; readonly y: number }>;
  /** Waits until an expression holds. */
  readonly until: (holds: string) => Promise<void>;
  readonly drawn: () => Promise<void>;
  /** What went wrong in the page's script. */
  readonly errors: () => readonly string[];
  readonly close: () => Promise<void>;
}

export interface Call {
  readonly kind: 'try' | 'write' | 'reveal';
  readonly what: unknown;
}

const SCRIPT = `
import { h, render } from 'preact';
import { Drawing, drawingSvg } from './webview/drawing/drawing.tsx';
import * as state from './webview/state.ts';
import { areLooks, looks } from './webview/drawing/looks.ts';
const calls = [];
const hear = (kind) => (what) => {
  calls.push({ kind, what });
  if (kind === 'try') state.trial.value = what;
};
const revived = (value) => {
  if (Array.isArray(value)) return value.map(revived);
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value.float64)) return Float64Array.from(value.float64, (figure) => figure ?? NaN);
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, revived(inner)]));
};
const one = (selector) => document.querySelector(selector);
const all = (selector) => [...document.querySelectorAll(selector)];
const mount = () => render(h(Drawing, { onTry: hear('try'), onWrite: hear('write'), onReveal: hear('reveal') }), one('#place'));
const unmount = () => render(null, one('#place'));
Object.assign(globalThis, { state, looks, areLooks, calls, drawingSvg, revived, one, all, mount, unmount });
mount();
`;

export async function openDrawingPage(
  options: { readonly width?: number; readonly height?: number; readonly theme?: ThemeKind } = {},
): Promise<DrawingPage> {
  const { width = 900, height = 600, theme = 'dark' } = options;
  const [script, style] = await Promise.all([bundled(SCRIPT, 'tsx'), bundled("@import './webview/drawing/drawing.css';", 'css')]);
  const { page, close } = await openPage({ width, height });
  const errors: string[] = [];
  page.on('pageerror', (error) => void errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.route(`${ORIGIN}/**`, async (route) => {
    const path = new URL(route.request().url()).pathname;
    if (path === '/page.js') return route.fulfill({ contentType: 'text/javascript', body: script });
    if (path === '/page.css') return route.fulfill({ contentType: 'text/css', body: style });
    return path === '/' ? route.fulfill({ contentType: 'text/html', body: htmlOf(theme) }) : route.fulfill({ status: 204 });
  });
  await page.goto(`${ORIGIN}/`);
  const drawn = () => page.evaluate<undefined>('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())))');
  const set = async (name: string, to: unknown) => {
    await page.evaluate(`void (state.${name}.value = ${asExpression(to)})`);
    await drawn();
  };
  return {
    page,
    show: (shown, uri = 'file:///a.throttle.yaml') => set('shown', { ...shown, source: { uri, version: 1 }, fileName: 'a.throttle.yaml' }),
    set,
    value: (expression) => page.evaluate(expression),
    calls: () => page.evaluate('calls'),
    middleOf: (selector) =>
      page.evaluate(
        `(() => { const { x, y, width, height } = one(${JSON.stringify(selector)}).getBoundingClientRect(); return { x: x + width / 2, y: y + height / 2 }; })()`,
      ),
    until: (holds) =>
      page.evaluate<undefined>(`new Promise((done) => { const look = () => (${holds} ? done() : requestAnimationFrame(look)); look(); })`),
    drawn,
    errors: () => errors,
    close,
  };
}

/** The picture of a file that can be drawn. */
export function shownOf(text: string): Shown {
  const shown = showAnswers(solve(text));
  if (shown === undefined) throw new Error('Nothing can be drawn of this file');
  return shown;
}

const ORIGIN = 'https://drawing.test';

const htmlOf = (theme: ThemeKind) => `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Drawing</title>
<link rel="stylesheet" href="/page.css">
<style>:root { ${Object.entries(THEMES[theme])
  .map(([name, value]) => `--vscode-${name}: ${value};`)
  .join(' ')} }
html, body, #place { margin: 0; height: 100%; background: var(--vscode-editor-background); color: var(--vscode-foreground);
font: var(--vscode-font-size) var(--vscode-font-family); }</style>
</head><body class="vscode-${theme}${theme === 'high-contrast-light' ? ' vscode-high-contrast' : ''}"><div id="place"></div>
<script src="/page.js"></script></body></html>`;

async function bundled(contents: string, loader: 'tsx' | 'css'): Promise<string> {
  const resolveDir = fileURLToPath(new URL('../..', import.meta.url));
  const { outputFiles } = await build({
    ...forView,
    stdin: { contents, resolveDir, loader },
    external: ['#*'],
    write: false,
    ...(loader === 'tsx' && { format: 'iife' }),
  });
  return outputFiles[0]!.text;
}

/** JSON knows neither arrays of figures nor NaN; undefined stays. */
const asExpression = (value: unknown): string => (value === undefined ? 'undefined' : `revived(${JSON.stringify(packed(value))})`);

function packed(value: unknown): unknown {
  if (value instanceof Float64Array) return { float64: Array.from(value, (figure) => (Number.isNaN(figure) ? null : figure)) };
  if (Array.isArray(value)) return value.map(packed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, packed(inner)]));
}
