/** Desktop VS Code, as `npm start` opens it, with a program of the same name in its place. */
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openOnDesktop } from '../../scripts/start/desktop.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const EXAMPLE = 'examples/four-barrel.throttle.yaml';

let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'desktop-'));
  vi.spyOn(console, 'log').mockReturnValue(undefined);
});

afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

/** A `code` that notes its words, one a line, and ends with an exit code of its own unless it is asked for its version. */
function putCode(exitCode: number): void {
  const path = join(folder, 'code');
  writeFileSync(path, `#!/bin/sh\n[ "$1" = --version ] && exit 0\nprintf '%s\\n' "$@" > "${folder}/words"\nexit ${exitCode}\n`);
  chmodSync(path, 0o755);
}

const withCode = (): NodeJS.ProcessEnv => ({ ...process.env, PATH: `${folder}${delimiter}${process.env.PATH ?? ''}` });

test('it opens the example with the extension of this clone', () => {
  putCode(0);
  expect(openOnDesktop(EXAMPLE, withCode())).toBe(true);
  expect(readFileSync(join(folder, 'words'), 'utf8').trim().split('\n')).toEqual([
    `--extensionDevelopmentPath=${root}`,
    `${root}examples`,
    root + EXAMPLE,
  ]);
});

test('where it would not start, that is told, and something else can be tried', () => {
  putCode(1);
  expect(openOnDesktop(EXAMPLE, withCode())).toBe(false);
  expect(vi.mocked(console.log).mock.calls.flat().at(-1)).toMatch(/did not start/);
});

test('where there is none, nothing is started', () => {
  expect(openOnDesktop(EXAMPLE, { PATH: folder })).toBe(false);
  expect([existsSync(join(folder, 'words')), vi.mocked(console.log).mock.calls]).toEqual([false, []]);
});
