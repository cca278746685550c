/** The newest editor: served to the browser, extensions run in Node, and files are those of the disk. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { URLSearchParams } from 'node:url';
import { root } from '../setUp.mjs';
import { HostError, fetched, unpack } from './cache.mjs';
import { freePort, startServer } from './serverProcess.mjs';
import { placeStandIns } from './standIns.mjs';

export const VERSION = '1.139.1';
export const TITLE = `VS Code ${VERSION} with the Node extension host`;

/** Settings of this version that leave the window to the file. */
export const PLAIN = { 'chat.disableAIFeatures': true, 'workbench.secondarySideBar.defaultVisibility': 'hidden' };

/** The inner server of this package is the editor's own; what the package puts around it is not used. */
const EDITOR = {
  spec: 'code-server@4.139.1',
  integrity: 'sha512-fUYvJVdz4ZoVJfakGiGWXFMpF8K1ObsrpGvX17ZxNpKOzdNHs7lANT670JTr4ZhA8DnWqyvvmFG/d3HV9Yy6ew==',
  // Half of its size, and nothing that a throttle file needs.
  without: ['lib/vscode/extensions/copilot', 'lib/vscode/extensions/mermaid-markdown-features'],
};

const NODE_MAJOR = 24;

/**
 * @param {object} options
 * @param {string} options.folder folder or `.code-workspace` file to open
 * @param {string} [options.tests] module with the `run` that is called in the host
 * @param {boolean} [options.trusted] false where the folder is not trusted
 * @param {string} [options.installed] path of a `.vsix` that is installed, and takes the place of the extension under development
 * @param {string} [options.token] what a request must know to be answered; without one, every request is
 * @param {string} [options.file] to show
 * @returns {Promise<{url: string, log: readonly string[], stop: () => Promise<void>}>}
 */
export async function start({ folder, tests, trusted = true, installed, token, file }) {
  const { node, program } = fetchHost();
  const data = mkdtempSync(join(tmpdir(), 'editor-data-'));
  writeSettings(data);
  if (installed !== undefined) install(installed, [node, program, '--server-data-dir', data]);
  const port = await freePort();
  const authority = `127.0.0.1:${port}`;
  const words = [
    program,
    ...['--host', '127.0.0.1', '--port', String(port), '--server-data-dir', data],
    ...['--accept-server-license-terms', '--telemetry-level', 'off'],
    ...(token === undefined ? ['--without-connection-token'] : ['--connection-token-file', tokenFile(data, token)]),
    // Without it this editor ignores what the address says about extensions under development.
    '--enable-smoke-test-driver',
    ...(trusted ? ['--disable-workspace-trust'] : []),
  ];
  const server = await startServer(TITLE, node, words, /Web UI available|listening/);
  return {
    log: server.log,
    url: `http://${authority}/?${addressQuery(authority, { extension: installed === undefined ? root : emptyExtension(data), folder, tests, token, file })}`,
    stop: async () => {
      await server.stop();
      rmSync(data, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Paths of the server and of the Node that runs it, which are fetched where they are missing. */
export function fetchHost() {
  const server = fetched('node', TITLE, placeServer, JSON.stringify(EDITOR));
  placeStandIns(`${server}package/lib/vscode/`);
  return { node: nodeForServer(), program: `${server}package/lib/vscode/out/server-main.js` };
}

function install(path, [node, ...words]) {
  const { status, stdout, stderr, error } = spawnSync(node, [...words, '--accept-server-license-terms', '--install-extension', path], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new HostError(`${TITLE} could not install ${path}: ${error?.message ?? stdout + stderr}`);
}

/** Tests are run only where some extension is under development: one that has nothing to give. */
function emptyExtension(folder) {
  const place = join(folder, 'emptyExtension');
  mkdirSync(place);
  const manifest = { name: 'empty', publisher: 'empty', version: '0.0.0', engines: { vscode: '*' } };
  writeFileSync(join(place, 'package.json'), JSON.stringify(manifest));
  return place;
}

/**
 * What the editor is set to before a person sets anything. In a browser it would save by itself, and what is tried out in an example
 * shall not end up in the example.
 */
function writeSettings(folder) {
  const place = join(folder, 'data', 'Machine');
  mkdirSync(place, { recursive: true });
  writeFileSync(join(place, 'settings.json'), JSON.stringify({ ...PLAIN, 'files.autoSave': 'off' }));
}

/** Not among the words of a command, which every user of the machine can read. */
function tokenFile(folder, token) {
  const path = join(folder, 'token');
  writeFileSync(path, token, { mode: 0o600 });
  return path;
}

function addressQuery(authority, { extension, folder, tests, token, file }) {
  const remote = (path) => `vscode-remote://${authority}${path}`;
  const payload = [
    ['extensionDevelopmentPath', remote(extension)],
    ...(tests === undefined ? [] : [['extensionTestsPath', remote(tests)]]),
    ...(file === undefined ? [] : [['openFile', remote(file)]]),
    ['skipWelcome', 'true'],
    ['skipReleaseNotes', 'true'],
  ];
  const kind = folder.endsWith('.code-workspace') ? 'workspace' : 'folder';
  const secret = token === undefined ? {} : { tkn: token };
  return new URLSearchParams({ ...secret, [kind]: folder, payload: JSON.stringify(payload) }).toString();
}

function placeServer(folder) {
  const server = unpack(EDITOR, folder, TITLE);
  renameSync(`${folder}node_modules`, `${server}lib/vscode/node_modules`);
}

/** The Node that runs this, where it is the right one; else one from the registry. */
function nodeForServer() {
  if (process.versions.node.startsWith(`${NODE_MAJOR}.`)) return process.execPath;
  const needed = `${TITLE} needs Node ${NODE_MAJOR}`;
  const name = `node-linux-${process.arch}`;
  if (process.platform !== 'linux' || !['x64', 'arm64'].includes(process.arch)) {
    throw new HostError(`${needed}, and there is none on npm for ${process.platform} ${process.arch}: run this with Node ${NODE_MAJOR}`);
  }
  const node = `${fetched('node24', `Node ${NODE_MAJOR}`)}node_modules/${name}/bin/node`;
  if (!existsSync(node)) throw new HostError(`${needed}, and ${name} could not be had from the npm registry`);
  return node;
}
