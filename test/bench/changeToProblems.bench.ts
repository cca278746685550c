/**
 * From the change of a text to its problems in the editor, by the extension's own code and a stand-in for the editor: from the event until
 * the problems are handed over. The pause that typing is given is left out: when its timer is set, it is called at once. What else is shown
 * of a text, as lenses and hovers, is asked for later and is not in these times.
 *
 * A person types: another digit, a letter too many, a line more or less, and takes it back. Half of the texts are as the file was, others
 * have a mistake. Every text is another than the one before, and each is solved.
 */
import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { keepAnswers } from '../../extension/answers.ts';
import { publishProblems } from '../../extension/features/liveProblems.ts';
import { changeDocument, openDocument, shownProblems } from '../support/vscode.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';
import { middleAndP95, report, type MiddleAndP95 } from './stopwatch.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

const FILE = 'examples/two-banks.throttle.yaml';
const SEED = 20_811;

const example = readFileSync(FILE, 'utf8');
let linkages = 1;
while (timesAsLarge(example, linkages).length < 10 * example.length) linkages++;
const large = timesAsLarge(example, linkages);

/** A clock that stands still: what was last set on it is called by hand. */
let due: (() => void) | undefined;
Object.assign(globalThis, {
  setTimeout: (run: () => void) => {
    due = run;
    return 1;
  },
  clearTimeout: () => {
    due = undefined;
  },
});

const answers = keepAnswers();
publishProblems(answers);

measure('the example', example, 400, 10);
measure(`a file ten times as large, of ${linkages} linkages behind one pedal`, large, 100, 60);

/** @param budget of 95 % of the changes, ms */
function measure(what: string, text: string, changes: number, budget: number): void {
  const name = `file:///${text.length}.throttle.yaml`;
  const document = openDocument(name, 'throttle-linkage', text);
  due?.();
  const draw = drawing(SEED);
  const before = { heap: 0 };
  const wall: number[] = [];
  const processor: number[] = [];
  const warm = changes / 4;
  for (let i = 0; i < changes + warm; i++) {
    if (i === warm) before.heap = heapUsed();
    const next = i % 2 === 0 ? typed(text, draw) : text;
    const shown = shownProblems.get(name);
    const used = process.cpuUsage();
    const start = performance.now();
    changeDocument(document, next);
    due?.();
    const time = performance.now() - start;
    const { user, system } = process.cpuUsage(used);
    if (shownProblems.get(name) === shown) throw new Error('The problems were not handed over');
    if (i < warm) continue;
    wall.push(time);
    processor.push((user + system) / 1e3);
  }
  const lines = text.split('\n').length - 1;
  const taken = middleAndP95(wall);
  report(`${what}, ${lines} lines`, `${figures(taken)}, ${(taken.p95 / budget).toFixed(2)} × the budget of ${budget} ms`);
  report('  time of the processor, collection of garbage included', figures(middleAndP95(processor)));
  report('  memory more than before these changes', `${((heapUsed() - before.heap) / 1e6).toFixed(1)} MB`);
}

function figures({ median, p95 }: MiddleAndP95): string {
  return `${median.toFixed(1)} ms, p95 ${p95.toFixed(1)}`;
}

/** Of what is in use, bytes. */
function heapUsed(): number {
  collect();
  return process.memoryUsage().heapUsed;
}

/** Numbers from 0 to below 1, the same for the same seed. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function typed(text: string, draw: () => number): string {
  const kind = draw();
  if (kind < 0.5) return otherDigit(text, draw);
  return kind < 0.8 ? anotherLetter(text, draw) : otherLines(text, draw);
}

function otherDigit(text: string, draw: () => number): string {
  const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
  const at = digits[Math.floor(draw() * digits.length)] ?? 0;
  const digit = (Number(text[at]) + 1 + Math.floor(draw() * 9)) % 10;
  return `${text.slice(0, at)}${digit}${text.slice(at + 1)}`;
}

function anotherLetter(text: string, draw: () => number): string {
  const at = Math.floor(draw() * text.length);
  const letter = String.fromCharCode(97 + Math.floor(draw() * 26));
  return text.slice(0, at) + letter + text.slice(at);
}

/** A line taken out, or written twice. */
function otherLines(text: string, draw: () => number): string {
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return (draw() < 0.5 ? lines.toSpliced(at, 1) : lines.toSpliced(at, 0, lines[at] ?? '')).join('\n');
}
