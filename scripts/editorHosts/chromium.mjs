/** The Chromium that shows the editor: finds it, installs it where that is possible, and opens pages in it. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import process from 'node:process';
import { HostError, fetched } from './cache.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const MAC = ['/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'];

/**
 * Path of a Chromium: the one that the variable CHROMIUM names, else one of this machine, else one that apt installs, which only root can.
 *
 * @returns {string}
 */
export function requireChromium() {
  const named = process.env.CHROMIUM;
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new HostError(`The variable CHROMIUM names ${named}, which does not exist`);
  }
  const found = findChromium() ?? installChromium();
  if (found === undefined) {
    throw new HostError('Chromium is missing: install it (Debian: `apt-get install chromium`) or name one in the variable CHROMIUM');
  }
  return found;
}

/** Path of a Chromium, and the folder of what drives it; both are installed where they are missing. */
export function fetchChromium() {
  return { executablePath: requireChromium(), driver: fetched('browser', 'Playwright') };
}

/**
 * A page with a profile of its own.
 *
 * @param {{width: number, height: number}} [size] of the window, in CSS pixels
 * @returns {Promise<{page: import('playwright-core').Page, close: () => Promise<void>}>}
 */
export async function openPage(size = { width: 1280, height: 800 }) {
  const { executablePath, driver } = fetchChromium();
  const { chromium } = createRequire(`${driver}package.json`)('playwright-core');
  const profile = mkdtempSync(join(tmpdir(), 'editor-profile-'));
  mkdirSync(join(profile, 'Default'));
  writeFileSync(join(profile, 'Default', 'Preferences'), JSON.stringify(PREFERENCES));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    viewport: size,
    timeout: START_MS,
    args: [...QUIET, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  });
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    close: async () => {
      await context.close();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** A busy machine takes some seconds. */
const START_MS = 120_000;

/** A view of the editor is a frame of another site with a service worker, and Debian's Chromium refuses storage to those. */
const PREFERENCES = { profile: { cookie_controls_mode: 0, block_third_party_cookies: false } };

/** Nothing of the browser's own needs the network. */
const QUIET = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-gpu',
  '--disable-quic',
  '--disable-sync',
  '--no-first-run',
];

function findChromium() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...MAC];
  return candidates.find((path) => existsSync(path));
}

function installChromium() {
  const hasApt = spawnSync('apt-get', ['--version']).status === 0;
  if (!hasApt || process.getuid?.() !== 0) return undefined;
  console.log('Chromium is missing, so running `apt-get install chromium` …');
  const options = { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  spawnSync('apt-get', ['update'], options);
  spawnSync('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium'], options);
  return findChromium();
}
