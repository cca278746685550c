/** Demands that stand in the way of the curve: how near it comes with each of them left out, and all others kept. */
import { saying } from '../saying.ts';
import { answerOf, type Court, type TunedAnswer } from './answers.ts';
import type { Demand } from './demands.ts';
import { errorsOf } from './news.ts';
import { stepped } from './onSteps.ts';
import { search, type Effort, type Progress } from './search.ts';
import type { Setting } from './setting.ts';
import { createTrial } from './trial.ts';

export interface Obstacle {
  readonly demand: Demand;
  /** Greatest distance from the curve without it, SI. */
  readonly error: number;
}

/**
 * What the search gives with the angles of one demand left out of it, and what was looked at and gives up one demand alone. All are of
 * files that were solved.
 * @param looked answers of the search with all demands
 */
export function* obstaclesOf(
  { trialCase, enough }: Setting,
  court: Court,
  designs: readonly Float64Array[],
  effort: Effort,
  looked: readonly TunedAnswer[],
): Generator<Progress, readonly Obstacle[]> {
  const obstacles = new Map<Demand, number>();
  const take = ({ judgements, news, error }: TunedAnswer): void => {
    const short = judgements.filter(({ shortfall }) => shortfall !== 0);
    const [only] = short;
    if (only === undefined || short.length > 1 || errorsOf(news) > 0 || !Number.isFinite(error)) return;
    obstacles.set(only.demand, Math.min(error, obstacles.get(only.demand) ?? Infinity));
  };
  looked.forEach(take);
  for (const demand of court.demands) {
    const { kept } = demand;
    if (kept.kind !== 'limit') continue;
    const guards = trialCase.guards.filter(({ column }) => !column.endsWith(`.${kept.key}`));
    if (guards.length === trialCase.guards.length) continue;
    const trial = createTrial({ ...trialCase, guards });
    const progress: Progress = { done: 1, of: 1, best: undefined };
    const [best] = yield* search(trial, designs, { ...effort, rounds: Math.min(effort.rounds, OBSTACLE_ROUNDS), answers: 1, enough });
    if (best === undefined) continue;
    const { x } = yield* saying(stepped(trial, best, enough), () => progress);
    take(yield* saying(answerOf({ ...court, trial }, x), () => progress));
  }
  return court.demands.flatMap((demand) => {
    const error = obstacles.get(demand);
    return error === undefined ? [] : [{ demand, error }];
  });
}

const OBSTACLE_ROUNDS = 4;
