/** Demands on angles that stand in the way of the curve: how near it comes with each of them left out. */
import type { Demand } from './demands.ts';
import { search, type Effort, type Progress } from './search.ts';
import type { Setting } from './setting.ts';
import { createTrial } from './trial.ts';

export interface Obstacle {
  readonly demand: Demand;
  /** Greatest distance from the curve without it, SI. */
  readonly error: number;
}

/** What the search gives with the angles of one demand left out of it. */
export function* obstaclesOf(
  { trialCase, enough }: Setting,
  demands: readonly Demand[],
  designs: readonly Float64Array[],
  effort: Effort,
): Generator<Progress, readonly Obstacle[]> {
  const obstacles: Obstacle[] = [];
  for (const demand of demands) {
    const { kept } = demand;
    if (kept.kind !== 'limit') continue;
    const guards = trialCase.guards.filter(({ column }) => !column.endsWith(`.${kept.key}`));
    if (guards.length === trialCase.guards.length) continue;
    const trial = createTrial({ ...trialCase, guards });
    const [best] = yield* search(trial, designs, { ...effort, rounds: Math.min(effort.rounds, OBSTACLE_ROUNDS), answers: 1, enough });
    if (best !== undefined) obstacles.push({ demand, error: best.error });
  }
  return obstacles;
}

const OBSTACLE_ROUNDS = 4;
