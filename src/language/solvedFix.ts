/**
 * Works out an offered fix: solves for the figure, rounds it to what a workshop works to on the side that passes, and solves the whole text
 * with that edit. It is a fix only where the finding is then gone or milder and nothing new is an error.
 */
import type { Replacement } from '../definition/problem.ts';
import { FINEST, roundFigures } from '../definition/quantity/roundFigures.ts';
import { listed } from '../findings/words.ts';
import { figureText } from '../outputs/figure.ts';
import { solve, type Answers } from '../solve.ts';
import { solveFor, type Solutions } from '../studies/solveFor.ts';
import { boundsFor, type SearchBounds } from './fixBounds.ts';
import { rootsOf } from './fixRoots.ts';
import { tryEdits, type Standing, type Trial } from './fixTrial.ts';
import { unknownAt, writtenAs, type Unknown } from './fixUnknown.ts';
import { goalOf, outcomeText, resultOf, wordsOf } from './fixWords.ts';
import { offersBeside, planOf, type OfferedFix, type Plan } from './offeredFixes.ts';

export type SolvedFix =
  | {
      readonly kind: 'solved';
      /** With the figure and what comes of it, e.g. `Lengthen link to 73.4 mm: shaft opens 82°`. */
      readonly title: string;
      readonly edits: readonly Replacement[];
      /** Whether the finding is gone, and not only milder. */
      readonly mends: boolean;
      /** The figure that is written, SI; the first of several. */
      readonly value: number;
      /** All figures that are written, SI; one mostly. */
      readonly figures: readonly Written[];
    }
  | {
      readonly kind: 'unsolved';
      /** Why no figure does it; a sentence without a full stop. */
      readonly reason: string;
    };

export interface Written {
  /** Path. */
  readonly writes: string;
  readonly value: number;
}

/** What does the solving; replaced where it is counted, or done piece by piece. */
export interface Solvers {
  readonly solve: typeof solve;
  solveFor(...asked: Parameters<typeof solveFor>): Solutions;
}

/**
 * @param answers of the text as it is now, which may have changed since the fix was offered
 * @param before paths of the figures that were written already and go with it
 */
export function solveFix(
  answers: Answers,
  offered: OfferedFix,
  solvers: Solvers = { solve, solveFor },
  before: readonly string[] = [],
): SolvedFix {
  const plan = planOf(answers, offered);
  if (plan === undefined) return { kind: 'unsolved', reason: 'The text has changed, and this is no longer found' };
  const unknown = unknownAt(plan.study, offered.writes);
  const bounds = boundsFor(plan.study.definition, offered.writes, unknown.dimension, unknown.present);
  const distance = (value: number): number => Math.abs(value - unknown.present);
  const tries: Tried[] = [];
  let nearest: Extract<Solutions, { kind: 'solved' }>['nearest'];
  // Near the present figure first: there the search is fine, and mostly it ends there.
  for (const search of searchesOf(plan, unknown.present, bounds)) {
    const solutions = rootsOf(plan, unknown.present, search, solvers.solveFor);
    if (solutions.kind !== 'solved') return { kind: 'unsolved', reason: notFollowing(plan, solutions.kind) };
    nearest = solutions.nearest;
    const roots = solutions.roots.map(({ value }) => value).sort((one, other) => distance(one) - distance(other));
    for (const root of roots.slice(0, MOST_ROOTS)) {
      if (tries.some((tried) => Math.abs(tried.root - root) <= SAME_ROOT * (bounds.to - bounds.from))) continue;
      const tried = bestNear(answers, plan, unknown, root, solvers);
      if (tried === undefined)
        return { kind: 'unsolved', reason: `${capital(wordsOf(offered.writes).figure)} cannot be written into this text` };
      const best = withMore(answers, plan, unknown, tried, solvers, before);
      if (best.standing !== 'refused') return solved(plan, best);
      tries.push(tried);
    }
  }
  const [first] = tries;
  return { kind: 'unsolved', reason: first === undefined ? noRoot(plan, unknown, bounds, nearest) : refused(plan, unknown, first) };
}

/** Share of the bounds in which is searched, with the values that are taken there first. */
const SEARCHES = [
  { share: 1 / 8, starts: 25 },
  { share: 1, starts: 65 },
] as const;

function searchesOf({ aim }: Plan, present: number, { from, to }: SearchBounds): readonly (SearchBounds & { readonly starts?: number })[] {
  if (aim.outcome.kind === 'itself') return [{ from, to }];
  return SEARCHES.map(({ share, starts }) => ({ from: present + (from - present) * share, to: present + (to - present) * share, starts }));
}

/** Relative to the bounds; two searches find one root alike but for rounding. */
const SAME_ROOT = 1e-9;

/** A second or third value that would do is tried only where a nearer one makes something else worse. */
const MOST_ROOTS = 3;

interface Tried extends Trial {
  /** What was solved for, SI; it is written rounded. */
  readonly root: number;
  readonly figures: readonly Written[];
  readonly edits: readonly Replacement[];
}

