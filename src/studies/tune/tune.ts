/**
 * From the curve that is wanted to the dimensions that give it: several answers, best first, each held against all that must be kept.
 *
 * The search follows the curve and the angles that it can watch at each station (`search.ts`). What it finds is brought onto the steps
 * that free values have, written with the digits that a file gets, and judged on the solved file. An answer that falls short of a demand
 * is mended by least squares over the curve and all demands together. The file as it stands is among what is looked at: no answer is worse,
 * and from it the search goes towards what is nearer as far as everything is kept. The same file and seed give the same answers.
 */
import type { Answered } from '../../findings/answered.ts';
import type { Study } from '../../findings/study.ts';
import { saying } from '../saying.ts';
import {
  answerOf,
  byMerit,
  distanceIn,
  distinct,
  isSound,
  keepsAll,
  undominated,
  type Court,
  type SolveWith,
  type TunedAnswer,
} from './answers.ts';
import { demandsOf, judge, type Demand } from './demands.ts';
import { designsOf } from './designs.ts';
import { mend } from './mend.ts';
import { leastShort, towardsNearer, type Looked } from './nearer.ts';
import { obstaclesOf, type Obstacle } from './obstacles.ts';
import { heldOn, onAllSteps, snapped, stepped } from './onSteps.ts';
import { search, type Distance, type Effort, type Progress } from './search.ts';
import { settingOf, type Setting } from './setting.ts';
import { createTrial } from './trial.ts';
import { countedPoints } from './wanted.ts';

export interface Tuned {
  /** Column that follows the curve. */
  readonly column: string;
  /** SI: as near to the curve as this is on it. */
  readonly enough: number;
  /** As the file stands; undefined where it has no value somewhere along the curve. */
  readonly before: Before | undefined;
  /**
   * Best first: those that bring no new error, of them those that keep all demands, nearest to the curve, then those that fall short least.
   * Empty where nothing that was looked at has the column, and all angles that are to be kept, along the whole curve.
   */
  readonly answers: readonly TunedAnswer[];
  /** Where the best answer is off the curve: demands without one of which it comes nearer, and how near. */
  readonly obstacles: readonly Obstacle[];
  /** Nearer than the best answer and keeping all demands, but with an error that the file as it stands does not have. */
  readonly erring: TunedAnswer | undefined;
  /** Where the curve asks for more opening than the stop of its lever allows, most; undefined where it nowhere does. */
  readonly beyond: { readonly at: number; readonly wanted: number; readonly full: number } | undefined;
}

export interface Before extends Distance {
  /** Demands that the file as it stands does not keep. */
  readonly short: readonly Demand[];
  /** It lies within the bounds and on the steps. */
  readonly isWithin: boolean;
}

export interface TuneOptions {
  readonly seed: number;
  /** Rounds of the search; each is some 300 looks and up to 12 descents. */
  readonly rounds: number;
  /** Answers wanted, at most. */
  readonly answers: number;
}

export const TUNE_DEFAULTS: TuneOptions = { seed: 1, rounds: 24, answers: 3 };

/**
 * Undefined where the file cannot be tuned: `whyNotTuned` says why. Yields as it goes.
 * @param standing answers about the file as it stands
 */
