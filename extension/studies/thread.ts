/**
 * A thread of its own, which runs the same bundle as the extension: nothing of the core is there twice. The editor's module is not there;
 * what stands in its place is never used, since a thread serves studies and nothing else.
 */

/** A thread that runs. */
export interface Thread {
  post(message: unknown): void;
  /** Stops it at once, whatever it is doing. */
  stop(): void;
}

export interface ThreadEars {
  heard(message: unknown): void;
  /** It has ended by itself, or could not begin. */
  failed(why: string): void;
}

/** @param bundle text of the extension's own bundle, which exports `serveStudies` @returns rejects where the host has no threads */
export async function startThread(bundle: string, ears: ThreadEars): Promise<Thread> {
  if (typeof Worker === 'function') return startInWeb(Worker, scriptOf(bundle, WEB_PORT), ears);
  return startInNode(scriptOf(bundle, NODE_PORT), ears);
}

function startInWeb(Host: NonNullable<typeof Worker>, script: string, { heard, failed }: ThreadEars): Thread {
  const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  const worker = new Host(address);
  worker.onmessage = ({ data }) => heard(data);
  worker.onerror = ({ message = 'The thread ended' }) => failed(message);
  return {
    post: (message) => worker.postMessage(message),
    stop() {
      worker.terminate();
      URL.revokeObjectURL(address);
    },
  };
}

async function startInNode(script: string, { heard, failed }: ThreadEars): Promise<Thread> {
  const { Worker: NodeWorker } = await import('node:worker_threads');
  const worker = new NodeWorker(script, { eval: true });
  worker.on('message', heard);
  worker.on('error', (error) => failed(error instanceof Error ? error.message : String(error)));
  worker.on('exit', () => failed('The thread ended'));
  // The host may end while a thread waits for work.
  worker.unref();
  return { post: (message) => worker.postMessage(message), stop: () => void worker.terminate() };
}

const WEB_PORT = '{ post: (message) => self.postMessage(message), listen: (heard) => { self.onmessage = ({ data }) => heard(data); } }';

const NODE_PORT =
  "(({ parentPort }) => ({ post: (message) => parentPort.postMessage(message), listen: (heard) => parentPort.on('message', heard) }))(require('node:worker_threads'))";

/** The bundle as a function of what a host gives it, and the call that begins. */
function scriptOf(bundle: string, port: string): string {
  return `'use strict';
const nothing = new Proxy(function () {}, {
  get: (_, key) => (key === Symbol.toPrimitive ? () => '' : key === 'prototype' ? Object.prototype : nothing),
  apply: () => nothing,
  construct: () => nothing,
});
const bundled = { exports: {} };
(function (module, exports, require) {
${bundle}
})(bundled, bundled.exports, () => nothing);
bundled.exports.serveStudies(${port});
`;
}