/** The roundest figure near a root that mends all, else the best that there is; undefined where none can be written. */
function bestNear(
  answers: Answers,
  { aim, finding }: Plan,
  unknown: Unknown,
  root: number,
  { solve: solveText }: Solvers,
): Tried | undefined {
  let best: Tried | undefined;
  const most = aim.stay === 'below' ? aim.target() * (1 + SAME) : Infinity;
  for (let finer = 0; finer <= FINEST; finer++) {
    for (const value of roundFigures(root, unknown.dimension, unknown.unit, finer)) {
      const edit = value > most ? undefined : unknown.edit(answers.text, value);
      if (edit === undefined) continue;
      const tried = { ...tryEdits(answers, [edit], finding, solveText), root, figures: [{ writes: unknown.path, value }], edits: [edit] };
      if (tried.standing === 'gone') return tried;
      if (best === undefined || RANK[tried.standing] < RANK[best.standing]) best = tried;
    }
  }
  return best;
}

const SAME = 1e-12;

const RANK: Readonly<Record<Standing, number>> = { gone: 0, 'gone-with-warnings': 1, milder: 2, refused: 3 };

/** With a second and third figure, each solved for in the text with those before it, where that does it and what was tried does not. */
function withMore(answers: Answers, plan: Plan, unknown: Unknown, tried: Tried, solvers: Solvers, before: readonly string[]): Tried {
  const written = [...before, unknown.path];
  if (plan.aim.goesOn !== true || tried.standing === 'gone' || written.length >= MOST_FIGURES) return tried;
  for (const offer of offersBeside(tried.answers, plan, written)) {
    const next = solveFix(tried.answers, offer, solvers, written);
    if (next.kind !== 'solved') continue;
    const figures = [...tried.figures, ...next.figures];
    // Its edits are of the text with the figures before: each is written anew into the text as it is.
    const edits = figures.map(({ writes, value }) => unknownAt(plan.study, writes).edit(answers.text, value));
    if (!edits.every((edit) => edit !== undefined)) continue;
    const both: Tried = { ...tryEdits(answers, edits, plan.finding, solvers.solve), root: tried.root, figures, edits };
    if (RANK[both.standing] < RANK[tried.standing]) return both;
  }
  return tried;
}

/** Figures that one fix writes at most. */
const MOST_FIGURES = 3;

function solved({ offer, aim, finding, study }: Plan, { figures, edits, answers, standing, warned }: Tried): SolvedFix {
  const mends = standing !== 'milder';
  const told =
    resultOf(answers, offer.part, aim.outcome, finding) ?? (mends ? goalOf(offer.code, offer.part, aim.outcome, offer.writes) : undefined);
  const notes = [...(mends ? [] : ['better, not yet enough']), ...(warned === undefined ? [] : [`but then ${warned}`])].join(', ');
  const changes = figures.map(({ writes, value }, i) => {
    const unknown = unknownAt(study, writes);
    const words = wordsOf(writes);
    return `${i > 0 ? words.figure : value >= unknown.present ? words.up : words.down} to ${writtenAs(value, unknown)}`;
  });
  const title = `${listed(changes)}${told === undefined ? '' : `: ${told}`}`;
  const [first] = figures;
  return { kind: 'solved', title: notes === '' ? title : `${title} (${notes})`, edits, mends, value: first?.value ?? NaN, figures };
}

function refused({ offer }: Plan, unknown: Unknown, { root, why }: Tried): string {
  return `${capital(wordsOf(offer.writes).figure)} would have to be ${writtenAs(root, unknown, ROUGH)}, but then: ${why ?? 'the finding stays'}`;
}

function notFollowing({ offer, aim }: Plan, kind: Exclude<Solutions['kind'], 'solved'>): string {
  const { figure } = wordsOf(offer.writes);
  switch (kind) {
    case 'empty-bounds':
      return `There is no room to change ${figure}`;
    case 'unknown-dimension':
      return `The linkage does not turn on ${figure}`;
    case 'stopped':
      return 'It was stopped';
    case 'unknown-column':
      return aim.outcome.kind === 'itself' ? 'It has no value' : `${aim.outcome.column} has no value`;
  }
}

function noRoot(
  { offer, aim, study }: Plan,
  unknown: Unknown,
  { from, to }: SearchBounds,
  nearest: { readonly value: number; readonly outcome: number } | undefined,
): string {
  const figure = `${wordsOf(offer.writes).figure} between ${writtenAs(from, unknown, ROUGH)} and ${writtenAs(to, unknown, ROUGH)}`;
  if (nearest === undefined || !Number.isFinite(nearest.outcome)) return `The linkage cannot be assembled with ${figure}`;
  const { outcome } = aim;
  const reached =
    outcome.kind === 'itself'
      ? `${writtenAs(nearest.value, unknown, ROUGH)} comes nearest`
      : `${writtenAs(nearest.value, unknown, ROUGH)} comes nearest: ${outcomeText(outcome, figureText({ value: nearest.outcome, dimension: study.columns.get(outcome.column)?.dimension ?? 'number' }))}`;
  return `No value of ${figure} does it; ${reached}`;
}

/** Significant digits of a figure that is only told. */
const ROUGH = 5;

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
