/** A server in a process of its own: waits until it listens, keeps what it prints, and ends it with all that it started. */
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import process from 'node:process';
import { clearTimeout, setTimeout as startTimer } from 'node:timers';
import { setTimeout } from 'node:timers/promises';
import { HostError } from './cache.mjs';

// Ended from outside, this still comes by `exit`, where servers are ended too.
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(1));

/**
 * @param {string} title what it is, in the words of a message
 * @param {string} command
 * @param {readonly string[]} words
 * @param {RegExp} listening what it prints once it can be asked
 * @returns {Promise<{log: readonly string[], stop: () => Promise<void>}>} `stop` resolves once all of it has ended, or has been ended long ago
 */
export async function startServer(title, command, words, listening) {
  // A process group of its own, so that what it starts ends with it.
  const grouped = process.platform !== 'win32';
  const child = spawn(command, words, { stdio: ['ignore', 'pipe', 'pipe'], detached: grouped });
  const log = [];
  const signal = (name) => send(child, grouped, name);
  const atExit = () => signal('SIGTERM');
  const stop = async () => {
    process.off('exit', atExit);
    const began = Date.now();
    signal('SIGTERM');
    while (signal(0) && Date.now() < began + GONE_MS) {
      await setTimeout(POLL_MS);
      if (Date.now() > began + END_MS) signal('SIGKILL');
    }
  };
  process.on('exit', atExit);
  await new Promise((resolve, reject) => {
    const fail = (reason) => {
      clearTimeout(timer);
      void stop();
      reject(new HostError(`${title} did not start: ${reason}\n${log.slice(-20).join('')}`));
    };
    const timer = startTimer(() => fail(`silent for ${START_MS / 1000} s`), START_MS);
    const hear = (chunk) => {
      log.push(String(chunk));
      if (!listening.test(String(chunk))) return;
      clearTimeout(timer);
      resolve();
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('error', (error) => fail(error.message));
    child.on('exit', (code) => fail(`it ended with exit code ${code}`));
  });
  return { log, stop };
}

/** A busy machine takes some seconds. */
const START_MS = 120_000;

/** Long enough to end by itself what it has begun; some of its processes never do. */
const END_MS = 500;
/** What still counts as running then has ended and is only not waited for, where the first process of a machine waits for none. */
const GONE_MS = 10_000;
const POLL_MS = 50;

/** False where nothing of it runs any more; the signal 0 only asks. */
function send(child, grouped, name) {
  if (child.pid === undefined) return false;
  try {
    return process.kill(grouped ? -child.pid : child.pid, name);
  } catch {
    return false;
  }
}

/** A port of this machine that nothing listens on. @returns {Promise<number>} */
export function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}
