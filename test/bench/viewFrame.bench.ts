/**
 * What the view's page takes of each frame, in Chromium, on the largest example and on 64 loops: script per frame while the pedal plays, and
 * while a pivot is dragged with a new picture for each trial, against the goal of 8 ms; and the size of its script against 250 kB.
 *
 * The page is the real one, as it is bundled. Everything of it that runs is timed: frames, timers, pointer and messages, each with the
 * promises that it has left behind. Layout and painting are the browser's and are not in it, unless script asks for what they say. The editor
 * is a stub that answers each trial with one of eight pictures solved beforehand, so that each differs from the last, and with the charts that
 * are in sight; while a hand drags the editor sends no more. Of several rounds the quietest counts.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { PROTOCOL } from '../../src/protocol/messages.ts';
import type { Shown, Trial } from '../../src/protocol/messages.ts';
import { solve } from '../../src/solve.ts';
import { longChain } from '../support/longChain.ts';
import { THEMES } from '../support/viewThemes.ts';
import { scriptOfFrames } from './scriptOfFrames.ts';
import { middleAndP95, report } from './stopwatch.ts';

/** Not bundled: what starts a browser and what bundles find their packages beside themselves. */
const scripts = new URL('../../scripts/', import.meta.url).href;
const { openPage } = (await import(`${scripts}editorHosts/chromium.mjs`)) as typeof import('../../scripts/editorHosts/chromium.mjs');
const { buildView } = (await import(`${scripts}build.mjs`)) as typeof import('../../scripts/build.mjs');

/** ms of script a frame, p95. */
const GOAL = 8;
/** Bytes of the view's script. */
const SIZE_GOAL = 250_000;

const ROUNDS = 3;
/** Of fewer frames a p95 says nothing. */
const FEWEST = 20;

const ORIGIN = 'https://view.test';

const [largest] = readdirSync('examples')
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => ({ name, text: readFileSync(`examples/${name}`, 'utf8') }))
  .sort((one, other) => other.text.length - one.text.length);
if (largest === undefined) throw new Error('there is no example');

await buildView();
const script = readFileSync('build/webview/view.js', 'utf8');
const style = readFileSync('build/webview/view.css', 'utf8');
const bytes = statSync('build/webview/view.js').size;
report('the script of the view', `${(bytes / 1000).toFixed(1)} kB; ${(bytes / SIZE_GOAL).toFixed(2)} × the goal of 250 kB`);

const STUB = readFileSync('test/support/viewStub.js', 'utf8').trim().replace(/;$/, '');
const STATE = JSON.stringify({ colours: THEMES.dark, classes: ['dark'], state: undefined });
const HTML = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>View</title><link rel="stylesheet" href="/view.css"></head>
<body><script>(${STUB})(${STATE})</script><div id="view"></div><script src="/view.js"></script></body></html>`;

const { page, close } = await openPage({ width: 1400, height: 900 });
const devTools = await page.context().newCDPSession(page);
let version = 0;
let answers: readonly Shown[] = [];
let answered = 0;
let inSight: readonly string[] = [];
const failures: string[] = [];
page.on('pageerror', (error) => void failures.push(String(error)));
const tell = (notice: object) =>
  page.evaluate(`window.postMessage(revived(${JSON.stringify(packed({ protocol: PROTOCOL, kind: 'notice', notice }))}), '*')`);
const showing = (picture: Shown, trial: Trial) => ({
  type: 'show',
  source: { uri: 'file:///a.throttle.yaml', version },
  fileName: 'a.throttle.yaml',
  trial,
  ...picture,
  charts: picture.charts.filter(({ id }) => trial.length === 0 || inSight.includes(id)),
  coming: trial.length === 0 ? [] : picture.charts.map(({ id }) => id).filter((id) => !inSight.includes(id)),
});
await page.exposeFunction('toEditor', (text) => {
  const { notice } = JSON.parse(text) as {
    readonly notice?: { readonly type: string; readonly trial: Trial; readonly charts: readonly string[] };
  };
  if (notice?.type === 'in-sight') inSight = notice.charts;
  if (notice?.type !== 'try') return;
  answered += 1;
  void tell(showing(answers[answered % answers.length]!, notice.trial));
});
await page.route(`${ORIGIN}/**`, async (route) => {
  const path = new URL(route.request().url()).pathname;
  if (path === '/view.js') return route.fulfill({ contentType: 'text/javascript', body: script });
  if (path === '/view.css') return route.fulfill({ contentType: 'text/css', body: style });
  return route.fulfill(path === '/' ? { contentType: 'text/html', body: HTML } : { status: 204 });
});

/** Text of the file with its first plain length so much longer, mm. */
const lengthened = (text: string, pattern: RegExp, by: number): string =>
  text.replace(pattern, (_, before: string, length: string) => `${before}${(Number(length) + by).toFixed(2)}`);

