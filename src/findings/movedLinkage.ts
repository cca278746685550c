/** The linkage as each movement of the engine leaves it, with the levers that carry plates before and after. */
import type { Movement } from '../definition/definition.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { movedBuild } from '../kinematics/movement.ts';
import { oncePer } from '../travel/once.ts';
import { travelOf, type Travel } from '../travel/travel.ts';
import { columnsOf } from '../table/columns.ts';
import { createStudy, type Study } from './study.ts';

export interface MovedLever {
  readonly movement: Movement;
  readonly lever: LeverModel;
  readonly moved: Travel;
}

/** Every lever with plates that the pedal moves, under every movement of the file. */
export function movedLevers(study: Study): readonly MovedLever[] {
  return study.definition.movements.flatMap((movement) => {
    const { travel: moved } = movedStudy(study, movement);
    return moved.mechanism.levers
      .filter((lever) => lever.plates.length > 0 && lever.group >= 0)
      .map((lever): MovedLever => ({ movement, lever, moved }));
  });
}

/** Opening of a lever at a pedal travel, rad; NaN where it cannot be assembled. */
export function openingAt(travel: Travel, lever: LeverModel, at: number): number {
  return travel.mechanism.senses[lever.index]! * travel.poseAt(at).rotation[lever.index]!;
}

/** How far down the pedal goes, a fraction: less than all where an open stop without a cable before it holds it. */
export function lowest({ build, mechanism }: Travel): number {
  const { drive } = mechanism;
  return drive.kind === 'lever' ? Math.min(1, build.bounds.pedalStop / build.parameters[drive.travel]!) : 1;
}

/** rad (0.01°); less is not worth a line. Common practice, no source. */
export const STILL = 0.01 * (Math.PI / 180);

/** The linkage as the movement leaves it. */
export const movedStudy = oncePer((study: Study, movement: Movement): Study => {
  const travel = travelOf(movedBuild(study.travel.build, movement));
  return createStudy(study.definition, travel, columnsOf(travel));
});
