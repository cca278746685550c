/** The built command line as a process: streams, exit codes, a reader that goes away. */
import { spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FAULTY_FILE, SOUND_FILE } from './support.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const main = 'build/cli/main.mjs';
let folder = '';

const pedalToPlate = (words: readonly string[], input = ''): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, [main, ...words], { cwd: root, encoding: 'utf8', input, env: { ...process.env, FORCE_COLOR: '1' } });

beforeAll(() => {
  const built = spawnSync(process.execPath, ['-e', "import('./scripts/build.mjs').then((build) => build.buildCommandLine())"], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(built.stderr).toBe('');
  folder = mkdtempSync(join(tmpdir(), 'pedal-to-plate-'));
  writeFileSync(join(folder, 'good.throttle.yaml'), `\ufeff${SOUND_FILE.replaceAll('\n', '\r\n')}`);
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

// Each test starts the program several times; a busy machine takes its time over that.
describe('the process', { timeout: 60_000 }, () => {
  it('checks the examples: sound ones end with 0, a broken one with 1', () => {
    expect(pedalToPlate(['check', 'examples/four-barrel.throttle.yaml', 'examples/two-banks.throttle.yaml']).status).toBe(0);
    const broken = pedalToPlate(['check', 'examples/binding-broken.throttle.yaml']);
    expect(broken.status).toBe(1);
    expect(broken.stdout).toContain('error[toggle-opening]');
  });

  it('reads a file with byte order mark and CRLF from disk', () => {
    const { status, stdout, stderr } = pedalToPlate(['check', join(folder, 'good.throttle.yaml')]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('no errors');
  });

  it('reads standard input, and writes no escape code into a pipe', () => {
    const { status, stdout, stderr } = pedalToPlate(['check', '-'], FAULTY_FILE);
    expect(status).toBe(1);
    expect(stdout + stderr).not.toContain('\u001b');
  });

  it('ends with 2 for a file that is missing, a folder and an endless file', () => {
    expect(pedalToPlate(['check', join(folder, 'god.throttle.yaml')])).toMatchObject({ status: 2, stdout: '' });
    expect(pedalToPlate(['check', join(folder, 'god.throttle.yaml')]).stderr).toContain('good.throttle.yaml`?');
    expect(pedalToPlate(['check', folder]).stderr).toContain('is a folder');
    expect(pedalToPlate(['check', '/dev/zero'])).toMatchObject({ status: 2, stdout: '' });
  });

  it('knows its version', () => {
    expect(pedalToPlate(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it('ends in quiet when its reader goes away', () => {
    const command = `"${process.execPath}" ${main} table examples/two-banks.throttle.yaml --count 20000 --format csv | head -n 1`;
    const { status, stdout, stderr } = spawnSync('sh', ['-c', command], { cwd: root, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^pedal\.travel \[%\],/);
  });
});
