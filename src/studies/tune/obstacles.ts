/** Demands that stand in the way of the curve: how near it comes with each of them left out, and all others kept. */
import { saying } from '../saying.ts';
import { answerOf, byMerit, type Court, type TunedAnswer } from './answers.ts';
import { confined } from './confined.ts';
import type { Demand } from './demands.ts';
import type { Looked } from './nearer.ts';
import { errorsOf } from './news.ts';
import { heldOn, snapped, stepped } from './onSteps.ts';
import { search, type Effort, type Progress } from './search.ts';
import type { Setting } from './setting.ts';
import { createTrial } from './trial.ts';

export interface Obstacle {
  readonly demand: Demand;
  /** Greatest distance from the curve without it, SI. */
  readonly error: number;
}

export interface Obstacles {
  readonly obstacles: readonly Obstacle[];
  /** What was looked at on the way, judged by all demands. */
  readonly looked: readonly Looked[];
}

/**
 * What was looked at and gives up one demand alone; what the search gives with the angles of one demand left out of it; and, of each demand
 * that something gave up, the nearest place that keeps all others, from what falls short of these least. All are of files that were solved.
 * @param looked answers of the search with all demands
 */
export function* obstaclesOf(
  setting: Setting,
  court: Court,
  designs: readonly Float64Array[],
  effort: Effort,
  looked: readonly Looked[],
): Generator<Progress, Obstacles> {
  const obstacles = new Map<Demand, number>();
  const all = [...looked];
  const take = (each: Looked): void => {
    all.push(each);
    const only = onlyGivenUp(each.answer);
    if (only !== undefined) obstacles.set(only, Math.min(each.answer.error, obstacles.get(only) ?? Infinity));
  };
  for (const each of all.splice(0)) take(each);
  const progress: Progress = { done: 1, of: 1, best: undefined };
  for (const demand of court.demands) {
    const found = yield* withoutAngles(setting, court, demand, designs, effort);
    if (found !== undefined) take(found);
  }
  for (const demand of givenUp(all).slice(0, MOST_TRIED)) {
    const rest = { ...court, demands: court.demands.filter((each) => each !== demand) };
    for (const { x } of leastShortBut(demand, all)) {
      const on = snapped(court.trial, x);
      const near = yield* saying(confined(rest, on, effort.enough, heldOn(court.trial.case.free, on)), () => progress);
      if (near !== undefined) take({ x: near.x, answer: yield* saying(answerOf(court, near.x), () => progress) });
    }
  }
  return {
    obstacles: court.demands.flatMap((demand) => {
      const error = obstacles.get(demand);
      return error === undefined ? [] : [{ demand, error }];
    }),
    looked: all.slice(looked.length),
  };
}

const OBSTACLE_ROUNDS = 4;
/** Demands that are left out in turn: each takes some hundred files to be solved. */
const MOST_TRIED = 4;

/** The one demand that an answer gives up, where it brings no error beside; else undefined. */
function onlyGivenUp({ judgements, news, error }: TunedAnswer): Demand | undefined {
  const [only, second] = judgements.filter(({ shortfall }) => shortfall !== 0);
  return second !== undefined || errorsOf(news) > 0 || !Number.isFinite(error) ? undefined : only?.demand;
}

/** The search with the angles of a demand left out of it; undefined where it has none. */
function* withoutAngles(
  { trialCase, enough }: Setting,
  court: Court,
  { kept }: Demand,
  designs: readonly Float64Array[],
  effort: Effort,
): Generator<Progress, Looked | undefined> {
  if (kept.kind !== 'limit') return undefined;
  const guards = trialCase.guards.filter(({ column }) => !column.endsWith(`.${kept.key}`));
  if (guards.length === trialCase.guards.length) return undefined;
  const trial = createTrial({ ...trialCase, guards });
  const progress: Progress = { done: 1, of: 1, best: undefined };
  const [best] = yield* search(trial, designs, { ...effort, rounds: Math.min(effort.rounds, OBSTACLE_ROUNDS), answers: 1, enough });
  if (best === undefined) return undefined;
  const { x } = yield* saying(stepped(trial, best, enough), () => progress);
  return { x, answer: yield* saying(answerOf({ ...court, trial }, x), () => progress) };
}

/** Demands that some answer gives up and that could be checked, those first that the best gives up. */
function givenUp(looked: readonly Looked[]): readonly Demand[] {
  const sorted = [...looked].map(({ answer }) => answer).sort(byMerit);
  return [...new Set(sorted.flatMap(({ judgements }) => judgements.filter(({ shortfall }) => shortfall > 0).map(({ demand }) => demand)))];
}

/** What falls least short of all other demands, and of that the nearest to the curve. */
function leastShortBut(demand: Demand, looked: readonly Looked[]): readonly Looked[] {
  const short = ({ answer }: Looked): number =>
    answer.judgements.reduce(
      (sum, each) => (each.demand === demand || Number.isNaN(each.shortfall) ? sum : sum + each.shortfall),
      answer.news.excess,
    );
  return [...looked].sort((a, b) => short(a) - short(b) || a.answer.weighted - b.answer.weighted).slice(0, BEGUN);
}

const BEGUN = 2;
