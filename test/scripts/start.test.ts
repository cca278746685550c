/** `npm start` as a process: what it prints, whom the editor answers, and that nothing is left once it is stopped. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The first start on a machine fetches the editor. */
const FIRST_START_MS = 600_000;

interface Started {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly ended: Promise<{ readonly code: number | null }>;
}

/** As on a build machine: no display, no terminal. */
function start(words: readonly string[], temporary: string): Started {
  const env = { ...process.env, CI: '1', TMPDIR: temporary };
  const child = spawn(process.execPath, ['scripts/start.mjs', ...words], { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  child.stdout.on('data', (chunk) => (out += String(chunk)));
  child.stderr.on('data', (chunk) => (out += String(chunk)));
  const ended = once(child, 'close').then(([code]) => ({ code: code as number | null }));
  return { child, out: () => out, ended };
}

/** The address, as soon as all of it is printed. */
async function addressOf({ child, out, ended }: Started): Promise<URL> {
  const read = (): string | undefined => /http:\/\/\S+(?=\s+[^]*Ctrl-C stops it)/.exec(out())?.[0];
  const over = ended.then(() => {
    throw new Error(`it ended before there was an address:\n${out()}`);
  });
  for (;;) {
    const url = read();
    if (url !== undefined) return new URL(url);
    await Promise.race([once(child.stdout!, 'data'), over]);
  }
}

/** Whether something listens there. */
function listens(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host, port, timeout: 2000 });
    const answer = (value: boolean) => () => {
      socket.destroy();
      resolve(value);
    };
    socket.on('connect', answer(true)).on('error', answer(false)).on('timeout', answer(false));
  });
}

let temporary = '';

beforeAll(() => {
  temporary = mkdtempSync(join(tmpdir(), 'start-'));
});

afterAll(() => rmSync(temporary, { recursive: true, force: true, maxRetries: 5 }));

describe('npm start', () => {
  let started: Started;
  let address: URL;

  beforeAll(async () => {
    started = start([], temporary);
    address = await addressOf(started);
  }, FIRST_START_MS);

  afterAll(() => started.child.kill('SIGKILL'));

  const ask = (path: string, headers: Record<string, string> = {}): Promise<Response> =>
    fetch(new URL(path, address.origin), { redirect: 'manual', headers });

  test('shows the verdict on the example first', () => {
    expect(started.out()).toMatch(/examples\/four-barrel\.throttle\.yaml: no errors[^]*http:/);
  });

  test('names an address of this machine alone, with a token that nobody can guess', async () => {
    expect(address.hostname).toBe('127.0.0.1');
    expect(address.searchParams.get('tkn')).toMatch(/^[0-9a-f]{48}$/);
    expect(await listens('127.0.0.1', Number(address.port))).toBe(true);
    // Where the server listened to all addresses of the machine, this one would answer too.
    expect(await listens('127.0.0.2', Number(address.port))).toBe(false);
  });

  test('refuses those who do not know the token, the page as well as files of the disk', async () => {
    const file = `/vscode-remote-resource?path=${encodeURIComponent(`${root}package.json`)}`;
    for (const path of ['/', '/?tkn=wrong', file, `${file}&tkn=wrong`]) {
      const response = await ask(path);
      expect([path, response.status]).toEqual([path, 403]);
      expect(await response.text()).not.toContain('pedal-to-plate');
    }
  });

  test('lets in who knows it, to the editor with the example and the extension', async () => {
    const first = await ask(address.pathname + address.search);
    expect(first.status).toBe(302);
    const [cookie = ''] = (first.headers.get('set-cookie') ?? '').split(';');
    const page = await ask(first.headers.get('location') ?? '', { cookie });
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('workbench');
    const payload = new Map(JSON.parse(address.searchParams.get('payload') ?? '[]') as [string, string][]);
    expect(payload.get('openFile')).toBe(`vscode-remote://${address.host}${root}examples/four-barrel.throttle.yaml`);
    expect(payload.get('extensionDevelopmentPath')).toBe(`vscode-remote://${address.host}${root}`);
  });

  test('stops on Ctrl-C, with exit code 0, and leaves no server and no files', async () => {
    started.child.kill('SIGINT');
    expect(await started.ended).toEqual({ code: 0 });
    expect(started.out()).toMatch(/Stopped\.\s*$/);
    await expect.poll(() => listens('127.0.0.1', Number(address.port)), { timeout: 10_000 }).toBe(false);
    expect(readdirSync(temporary).filter((name) => name.startsWith('editor-data-'))).toEqual([]);
  });
});

test('npm start -- --check ends with the verdict', async () => {
  const started = start(['--check'], temporary);
  expect(await started.ended).toEqual({ code: 0 });
  expect(started.out()).toMatch(/no errors.*\n$/);
  expect(started.out()).not.toContain('http://');
});

test('an option that it does not know is told, and nothing else done', async () => {
  const started = start(['--chekc'], temporary);
  expect(await started.ended).toEqual({ code: 2 });
  expect(started.out()).toBe('npm start knows no “--chekc”: only `npm start -- --check`, which ends with the verdict\n');
});
