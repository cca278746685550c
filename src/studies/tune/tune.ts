/**
 * From the curve that is wanted to the dimensions that give it: several answers, best first, each held against all that must be kept.
 *
 * The search follows the curve and the angles that it can watch at each station (`search.ts`). What it finds is brought onto the steps
 * that free values have, written with the digits that a file gets, and judged on the solved file. An answer that falls short of a demand
 * is mended by least squares over the curve and all demands together. The same file and seed give the same answers.
 */
import type { Study } from '../../findings/study.ts';
import { greatestOf } from '../../travel/extremes.ts';
import { saying } from '../saying.ts';
import { answerOf, byMerit, distinct, keepsAll, type SolveWith, type TunedAnswer } from './answers.ts';
import { demandsOf } from './demands.ts';
import { designsOf } from './designs.ts';
import { mend } from './mend.ts';
import { obstaclesOf, type Obstacle } from './obstacles.ts';
import { stepped } from './onSteps.ts';
import { measure, search, type Effort, type Progress } from './search.ts';
import { settingOf } from './setting.ts';
import { createTrial, type Trial } from './trial.ts';

export interface Tuned {
  /** Column that follows the curve. */
  readonly column: string;
  /** SI: as near to the curve as this is on it. */
  readonly enough: number;
  /** As the file stands; undefined where it has no value somewhere along the curve. */
  readonly before: { readonly error: number; readonly at: number } | undefined;
  /** Best first: those that keep all demands, nearest to the curve, then those that fall short least. Empty where nothing can be assembled. */
  readonly answers: readonly TunedAnswer[];
  /** Where the best answer is off the curve: demands on angles without one of which it would come nearer, and how near. */
  readonly obstacles: readonly Obstacle[];
}

export interface TuneOptions {
  readonly seed: number;
  /** Rounds of the search; each is some 300 looks and up to 12 descents. */
  readonly rounds: number;
  /** Answers wanted, at most. */
  readonly answers: number;
}

export const TUNE_DEFAULTS: TuneOptions = { seed: 1, rounds: 24, answers: 3 };

/** Undefined where the file cannot be tuned: `whyNotTuned` says why. Yields as it goes. */
export function* tune(
  study: Study,
  solveWith: SolveWith,
  { seed, rounds, answers: most }: TuneOptions = TUNE_DEFAULTS,
): Generator<Progress, Tuned | undefined> {
  const { definition } = study;
  const demands = demandsOf(definition);
  const setting = settingOf(study, demands);
  if (setting === undefined) return undefined;
  const { trialCase, enough, lever } = setting;
  const trial = createTrial(trialCase);
  const effort: Effort = { seed, rounds, enough, answers: most };
  const drawn = Float64Array.from(trialCase.free, ({ index, from, to }) =>
    within((study.travel.build.values[index]! - from) / (to - from)),
  );
  const begun = (): Progress => ({ done: 0, of: rounds, best: undefined });
  const designs = lever === undefined ? [drawn] : [drawn, ...(yield* saying(designsOf(trialCase, lever), begun))];
  const found = yield* search(trial, designs, effort);
  const looked: TunedAnswer[] = [];
  const searched = (): Progress => ({ done: rounds, of: rounds, best: bestOf(looked, enough) });
  let lookedAt = 0;
  for (const each of found) {
    const candidate = yield* saying(stepped(trial, each), searched);
    if (!Number.isFinite(candidate.error)) continue;
    if (lookedAt++ === LOOKED_AT) break;
    const first = yield* saying(answerOf(trial, definition, demands, solveWith, candidate.x), searched);
    looked.push(first);
    yield searched();
    if (keepsAll(first)) {
      if (looked.filter((each) => keepsAll(each) && each.error <= enough).length >= most) break;
      continue;
    }
    const mended = yield* saying(mend(trial, demands, solveWith, candidate.x), searched);
    if (mended === undefined) continue;
    const { x } = yield* saying(stepped(trial, measure(trial, mended)), searched);
    looked.push(yield* saying(answerOf(trial, definition, demands, solveWith, x), searched));
    yield searched();
  }
  const answers = distinct(looked.filter(({ error }) => Number.isFinite(error)).sort(byMerit), trialCase.free).slice(0, most);
  const [best] = answers;
  const isMet = best !== undefined && keepsAll(best) && best.error <= enough;
  const nearer = best === undefined ? Infinity : best.error * NEARER;
  const obstacles = isMet ? [] : (yield* obstaclesOf(setting, demands, designs, effort)).filter(({ error }) => error < nearer);
  return { column: trialCase.column, enough, before: beforeOf(trial, study), answers, obstacles };
}

const LOOKED_AT = 8;
/** A demand without which it comes no nearer than this part of the way is none that stands in the way. */
const NEARER = 0.95;

const within = (share: number): number => Math.min(1, Math.max(0, share));

function bestOf(looked: readonly TunedAnswer[], enough: number): number | undefined {
  const kept = looked.filter(keepsAll).map(({ error }) => Math.max(error, enough));
  return kept.length === 0 ? undefined : Math.min(...kept);
}

function beforeOf(trial: Trial, study: Study): Tuned['before'] {
  const { wanted, column } = trial.case;
  const { build, poseAt } = study.travel;
  const figure = study.columns.get(column)!;
  const off = (at: number): number => wanted.weight(at) * Math.abs(figure.read(build, poseAt(at)) - wanted.value(at));
  if (!trial.stations.every((at) => Number.isFinite(off(at)))) return undefined;
  const greatest = greatestOf(off, trial.stations);
  return greatest && { error: greatest.value, at: greatest.travel };
}
