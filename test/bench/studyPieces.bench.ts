/**
 * Studies without a thread of their own share the editor's: how long the pieces are between which it has its turn, for every study of every
 * example and some that are harder. A study goes through the same pieces each time. Of each the least of some runs counts, so that what else
 * the machine does counts least; beside it stands the longest of the first run, in which V8 has compiled little yet.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { solve } from '../../src/solve.ts';
import { studyText, type StudyAsk } from '../../src/studyText.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { middleAndP95, report } from './stopwatch.ts';

/** ms; what a picture takes at 60 a second. */
const AIM_MS = 16;
const RUNS = 5;
/** Longest pieces that are named, of all studies. */
const NAMED = 12;

interface Case {
  readonly name: string;
  readonly text: string;
  readonly ask: StudyAsk;
}

interface Piece {
  readonly ms: number;
  /** Number of the piece, and what the study said as it ended. */
  readonly at: string;
}

const read = (name: string): string => readFileSync(`examples/${name}`, 'utf8');
const FIT: StudyAsk = { kind: 'fit', beside: [['as-built.csv', { kind: 'text', text: read('as-built.csv') }]] };

function casesOf(name: string, text: string): readonly Case[] {
  const { definition } = solve(text);
  const [figure, plates] = [definition?.lets[0], definition?.plates[0]];
  const question = { change: figure?.name ?? '', demand: `at(50%, ${plates?.lever.name ?? ''}.opening) == 35 deg` };
  const asks: readonly StudyAsk[] = [{ kind: 'tune' }, { kind: 'tolerance' }, FIT, { kind: 'solve', question }];
  return asks.map((ask) => ({ name: `${ask.kind} of ${name}`, text, ask }));
}

const tune = read('tune-a-bellcrank.throttle.yaml');
const cases = [
  ...readdirSync('examples')
    .filter((file) => file.endsWith('.yaml'))
    .flatMap((file) => casesOf(file.replace('.throttle.yaml', ''), read(file))),
  {
    name: 'tune of what cannot be kept',
    text: tune.replace('opens fully: at(100%, shaft.opening) >= 81 deg', 'opens fully: at(100%, shaft.opening) >= 85 deg'),
    ask: { kind: 'tune' },
  },
  {
    name: 'fit of pedal efforts',
    text: read('as-built.throttle.yaml').replace(
      /measured:[^]*/,
      'measured:\n  fit: [return_front.preload, main.friction]\n  runs:\n    bench:\n      columns: [pedal.travel, pedal.effort, pedal.release]\n      rows:\n' +
        [10, 25, 40, 55, 70, 85].map((at, i) => `        - [${at} %, ${14 + i} N, ${8 + i / 2} N]\n`).join(''),
    ),
    ask: FIT,
  },
] satisfies readonly Case[];

const all: Piece[] = [];
const firsts: Piece[] = [];
for (const { name, text, ask } of cases) {
  // As in the editor, which has found what is wrong with a text before anything is asked of it.
  solve(text);
  const first = piecesOf(name, text, ask);
  if (first === undefined) continue;
  let least = first;
  for (let run = 1; run < RUNS; run++) {
    solve(text);
    const again = piecesOf(name, text, ask)!;
    least = least.map((piece, i) => ({ ...piece, ms: Math.min(piece.ms, again[i]!.ms) }));
  }
  all.push(...least);
  firsts.push(...first);
  report(name, `${figures(least)}; in the first run ${longestOf(first).toFixed(1)} ms`);
}
report('all of them', `${figures(all)}; in the first run ${longestOf(firsts).toFixed(1)} ms`);
console.log('\nThe longest:');
tell(all);
console.log('\nThe longest of the first runs:');
tell(firsts);

/** Undefined where there is nothing to study. */
function piecesOf(name: string, text: string, ask: StudyAsk): readonly Piece[] | undefined {
  const found: Piece[] = [];
  const steps = studyText(text, ask);
  for (;;) {
    const [start, cpuStart] = [performance.now(), cpuTime()];
    const { done, value } = steps.next();
    // The one counts what else the machine did, the other what V8 did beside.
    const ms = Math.min(performance.now() - start, cpuTime() - cpuStart);
    const said = done === true ? 'the end' : `${value.note} ${(value.share * 100).toFixed(0)} %`;
    found.push({ ms, at: `${name}, piece ${found.length + 1}, until ${said}` });
    if (done === true) return value.kind === 'found' ? found : undefined;
  }
}

function figures(pieces: readonly Piece[]): string {
  const longest = longestOf(pieces);
  const whole = pieces.reduce((sum, { ms }) => sum + ms, 0);
  const { p95 } = middleAndP95(pieces.map(({ ms }) => ms));
  return `${pieces.length} pieces in ${whole.toFixed(0)} ms: longest ${longest.toFixed(1)} ms, ${(longest / AIM_MS).toFixed(2)} of ${AIM_MS} ms; p95 ${p95.toFixed(2)} ms`;
}

function longestOf(pieces: readonly Piece[]): number {
  return pieces.reduce((most, { ms }) => Math.max(most, ms), 0);
}

function tell(pieces: readonly Piece[]): void {
  for (const { ms, at } of [...pieces].sort((a, b) => b.ms - a.ms).slice(0, NAMED)) report(`  ${at}`, `${ms.toFixed(1)} ms`);
}
