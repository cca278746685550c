/**
 * From the change of a text to its problems in the editor, by the extension's own code and a stand-in for the editor: from the event until
 * the problems are handed over. The pause that typing is given is left out: when its timer is set, it is called at once. What else is shown
 * of a text, as lenses and hovers, is asked for later and is not in these times.
 *
 * A text that was opened rests first, as it does before a person types: what is looked at then, as single failures, has been looked at, and with
 * it much of what typing runs has been compiled.
 *
 * A person types and takes it back: every other text is as the file was. Each kind of edit is told apart, and then all of them together.
 * Every text is another than the one before; what is the same in both need not be worked out twice. A text that describes the linkage of one of
 * the last two is read and not solved, as most that are taken back are: so what was typed is told by itself, too.
 */
import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { keepAnswers } from '../../extension/answers.ts';
import { publishProblems } from '../../extension/features/liveProblems.ts';
import { changeDocument, openDocument, shownProblems } from '../support/vscode.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';
import { drawing, EDIT_KINDS, type EditKind } from './edits.ts';
import { middleAndP95, report, type MiddleAndP95 } from './stopwatch.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

const FILE = 'examples/two-banks.throttle.yaml';
const SEED = 20_811;

const example = readFileSync(FILE, 'utf8');
let linkages = 1;
while (timesAsLarge(example, linkages).length < 10 * example.length) linkages++;
const large = timesAsLarge(example, linkages);

/**
 * A clock that stands still: what was last set on it for a pause between two key presses is called by hand, and apart from it what waits
 * until typing rests.
 */
const LONGEST_PAUSE_MS = 150;
const [PAUSE, REST] = [1, 2];
const set = new Map<number | undefined, () => void>();
Object.assign(globalThis, {
  setTimeout: (run: () => void, milliseconds = 0) => {
    const timer = milliseconds > LONGEST_PAUSE_MS ? REST : PAUSE;
    set.set(timer, run);
    return timer;
  },
  clearTimeout: (timer?: number) => void set.delete(timer),
});

/** @returns whether there was anything */
function callDue(timer: number): boolean {
  const run = set.get(timer);
  set.delete(timer);
  run?.();
  return run !== undefined;
}

const answers = keepAnswers();
publishProblems(answers);

measureAll('the example', example, 1000, 10);
measureAll(`a file ten times as large, of ${linkages} linkages behind one pedal`, large, 120, 60);

/** @param budget of 95 % of the changes, ms */
function measureAll(what: string, text: string, changes: number, budget: number): void {
  report(`${what}, ${text.split('\n').length - 1} lines; budget ${budget} ms`, '');
  for (const kind of EDIT_KINDS) measure(kind, text, changes, budget);
}

function measure({ name: what, edit }: EditKind, text: string, changes: number, budget: number): void {
  const name = `file:///${what.replace(/[^a-z]+/g, '-')}-${text.length}.throttle.yaml`;
  const document = openDocument(name, 'throttle-linkage', text);
  callDue(PAUSE);
  callDue(REST);
  // What is done at rest is done in pieces, with no pause between them.
  while (callDue(PAUSE));
  const draw = drawing(SEED);
  const wall: number[] = [];
  const processor: number[] = [];
  const warm = changes / 4;
  let count = 0;
  const change = (): void => {
    const shown = shownProblems.get(name);
    const next = count++ % 2 === 0 ? edit(text, draw) : text;
    const used = process.cpuUsage();
    const start = performance.now();
    changeDocument(document, next);
    callDue(PAUSE);
    const time = performance.now() - start;
    const { user, system } = process.cpuUsage(used);
    if (shownProblems.get(name) === shown) throw new Error('The problems were not handed over');
    wall.push(time);
    processor.push((user + system) / 1e3);
  };
  while (count < warm + changes) change();
  wall.splice(0, warm);
  processor.splice(0, warm);
  const taken = middleAndP95(wall);
  const typed = processor.filter((_, i) => (warm + i) % 2 === 0);
  // Apart from the times: to collect all garbage throws away compiled code, too.
  const before = heapUsed();
  const until = count + changes;
  while (count < until) change();
  report(`  ${what}`, `${figures(taken)}, ${(taken.p95 / budget).toFixed(2)} × the budget`);
  report('    time of the processor, collection of garbage included', figures(middleAndP95(processor)));
  report('    of that, the texts typed, without those taken back', figures(middleAndP95(typed)));
  report('    memory more after as many changes', `${((heapUsed() - before) / 1e6).toFixed(1)} MB`);
}

function figures({ median, p95 }: MiddleAndP95): string {
  return `${median.toFixed(1)} ms, p95 ${p95.toFixed(1)}`;
}

/** Of what is in use, bytes. */
function heapUsed(): number {
  collect();
  return process.memoryUsage().heapUsed;
}
