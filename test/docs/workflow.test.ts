/** The example of a workflow: its shape, and its shell lines run on a repository of their own. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';

interface Step {
  readonly name: string;
  readonly id?: string;
  readonly if?: string;
  readonly uses?: string;
  readonly run?: string;
  readonly with?: Readonly<Record<string, unknown>>;
}

const document = parseDocument(readFileSync(new URL('../../docs/checkLinkages.workflow.yml', import.meta.url), 'utf8'));
const { steps } = (document.toJS() as { jobs: { check: { steps: Step[] } } }).jobs.check;
const stepNamed = (name: string): Step => steps.find((step) => step.name === name)!;

describe('the workflow', () => {
  it('is YAML without a mistake', () => {
    expect([...document.errors, ...document.warnings]).toEqual([]);
  });

  it('gets the files, finds the changed ones, gets and builds the program, checks, uploads', () => {
    expect(steps.map(({ name }) => name)).toEqual([
      'Get the files',
      'Find changed throttle files',
      'Get Pedal to Plate',
      'Set up Node',
      'Build Pedal to Plate',
      'Check',
      'Upload the findings',
    ]);
    for (const { run, uses } of steps) expect(run === undefined).toBe(uses !== undefined);
  });

  it('asks for history, and for no more rights than it needs', () => {
    expect(stepNamed('Get the files').with?.['fetch-depth']).toBe(0);
    expect((document.toJS() as { permissions: unknown }).permissions).toEqual({ contents: 'read', 'security-events': 'write' });
  });

  it('puts nothing that a pull request may choose into a shell line', () => {
    for (const { run } of steps) expect(run ?? '').not.toContain('${{');
  });
});

describe('its shell lines', () => {
  let folder = '';
  let temporary = '';
  const inFolder = (
    command: string,
    args: readonly string[],
    environment: NodeJS.ProcessEnv = {},
  ): { status: number | null; out: string } => {
    // No configuration but the repository's own.
    const env = { ...process.env, HOME: temporary, GIT_CONFIG_NOSYSTEM: '1', RUNNER_TEMP: temporary, ...environment };
    const { status, stdout, stderr } = spawnSync(command, args, { cwd: folder, encoding: 'utf8', env });
    return { status, out: stdout + stderr };
  };
  const git = (...args: string[]): string => {
    const { status, out } = inFolder('git', ['-c', 'user.name=a', '-c', 'user.email=a@b.example', '-c', 'commit.gpgsign=false', ...args]);
    expect(status, out).toBe(0);
    return out.trim();
  };
  const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
  /** As the host runs it: a shell that stops at the first line that fails. */
  const runStep = (name: string, environment: NodeJS.ProcessEnv): { status: number | null; out: string } =>
    inFolder('bash', ['-e', '-c', stepNamed(name).run ?? ''], environment);
  const findChanged = (base: string): { count: string; names: string[] } => {
    const output = join(temporary, 'output');
    writeFileSync(output, '');
    const { status, out } = runStep('Find changed throttle files', { BASE: base, GITHUB_OUTPUT: output });
    expect(status, out).toBe(0);
    const names = readFileSync(join(temporary, 'changed'), 'utf8').split('\0').slice(0, -1);
    return { count: readFileSync(output, 'utf8'), names };
  };

  let base = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pedal-to-plate-repository-'));
    temporary = mkdtempSync(join(tmpdir(), 'pedal-to-plate-temporary-'));
    git('init', '--quiet', '--initial-branch', 'main');
    mkdirSync(join(folder, 'shop'));
    for (const name of ['kept.throttle.yaml', 'gone.throttle.yaml', 'changed.throttle.yaml', 'notes.yaml', 'shop/moved.throttle.yaml'])
      write(name, `# ${name}\n`.repeat(9));
    git('add', '.');
    git('commit', '--quiet', '-m', 'base');
    git('checkout', '--quiet', '-b', 'branch');
    write('changed.throttle.yaml', '# otherwise\n');
    write('notes.yaml', '# otherwise\n');
    write('shop/new one\'s "quoted".throttle.yaml', '# new\n');
    write('shop/two\nlines é.throttle.yaml', '# new\n');
    write('-dash.throttle.yaml', '# new\n');
    git('rm', '--quiet', 'gone.throttle.yaml');
    git('mv', 'shop/moved.throttle.yaml', 'shop/elsewhere.throttle.yaml');
    git('add', '.');
    git('commit', '--quiet', '-m', 'branch');
    // What others do on the base meanwhile is none of the branch's changes.
    git('checkout', '--quiet', 'main');
    write('kept.throttle.yaml', '# by others\n');
    git('commit', '--quiet', '-a', '-m', 'others');
    base = git('rev-parse', 'HEAD');
    git('checkout', '--quiet', 'branch');
  });
  afterAll(() => {
    for (const each of [folder, temporary]) rmSync(each, { recursive: true, force: true });
  });

  const CHANGED = [
    '-dash.throttle.yaml',
    'changed.throttle.yaml',
    'shop/elsewhere.throttle.yaml',
    'shop/new one\'s "quoted".throttle.yaml',
    'shop/two\nlines é.throttle.yaml',
  ];

  it('find what the branch has added, changed or moved, in any folder and under any name, and nothing else', () => {
    const { count, names } = findChanged(base);
    expect([...names].sort()).toEqual(CHANGED);
    expect(count).toBe('count=5\n');
  });

  it('find nothing where nothing has changed', () => {
    expect(findChanged('HEAD')).toEqual({ count: 'count=0\n', names: [] });
  });

  it('fail where the base is not there', () => {
    expect(runStep('Find changed throttle files', { BASE: 'f00d', GITHUB_OUTPUT: join(temporary, 'output') }).status).not.toBe(0);
  });

  it.each([0, 1, 2])('check all of them twice, keep what is written, and end with the code of the check: %i', (code) => {
    findChanged(base);
    const program = join(temporary, 'program.mjs');
    writeFileSync(program, `console.log(JSON.stringify(process.argv.slice(2))); process.exitCode = ${code};`);
    const summary = join(temporary, 'summary');
    writeFileSync(summary, 'before\n');
    const { status, out } = runStep('Check', { PROGRAM: program, GITHUB_STEP_SUMMARY: summary });
    expect(status, out).toBe(code);
    const [before, markdown] = readFileSync(summary, 'utf8').split('\n');
    expect(before).toBe('before');
    const asked = (text: string): string[] => JSON.parse(text) as string[];
    expect(asked(markdown ?? '').slice(0, 4)).toEqual(['check', '--format', 'markdown', '--']);
    const sarif = asked(readFileSync(join(temporary, 'throttle.sarif'), 'utf8'));
    expect(sarif.slice(0, 4)).toEqual(['check', '--format', 'sarif', '--']);
    expect(sarif.slice(4).sort()).toEqual(CHANGED);
  });
});
