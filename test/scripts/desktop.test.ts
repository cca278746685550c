/** Desktop VS Code, as `npm start` opens it, with a program of the same name in its place. */
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { localCode } from '../../scripts/editorHosts/localCode.mjs';
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

function put(...paths: readonly string[]): void {
  for (const path of paths.map((each) => join(folder, each))) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, '');
  }
}

test.each([
  ['Linux', 'share/code/bin/code', 'share/code/code'],
  ['macOS', 'Contents/Resources/app/bin/code', 'Contents/MacOS/Electron'],
  ['Windows', 'bin/code.cmd', 'Code.exe'],
])('the tests take the program beside the `code` on the path, as it is packed for %s', (_, command, program) => {
  put(command, program);
  const env = { PATH: ['', '/nowhere', join(folder, dirname(command))].join(delimiter) };
  expect(localCode(env)).toBe(join(realpathSync(folder), program));
});

test('the tests follow a link on the path to where `code` is', () => {
  put('share/code/bin/code', 'share/code/code');
  mkdirSync(join(folder, 'bin'));
  symlinkSync('../share/code/bin/code', join(folder, 'bin/code'));
  expect(localCode({ PATH: join(folder, 'bin') })).toBe(join(realpathSync(folder), 'share/code/code'));
});

test('the tests take the program that a variable names, and stop where it is no file', () => {
  put('bin/code', 'code', 'other/program');
  const named = join(folder, 'other/program');
  expect(localCode({ PATH: join(folder, 'bin'), VSCODE_EXECUTABLE: named })).toBe(named);
  expect(() => localCode({ VSCODE_EXECUTABLE: join(folder, 'other') })).toThrow('which is no file');
});

test('the tests take no `code` without its program beside it', () => {
  put('bin/code');
  expect(localCode({ PATH: join(folder, 'bin') })).toBeUndefined();
  expect(localCode({})).toBeUndefined();
});