export function* tune(
  standing: Answered,
  study: Study,
  solveWith: SolveWith,
  { seed, rounds, answers: most }: TuneOptions = TUNE_DEFAULTS,
): Generator<Progress, Tuned | undefined> {
  const { definition } = study;
  const demands = demandsOf(study);
  const setting = settingOf(study, demands);
  if (setting === undefined) return undefined;
  const { trialCase, enough, lever } = setting;
  const trial = createTrial(trialCase);
  const court: Court = { trial, definition, demands, solveWith, standing };
  const effort: Effort = { seed, rounds, enough, answers: most };
  const asWritten = Float64Array.from(trialCase.free, ({ index, from, to }) => (study.travel.build.values[index]! - from) / (to - from));
  const drawn = asWritten.map(within);
  const begun = (): Progress => ({ done: 0, of: rounds, best: undefined });
  const designs = lever === undefined ? [drawn] : [drawn, ...(yield* saying(designsOf(trialCase, lever), begun))];
  const found = yield* search(trial, designs, effort);
  const looked: Looked[] = [];
  const searched = (): Progress => ({ done: rounds, of: rounds, best: bestOf(looked, enough) });
  const look = function* (x: Float64Array): Generator<Progress, TunedAnswer> {
    const answer = yield* saying(answerOf(court, x), searched);
    if (Number.isFinite(answer.error)) looked.push({ x, answer });
    yield searched();
    return answer;
  };
  const hasSteps = trialCase.free.some(({ step }) => step !== undefined);
  const lookMended = function* (x: Float64Array): Generator<Progress, void> {
    const mended = yield* saying(mend(court, x), searched);
    if (mended === undefined) return;
    const on = snapped(trial, mended);
    if (isSound(yield* look(on)) || !hasSteps) return;
    // What steps spoil, the others may mend.
    const again = yield* saying(mend(court, on, heldOn(trialCase.free, on)), searched);
    if (again !== undefined) yield* look(again);
  };
  const projected = snapped(trial, drawn);
  const asItStands = yield* look(projected);
  const onSteps = yield* saying(onAllSteps(trial, found[0]?.x ?? projected), searched);
  for (const { x } of onSteps.slice(0, LOOKED_AT)) yield* look(x);
  let lookedAt = 0;
  let erring = 0;
  for (const each of found) {
    const candidate = yield* saying(stepped(trial, each, enough), searched);
    if (!Number.isFinite(candidate.error)) continue;
    if (lookedAt++ === LOOKED_AT) break;
    const first = yield* look(candidate.x);
    if (isSound(first)) {
      if (looked.filter(({ answer }) => isMet(answer, enough)).length >= most) break;
      continue;
    }
    if (keepsAll(first) && ++erring > ERRING) continue;
    yield* lookMended(candidate.x);
  }
  const [first] = [...looked].sort((a, b) => byMerit(a.answer, b.answer));
  // Where the first is sound and nothing is nearer, there is nothing to be mended.
  const isLast = first !== undefined && isSound(first.answer) && !looked.some(({ answer }) => answer.weighted < first.answer.weighted);
  if (!isMet(first?.answer, enough) && !isLast) {
    yield* lookMended(projected);
    for (const x of looked.some(({ answer }) => isSound(answer)) ? [] : leastShort(looked)) {
      const on = snapped(trial, x);
      const firm = yield* saying(mend(court, on, heldOn(trialCase.free, on), true), searched);
      if (firm !== undefined && isSound(yield* look(firm))) break;
    }
    yield* towardsNearer(court, looked, enough, searched);
  }
  const isOn = looked.some(({ answer }) => isMet(answer, enough));
  const without = isOn ? { obstacles: [], looked: [] } : yield* obstaclesOf(setting, court, designs, effort, looked);
  const all = [...looked, ...without.looked].map(({ answer }) => answer);
  const sorted = undominated(distinct([...all].sort(byMerit), trialCase.free));
  // The file as it stands is an answer only where nothing else is better.
  const answers = sorted.filter((answer, i) => i === 0 || answer !== asItStands).slice(0, most);
  const [best] = answers;
  const nearer = best === undefined ? Infinity : best.error * NEARER;
  // Where no answer keeps everything, what is kept without one demand is worth knowing however far from the curve.
  const obstacles = without.obstacles.filter(({ error }) => best === undefined || !isSound(best) || error < nearer);
  const isWithin = projected.every((value, i) => Math.abs(value - asWritten[i]!) <= ON_PLACE);
  const before = distanceIn(trial, standing);
  const short = judge(standing, demands).flatMap(({ demand, shortfall }) => (shortfall === 0 ? [] : [demand]));
  return {
    column: trialCase.column,
    enough,
    before: before && { ...before, short, isWithin },
    answers,
    obstacles,
    erring: sorted.find((answer) => keepsAll(answer) && !isSound(answer) && answer.error < nearer),
    beyond: beyondOf(setting, study),
  };
}

const LOOKED_AT = 8;
/** Of them so many that keep all demands are mended of the errors that they bring: that takes as long as all the rest. */
const ERRING = 1;
/** A demand without which it comes no nearer than this part of the way is none that stands in the way. */
const NEARER = 0.95;
/** In parts of the bounds. */
const ON_PLACE = 1e-9;

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** It is sound and lies on the curve. */
export function isMet(answer: TunedAnswer | undefined, enough: number): boolean {
  return answer !== undefined && isSound(answer) && answer.error <= enough;
}

function bestOf(looked: readonly Looked[], enough: number): number | undefined {
  const sound = looked.flatMap(({ answer }) => (isSound(answer) ? [Math.max(answer.error, enough)] : []));
  return sound.length === 0 ? undefined : Math.min(...sound);
}

function beyondOf({ trialCase: { wanted, mechanism }, lever, enough }: Setting, { travel: { build } }: Study): Tuned['beyond'] {
  const fullOpening = lever === undefined ? undefined : mechanism.levers[lever]!.fullOpening;
  if (fullOpening === undefined) return undefined;
  const full = build.parameters[fullOpening]!;
  const most = countedPoints(wanted).reduce((a, b) => (wanted.value(b) > wanted.value(a) ? b : a));
  return wanted.value(most) > full + enough ? { at: most, wanted: wanted.value(most), full } : undefined;
}
