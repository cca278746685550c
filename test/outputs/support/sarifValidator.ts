/** The validator of SARIF logs that comes as an npm package, as a process. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';

/** What it objects to in a log, each as `error CODE: words` or `warning CODE: words`, with the rest of its report where it gave up. */
export function objectionsTo(log: string): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'pedal-to-plate-sarif-'));
  try {
    const [asked, answered] = [join(folder, 'asked.sarif'), join(folder, 'answered.sarif')];
    writeFileSync(asked, log);
    const { status, stdout, stderr } = spawnSync(program, ['validate', asked, '-o', answered, '--level', 'Error;Warning'], {
      encoding: 'utf8',
      // It brings all it needs but the tables of languages.
      env: { ...process.env, DOTNET_SYSTEM_GLOBALIZATION_INVARIANT: '1', HOME: folder },
    });
    if (status !== 0) return [`error: ended with ${String(status)}: ${stdout}${stderr}`];
    const [run] = (JSON.parse(readFileSync(answered, 'utf8')) as Report).runs;
    const whole = run?.invocations?.every(({ executionSuccessful }) => executionSuccessful) ?? false;
    const told = run?.results.map(({ ruleId, level = 'warning', message }) => `${level} ${ruleId}: ${JSON.stringify(message)}`) ?? [];
    return whole ? told : [...told, `error: gave up: ${stdout}`];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Report {
  readonly runs: readonly {
    readonly invocations?: readonly { readonly executionSuccessful: boolean }[];
    readonly results: readonly { readonly ruleId: string; readonly level?: string; readonly message: unknown }[];
  }[];
}

const program = locate();

/** The package makes its program executable in an install script, which npm runs only where it is allowed to. */
function locate(): string {
  const path: unknown = createRequire(import.meta.url)('@microsoft/sarif-multitool');
  if (typeof path !== 'string') throw new Error('the validator does not say where it is');
  if (process.platform !== 'win32') chmodSync(path, 0o755);
  return path;
}
