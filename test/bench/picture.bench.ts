/**
 * What the view waits for: answers from text and the message made of them, for the largest example and for one ten times as large, against
 * the budgets from change event to picture data posted; and beside it when the last of what follows is posted, where nothing else comes.
 *
 * Posted first is the drawing with the report, and the charts that are in sight: the four dearest, which fill a window 900 px high. Its
 * message is written out as the editor does it within the call: as text, with the series beside it (from memory). A person types and takes
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

interface Times {
  /** Of the processor for both, collection of garbage included. */
  readonly processor: readonly number[];
  readonly solve: readonly number[];
  /** The drawing, the report and the charts in sight, with the message of them. */
  readonly show: readonly number[];
  /** What follows. */
  readonly rest: readonly number[];
}

function timesOf({ edit }: EditKind, text: string, rounds: number): Times {
  const times = { processor: [] as number[], solve: [] as number[], show: [] as number[], rest: [] as number[] };
  const draw = drawing(SEED);
  for (let i = 0; i < rounds + rounds / 4; i++) {
    const next = i % 2 === 0 ? edit(text, draw) : text;
    const used = process.cpuUsage();
    const began = performance.now();
    const answers = solve(next);
    const solved = performance.now();
    const first = showFirst(answers, IN_SIGHT);
    written(first);
    const shown = performance.now();
    const { user, system } = process.cpuUsage(used);
    for (const piece of showRest(answers, first?.coming ?? [], () => IN_SIGHT)) written(piece);
    const all = performance.now();
    if (i < rounds / 4) continue;
    times.processor.push((user + system) / 1e3);
    times.solve.push(solved - began);
    times.show.push(shown - solved);
    times.rest.push(all - shown);
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
    const whole = times.solve.map((time, i) => time + times.show[i]!);
    const late = at(whole, 0.95);
    report(`  ${kind.name}`, `${at(whole, 0.5).toFixed(1)} ms, p95 ${late.toFixed(1)}, ${(late / budget).toFixed(2)} × the budget`);
    report(
      `    time of the processor until then`,
      `${at(times.processor, 0.5).toFixed(1)} ms, p95 ${at(times.processor, 0.95).toFixed(1)}`,
    );
    const showing = at(times.show, 0.5);
    report(
      '    the picture alone',
      `${showing.toFixed(2)} ms, p95 ${at(times.show, 0.95).toFixed(2)}; ${(showing / at(times.solve, 0.5)).toFixed(2)} × its solve${budget === BUDGET ? `, ${(showing / SHARE).toFixed(2)} × the aim of ${SHARE} ms` : ''}`,
    );
    report('    what follows, without a pause', `${at(times.rest, 0.5).toFixed(1)} ms, p95 ${at(times.rest, 0.95).toFixed(1)} later`);
  }
  const curves = shown.charts.reduce((sum, chart) => sum + chart.curves.length, 0);
  const first = showFirst(answers, IN_SIGHT);
  report(
    '  its message',
    `${(written(first) / 1000).toFixed(0)} kB of ${(written(shown) / 1000).toFixed(0)} kB with ${curves} curves; the text is ${(text.length / 1000).toFixed(1)} kB`,
  );
}

reportTimes(largest.name, largest.text, 80, BUDGET);
reportTimes(`ten times ${largest.name}`, tenfold(largest.text, 10), 20, TENFOLD_BUDGET);
