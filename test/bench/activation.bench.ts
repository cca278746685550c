/**
 * Waking up: the packaged bundle is read, evaluated and activated in a fresh process, with a stand-in for the editor in which an example is
 * open; then how long until its problems are shown. Budget: 100 ms to be active. And sizes: the package may have 1 MB.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import process from 'node:process';
import { compileFunction } from 'node:vm';
import type { ExtensionContext } from 'vscode';
import { LANGUAGE_ID } from '../../extension/language.ts';
import { nextTurn } from '../../extension/turns.ts';
import { cpuTime } from '../support/cpuTime.ts';
import * as editor from '../support/vscode.ts';
import { middleAndP95, report } from './stopwatch.ts';

const ACTIVATION_MS = 100;
const PACKAGE_BYTES = 1_000_000;
const PROCESSES = 30;
const EXAMPLE = 'examples/binding-broken.throttle.yaml';
const FOLDER = 'build/package/build/extension/';
const BUNDLE = 'extension.js';

/** ms: from nothing to active, how long the process worked for that, and from there to the first problems. */
interface Waking {
  readonly active: number;
  readonly work: number;
  readonly problems: number;
}

/** In a process that has done nothing else. The editor reads files before it wakes an extension: so does this. */
async function wake(bundle: string): Promise<Waking> {
  const { uri } = editor.openDocument('file:///example.throttle.yaml', LANGUAGE_ID, readFileSync(EXAMPLE, 'utf8'));
  // The editor's own.
  editor.commands.registerCommand('setContext', () => undefined);
  const module = { exports: {} };
  const worked = cpuTime();
  const start = performance.now();
  const run = compileFunction(readFileSync(bundle, 'utf8'), ['exports', 'require', 'module'], { filename: bundle }) as (
    ...given: readonly unknown[]
  ) => void;
  run(module.exports, () => editor, module);
  const { activate } = module.exports as { activate(context: ExtensionContext): void };
  activate({
    subscriptions: [],
    extensionUri: editor.Uri.parse('file:///extension'),
    extension: { packageJSON: {} },
  } as unknown as ExtensionContext);
  const active = performance.now();
  const work = cpuTime() - worked;
  while (!editor.shownProblems.has(uri.toString())) await nextTurn();
  const problems = performance.now();
  if (editor.shownProblems.get(uri.toString())?.length === 0) throw new Error(`${EXAMPLE} has no problems`);
  return { active: active - start, work, problems: problems - active };
}

function inFreshProcess(bundle: string): Waking {
  const { status, stdout } = spawnSync(process.execPath, [process.argv[1]!, bundle], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (status !== 0) throw new Error(`${bundle} did not wake`);
  return JSON.parse(stdout) as Waking;
}

function compare(): void {
  const made = spawnSync(process.execPath, ['scripts/package.mjs'], { stdio: ['ignore', 'ignore', 'inherit'] });
  if (made.status !== 0) throw new Error('the package was not made');
  const runs = Array.from({ length: PROCESSES }, () => inFreshProcess(FOLDER + BUNDLE));
  const active = middleAndP95(runs.map((each) => each.active));
  const work = middleAndP95(runs.map((each) => each.work));
  const problems = middleAndP95(runs.map((each) => each.problems));
  const ratio = (time: number): string => `${time.toFixed(1)} ms, ${(time / ACTIVATION_MS).toFixed(2)} × budget`;
  report(`${BUNDLE}: active, middle of ${PROCESSES} processes`, ratio(active.median));
  report(`${BUNDLE}: active, p95`, ratio(active.p95));
  report(`${BUNDLE}: what the process works for that`, `${ratio(work.median)}; p95 ${ratio(work.p95)}`);
  report(`${BUNDLE}: from there to the problems of an example`, `${problems.median.toFixed(1)} ms, p95 ${problems.p95.toFixed(1)}`);
  const { name, version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly name: string; readonly version: string };
  for (const file of [FOLDER + BUNDLE, `build/${name}-${version}.vsix`]) {
    const { size } = statSync(file);
    report(file, `${(size / 1000).toFixed(1)} kB, ${(size / PACKAGE_BYTES).toFixed(2)} × what the package may have`);
  }
}

const [, , bundle] = process.argv;
if (bundle === undefined) compare();
else console.log(JSON.stringify(await wake(bundle)));
