/** Opens an example in an editor that runs the extension of this clone, and stays with it as long as that takes. */
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { dirname } from 'node:path';
import process from 'node:process';
import { orStop } from '../editorHosts/cache.mjs';
import { TITLE, start } from '../editorHosts/nodeHost.mjs';
import { root } from '../setUp.mjs';
import { openOnDesktop } from './desktop.mjs';
import { browserCommand, canShowDesktop } from './surroundings.mjs';

/** @param {string} example path of a throttle file, from the clone's folder */
export async function startEditor(example) {
  const surroundings = { platform: process.platform, env: process.env, isTerminal: process.stdout.isTTY === true };
  if (canShowDesktop(surroundings) && openOnDesktop(example, process.env)) return;
  await orStop(() => serve(example, surroundings));
}

/** Serves the editor to this machine alone, and to nobody who does not know the token, until the process is told to end. */
async function serve(example, surroundings) {
  const token = randomBytes(TOKEN_BYTES).toString('hex');
  const file = root + example;
  const server = await start({ folder: dirname(file), file, token });
  let isEnding = false;
  const end = async () => {
    // Ctrl-C is also pressed twice.
    if (isEnding) return;
    isEnding = true;
    await server.stop();
    console.log('\nStopped.');
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    // Those of the server end the process at once and with exit code 1: for tests, an end from outside is a failure.
    process.removeAllListeners(signal);
    process.on(signal, () => void end());
  }
  const opened = open(browserCommand(surroundings, server.url));
  console.log(`${TITLE} shows ${example} with the extension${opened ? ', in your browser and' : ''} at\n\n  ${server.url}\n`);
  console.log('The address works on this machine alone, and lets in whoever has it. Ctrl-C stops it.');
}

/** More than anybody can guess. */
const TOKEN_BYTES = 24;

/** @returns {boolean} false where there is nothing to open it with; that it was opened is not waited for */
function open(command) {
  if (command === undefined) return false;
  const [program, ...words] = command;
  const child = spawn(program, words, { detached: true, stdio: 'ignore' });
  // A machine without such a program still has the address that is printed.
  child.on('error', () => undefined);
  child.unref();
  return true;
}
