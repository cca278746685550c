/** The linkage as each movement of the engine leaves it, with the levers that carry plates before and after. */
import type { Movement } from '../definition/definition.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { movedBuild } from '../kinematics/movement.ts';
import { oncePer } from '../travel/once.ts';
import { travelOf, type Travel } from '../travel/travel.ts';
import type { Study } from './study.ts';

export interface MovedLever {
  readonly movement: Movement;
  readonly lever: LeverModel;
  readonly moved: Travel;
}

/** Every lever with plates that the pedal moves, under every movement of the file. */
export function movedLevers(study: Study): readonly MovedLever[] {
  return study.definition.movements.flatMap((movement) => {
    const moved = movedTravel(study, movement);
    return moved.mechanism.levers
      .filter((lever) => lever.plates.length > 0 && lever.group >= 0)
      .map((lever): MovedLever => ({ movement, lever, moved }));
  });
}

/** Opening of a lever at a pedal travel, rad; NaN where it cannot be assembled. */
export function openingAt(travel: Travel, lever: LeverModel, at: number): number {
  return travel.mechanism.senses[lever.index]! * travel.poseAt(at).rotation[lever.index]!;
}

/** rad (0.01°); less is not worth a line. Common practice, no source. */
export const STILL = 0.01 * (Math.PI / 180);

/** Two rules ask for it. */
const movedTravel = oncePer((study: Study, movement: Movement): Travel => travelOf(movedBuild(study.travel.build, movement)));
