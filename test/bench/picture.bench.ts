/**
 * What the view waits for: answers from text and the message made of them, for the largest example and for one ten times as large, against
 * the budgets from change event to picture data posted. Posted first is the drawing. Beside it stands when all that can be seen is there, with
 * the report and the charts in sight: the four dearest, which fill a window 900 px high; and when the last of what follows is, where nothing
 * else comes.
 *
 * A message is written out as the editor does it within the call: as text, with the series beside it (from memory). A person types and takes
 * it back, as in `changeToProblems.bench.ts`: every text is another than the one before, and the first has rested, single failures looked at.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { showAnswers, showFirst, showRest } from '../../src/picture/showAnswers.ts';
import type { ChartId } from '../../src/protocol/charts.ts';
import { solve } from '../../src/solve.ts';
import { drawing, EDIT_KINDS, type EditKind } from './edits.ts';
import { report } from './stopwatch.ts';

/** ms, p95 from change event to picture data posted. */
const BUDGET = 16;
const TENFOLD_BUDGET = 60;
/** ms, what the picture alone should take of it. */
const SHARE = 3;
const IN_SIGHT: ReadonlySet<ChartId> = new Set(['signal', 'torques', 'margins', 'effort']);
const SEED = 20_811;

const [largest] = readdirSync('examples')
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => ({ name, text: readFileSync(`examples/${name}`, 'utf8') }))
  .sort((one, other) => other.text.length - one.text.length);
if (largest === undefined) throw new Error('there is no example');

/** The levers, rods, plates and springs that one pedal's cable moves, as often, each bank behind the one before it by a coupling. */
function tenfold(text: string, times: number): string {
  const names = [...text.matchAll(/^ {2}([a-z][a-z0-9_]*):/gm)].map(([, name = '']) => name);
  const own = new Set(names.filter((name) => name !== 'pedal' && name !== 'main'));
  const [head = '', ...blocks] = text.split(/^(?=[a-z_]+:)/m);
  const copies = (block: string): string => {
    const [key = '', ...lines] = block.split('\n');
    if (!/^(?:let|points|levers|rods|plates|sensors|springs):$/.test(key)) return key.startsWith('require') ? '' : block;
    const entries = lines.join('\n').split(/^(?= {2}[a-z])/m);
    const renamed = (entry: string, i: number): string =>
      entry.replace(/[a-z][a-z0-9_]*/g, (word) => (i > 0 && own.has(word) ? `${word}_${i}` : word));
    const all = Array.from({ length: times }, (_, i) =>
      entries.map((entry) => (i > 0 && entry.startsWith('  pedal:') ? '' : renamed(entry, i))).join(''),
    );
    return `${key}\n${all.map((each) => `${each.trimEnd()}\n`).join('')}\n`;
  };
  const couplings = Array.from({ length: times - 1 }, (_, i) => {
    const crank = (k: number): string => (k === 0 ? 'bellcrank' : `bellcrank_${k}`);
    return `  joined_${i}: {from: ${crank(i)}, to: ${crank(i + 1)}}\n`;
  });
  return `${head}${blocks.map(copies).join('')}couplings:\n${couplings.join('')}`;
}

/** ms from the change on, but for the first two. */
interface Times {
  /** Of the processor until the drawing is posted, collection of garbage included. */
  readonly processor: readonly number[];
  /** What the drawing and its message take by themselves. */
  readonly drawing: readonly number[];
  readonly drawn: readonly number[];
  readonly seen: readonly number[];
  readonly all: readonly number[];
}

function timesOf({ edit }: EditKind, text: string, rounds: number): Times {
  const times = { processor: [] as number[], drawing: [] as number[], drawn: [] as number[], seen: [] as number[], all: [] as number[] };
  const draw = drawing(SEED);
  for (let i = 0; i < rounds + rounds / 4; i++) {
    const next = i % 2 === 0 ? edit(text, draw) : text;
    const used = process.cpuUsage();
    const began = performance.now();
    const answers = solve(next);
    // Where the levers stand is worked out when it is first asked for.
    for (const at of answers.study?.travel.samples ?? []) answers.study!.travel.poseAt(at);
    const solved = performance.now();
    const first = showFirst(answers, false);
    written(first);
    const drawn = performance.now();
    const { user, system } = process.cpuUsage(used);
    let seen: number | undefined;
    for (const piece of showRest(answers, first?.coming ?? [], () => IN_SIGHT)) {
      if (piece?.kind === 'seen') seen = performance.now();
      else written(piece);
    }
    const all = performance.now();
    if (i < rounds / 4) continue;
    times.processor.push((user + system) / 1e3);
    times.drawing.push(drawn - solved);
    times.drawn.push(drawn - began);
    times.seen.push((seen ?? all) - began);
    times.all.push(all - began);
  }
  return times;
}

/** A message as text, with its series beside it. */
function written(message: object | undefined): number {
  if (message === undefined) return 0;
  const series: ArrayBufferLike[] = [];
  const text = JSON.stringify(message, (_, value: unknown) =>
    value instanceof Float64Array ? { series: series.push(value.buffer) } : value,
  );
  return text.length + series.reduce((sum, { byteLength }) => sum + byteLength, 0);
}

const both = (times: readonly number[]): string => `${at(times, 0.5).toFixed(1)} ms, p95 ${at(times, 0.95).toFixed(1)}`;
const at = (times: readonly number[], share: number): number => [...times].sort((a, b) => a - b)[Math.floor(times.length * share)]!;

function reportTimes(what: string, text: string, rounds: number, budget: number): void {
  const answers = solve(text);
  const shown = showAnswers(answers);
  if (shown === undefined || answers.study === undefined || answers.problems.length > 0)
    throw new Error(`${what} is not solved: ${JSON.stringify(answers.problems.slice(0, 2))}`);
  for (const _ of answers.failures()?.work('closing') ?? []);
  report(
    `${what}: ${text.split('\n').length - 1} lines, ${shown.picture.levers.length} levers, ${shown.picture.stations.length} stations; budget ${budget} ms`,
    '',
  );
  for (const kind of EDIT_KINDS) {
    const times = timesOf(kind, text, rounds);
    const late = at(times.drawn, 0.95);
    report(`  ${kind.name}`, `${both(times.drawn)}, ${(late / budget).toFixed(2)} × the budget`);
    report('    time of the processor until then', both(times.processor));
    report(
      '    what is drawn alone',
      `${both(times.drawing)}${budget === BUDGET ? `, ${(at(times.drawing, 0.5) / SHARE).toFixed(2)} × the aim of ${SHARE} ms` : ''}`,
    );
    report('    with the report and the charts in sight', both(times.seen));
    report('    with all that follows, without a pause', both(times.all));
  }
  const curves = shown.charts.reduce((sum, chart) => sum + chart.curves.length, 0);
  const first = showFirst(answers, false);
  report(
    '  its message',
    `${(written(first) / 1000).toFixed(0)} kB of ${(written(shown) / 1000).toFixed(0)} kB with ${curves} curves; the text is ${(text.length / 1000).toFixed(1)} kB`,
  );
}

reportTimes(largest.name, largest.text, 400, BUDGET);
reportTimes(`ten times ${largest.name}`, tenfold(largest.text, 10), 80, TENFOLD_BUDGET);
