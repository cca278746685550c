/**
 * Real editors for tests and pictures. `web` is the oldest version supported with the web extension host, `node` the newest
 * with the Node extension host. Both are shown by Chromium, without a screen.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers';
import { HostError } from './editorHosts/cache.mjs';
import { fetchChromium, openPage } from './editorHosts/chromium.mjs';
import * as node from './editorHosts/nodeHost.mjs';
import { answerLook } from './editorHosts/pageQuestions.mjs';
import { collectResults } from './editorHosts/results.mjs';
import { stillWindow } from './editorHosts/stillWindow.mjs';
import * as web from './editorHosts/webHost.mjs';
import { root } from './setUp.mjs';

export const HOSTS = { web, node };

/** Fetches whatever an editor of that kind needs and is not there yet, so that it then starts at once. */
export function fetchEditor(host) {
  fetchChromium();
  HOSTS[host].fetchHost();
}

/** Modules with a `run` for the editor to call, as `buildEditorTests` of `build.mjs` makes them: one for each kind of host. */
export const modulesFor = (name) => ({
  web: `${root}build/editorTests/${name}.browser.js`,
  node: `${root}build/editorTests/${name}.node.cjs`,
});

/**
 * Opens a folder in an editor, with the extension of this clone under development, or with a package of it installed.
 *
 * @param {'web' | 'node'} host
 * @param {object} options
 * @param {string} options.folder or a `.code-workspace` file
 * @param {string} [options.tests] module whose `run` is called inside
 * @param {boolean} [options.trusted] false where the editor shall not trust the folder; `web` always does
 * @param {string} [options.installed] path of a `.vsix` to install instead; `node` alone can
 * @param {{width: number, height: number}} [options.size] of the window
 * @param {boolean} [options.still] whether the window goes without motion of its own
 * @param {(line: string, page: import('playwright-core').Page) => void} [options.hear] gets each line that is logged inside
 * @returns {Promise<{page: import('playwright-core').Page, exited: Promise<number>, close: () => Promise<void>}>} `exited`: the exit code once `run` has ended
 */
export async function openEditor(host, { folder, tests, trusted = true, installed, size, still = false, hear = () => undefined }) {
  const server = await HOSTS[host].start({ folder, tests, trusted, installed });
  const log = [];
  const browser = await openPage(size).catch(async (error) => {
    await server.stop();
    throw error;
  });
  const close = async () => {
    await browser.close();
    await server.stop();
    mkdirSync(`${root}build/editorTests`, { recursive: true });
    writeFileSync(`${root}build/editorTests/${host}.log`, [...server.log, '\n', ...log.map((line) => `${line}\n`)].join(''));
  };
  try {
    const exited = new Promise((resolve) => browser.page.exposeFunction('codeAutomationExit', resolve));
    await browser.page.exposeFunction('codeAutomationLog', (_kind, words) => {
      const line = words.map((word) => (typeof word === 'string' ? word : JSON.stringify(word))).join(' ');
      log.push(line);
      hear(line, browser.page);
    });
    browser.page.setDefaultTimeout(PAGE_MS);
    if (still) await stillWindow(browser.page);
    await browser.page.goto(server.url);
    return { page: browser.page, exited, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** For whatever the page is asked: it answers at once, but not on a machine that is busy with much else. */
const PAGE_MS = 120_000;

/**
 * Runs tests of `test/editor/` in a host and prints each as it ends.
 *
 * @param {'web' | 'node'} host
 * @param {object} [options]
 * @param {'run' | 'folders' | 'restricted'} [options.suites] which file of `test/editor/`: a folder that is trusted, two, or two that are not
 * @param {string} [options.installed] as of `openEditor`
 * @param {(line: string) => void} [options.print] takes what a person should see
 * @returns {Promise<import('./editorHosts/results.mjs').Results>}
 */
export async function runEditorTests(host, { suites = 'run', installed, print = console.log } = {}) {
  const { TITLE, VERSION } = HOSTS[host];
  const quiet = silence(SILENT_MS);
  const collected = collectResults((line) => {
    quiet.broken();
    print(line);
  });
  await withWorkspace(async (folder, both) => {
    const where = { folder: suites === 'run' ? folder : both, trusted: suites !== 'restricted' };
    const tests = modulesFor(suites)[host];
    const hear = (line, page) => {
      collected.hear(line);
      answerLook(line, page);
    };
    const editor = await openEditor(host, { ...where, tests, installed, still: true, hear });
    quiet.broken();
    print(`${TITLE}${FOLDERS[suites]}${installed === undefined ? '' : `, ${installed}`}`);
    const ended = await Promise.race([
      Promise.all([editor.exited, collected.finished]).then(() => 'ended'),
      // A `run` that could not even be loaded ends the host without a last line.
      editor.exited.then(() => after(LATE_LINES_MS, 'ended')),
      quiet.late.then(() => 'late'),
    ]);
    await editor.close();
    if (ended === 'late') print(`  ✗ nothing was heard of the tests for ${SILENT_MS / 1000} s`);
  });
  const results = collected.results();
  if (results.version === '') throw new HostError(`${TITLE} could not run the tests: build/editorTests/${host}.log may say why`);
  if (results.version !== VERSION)
    throw new HostError(`${TITLE} says that it is version “${results.version}”: see build/editorTests/${host}.log`);
  return results;
}

/** What is open besides one folder that is trusted. */
const FOLDERS = { run: '', folders: ', two folders', restricted: ', two folders that are not trusted' };

/** Between two tests, or before the first; far above what one may wait for, on a busy machine. */
const SILENT_MS = 300_000;
/** Lines and the exit code come by different ways, and on a busy machine one of them late. */
const LATE_LINES_MS = 30_000;

function after(milliseconds, value) {
  return new Promise((resolve) => setTimeout(() => resolve(value), milliseconds).unref());
}

/** `late` resolves once so long has passed since the start or the last `broken`. */
function silence(milliseconds) {
  let broken = () => undefined;
  const late = new Promise((resolve) => {
    const timer = setTimeout(resolve, milliseconds).unref();
    broken = () => timer.refresh();
  });
  return { late, broken };
}

/**
 * Gives `work` a folder with the bundled examples, and a workspace of two such folders; they are gone afterwards.
 *
 * @template T
 * @param {(folder: string, both: string) => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function withWorkspace(work) {
  const parent = mkdtempSync(join(tmpdir(), 'editor-workspace-'));
  try {
    const names = ['examples', 'second'];
    for (const name of names) cpSync(`${root}examples`, join(parent, name), { recursive: true });
    const both = join(parent, 'both.code-workspace');
    writeFileSync(both, JSON.stringify({ folders: names.map((path) => ({ path })) }));
    return await work(join(parent, 'examples'), both);
  } finally {
    rmSync(parent, { recursive: true, force: true, maxRetries: 5 });
  }
}
