/**
 * What each movement of the engine does: to rest, with the friction that may hold the throttle short of it; to full opening; and to the slack
 * of each cable. Full opening and slack are matters of lengths alone: friction changes the effort, and not where things stand.
 */
import type { Movement } from '../../definition/definition.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import type { Fact } from '../finding.ts';
import { lowest, movedLevers, movedStudy, openingAt, type MovedLever } from '../movedLinkage.ts';
import { restBand } from '../restBand.ts';
import type { Study } from '../study.ts';
import { decimal } from '../words.ts';
import { slackAtRest } from './cables.ts';

export function movementFacts(study: Study): readonly Fact[] {
  const moved = movedLevers(study);
  return study.definition.movements.flatMap((movement) => [
    ...moved.filter((each) => each.movement === movement).flatMap((each) => leverFacts(study, each)),
    ...slackFacts(study, movement),
  ]);
}

function leverFacts(study: Study, { movement, lever, moved }: MovedLever): readonly Fact[] {
  const part = movement.name;
  const fact = (key: string, label: string, value: number): Fact => ({
    key: `${key}-${lever.name}`,
    part,
    label: `${lever.name} ${label}`,
    ...(Number.isFinite(value) ? { figure: { value, dimension: 'angle' as const } } : { why: 'it cannot be assembled there' }),
  });
  const full = fact('full', 'open at full pedal with it, a matter of lengths and not of friction', openingAt(moved, lever, lowest(moved)));
  return [...restFacts(movedStudy(study, movement), lever, fact), full];
}

/** One figure where the springs overcome friction, two where it may stand anywhere between them. */
function restFacts(study: Study, lever: LeverModel, fact: (key: string, label: string, value: number) => Fact): readonly Fact[] {
  const rest = openingAt(study.travel, lever, 0);
  const band = restBand(study, lever);
  switch (band.kind) {
    case 'unknown':
      return [fact('rest', `open at rest with it, ${band.why}`, rest)];
    case 'closes':
      return [
        fact(
          'rest',
          `open at rest with it; friction does not change that: the springs bring ${decimal(band.margin)} times of it or more`,
          rest,
        ),
      ];
    case 'held':
      return [
        fact('rest', 'open at rest with it at least', band.least),
        fact('rest-held', 'open at rest with it at most, where friction holds it', band.most),
      ];
  }
}

function slackFacts(study: Study, movement: Movement): readonly Fact[] {
  const { travel } = movedStudy(study, movement);
  return travel.mechanism.cables.map((cable): Fact => {
    const common = {
      key: `slack-${cable.name}`,
      part: movement.name,
      label: `slack of ${cable.name} at rest with it, a matter of lengths and not of friction`,
    };
    const value = slackAtRest(travel, cable);
    return value === undefined ? { ...common, why: 'none: the cable is tight' } : { ...common, figure: { value, dimension: 'length' } };
  });
}