try {
  await measure(largest.name, largest.text, /(radius: |: )(\d+(?:\.\d+)?)(?= mm ±)/);
  await measure('64 loops', longChain(64), /(pivot: \[30, 0\], arms: \{out: \{radius: )(\d+)/);
} finally {
  await close();
}
if (failures.length > 0) throw new Error(`The page failed: ${failures.join('; ')}`);

async function measure(what: string, text: string, length: RegExp): Promise<void> {
  answers = Array.from({ length: 8 }, (_, i) => pictureOf(lengthened(text, length, i / 20)));
  version += 1;
  inSight = [];
  await page.goto(`${ORIGIN}/`);
  await page.evaluate('new Promise((done) => { const look = () => (window.isReady ? done() : setTimeout(look, 10)); look(); })');
  await tell(showing(answers[0]!, []));
  await frames(30);
  reportFrames(`${what}: playing`, await rounds(play));
  await page.evaluate(`void document.querySelector('.drawing .sheet').focus()`);
  await page.keyboard.press('n');
  await frames(10);
  reportFrames(`${what}: playing, with all names`, await rounds(play));
  await page.keyboard.press('n');
  await page.keyboard.press('e');
  await frames(10);
  const before = answered;
  reportFrames(`${what}: dragging`, await rounds(drag));
  report(`  pictures that came meanwhile, in ${ROUNDS} rounds`, String(answered - before));
}

/** One stroke out and back. */
async function play(): Promise<void> {
  await page.evaluate(`void document.querySelector('.play-button').click()`);
  await page.evaluate(`new Promise((done) => {
    const look = () => (document.querySelector('.play-button').textContent === 'Play' ? done() : setTimeout(look, 50));
    setTimeout(look, 200);
  })`);
}

/** The handle nearest to the middle of the drawing, round and round by a few pixels. */
async function drag(): Promise<void> {
  const { x, y } = await page.evaluate<{ x: number; y: number }>(`(() => {
    const room = document.querySelector('.drawing .sheet').getBoundingClientRect();
    const places = [...document.querySelectorAll('.drawing .handle')].map((handle) => {
      const box = handle.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    });
    const far = ({ x, y }) => Math.hypot(x - room.x - room.width / 2, y - room.y - room.height / 2);
    return places.sort((one, other) => far(one) - far(other))[0];
  })()`);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 0; i < 120; i++) await page.mouse.move(x + 12 * Math.sin(i / 8), y + 12 * Math.cos(i / 8));
  await page.keyboard.press('Escape');
  await page.mouse.up();
}

function frames(count: number): Promise<unknown> {
  return page.evaluate(`new Promise((done) => {
    let left = ${count};
    const next = () => (left-- > 0 ? requestAnimationFrame(next) : done());
    next();
  })`);
}

/** Script of each frame, ms, in the round whose p95 is least; of all rounds together where the machine has let each have few frames. */
async function rounds(act: () => Promise<void>): Promise<readonly number[]> {
  const all: (readonly number[])[] = [];
  for (let round = 0; round < ROUNDS; round++) all.push(await scriptOfFrames(devTools, '/view.js', act));
  const enough = all.filter(({ length }) => length >= FEWEST).sort((one, other) => middleAndP95(one).p95 - middleAndP95(other).p95);
  const best = enough[0] ?? all.flat();
  if (best.length < FEWEST) throw new Error(`only ${best.length} frames had any script`);
  return best;
}

function reportFrames(what: string, spent: readonly number[]): void {
  const { median, p95 } = middleAndP95(spent);
  report(
    what,
    `${spent.length} frames, p50 ${median.toFixed(1)} ms, p95 ${p95.toFixed(1)}; ${(p95 / GOAL).toFixed(2)} × the goal of ${GOAL} ms`,
  );
}

function pictureOf(text: string): Shown {
  const shown = showAnswers(solve(text));
  if (shown === undefined) throw new Error('Nothing can be drawn of this');
  return shown;
}

/** As the stub of the editor takes it: JSON knows neither arrays of figures nor NaN. */
function packed(value: unknown): unknown {
  if (value instanceof Float64Array) return { figures: Array.from(value, (figure) => (Number.isNaN(figure) ? null : figure)) };
  if (Array.isArray(value)) return value.map(packed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, packed(inner)]));
}
