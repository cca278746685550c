/**
 * What each spring does over the travel, as figures: where it passes its dead centre, where it opens instead of closing, where it is
 * slack. Worked out once a study; several rules speak of it.
 *
 * The torque of a spring between a place and a pin changes its way where its line meets the lever's axis, which is where the squared
 * distance of its ends, K₀ + K₁ cos φ + K₂ sin φ, is extreme in the lever's rotation φ; and it begins or ends where that distance is
 * the free length. Both are roots known in closed form, so that no dip between stations is missed. Of a spring between two turning
 * pins both are searched between 201 stations and the turning places of the levers.
 */
import { bodiesOf } from '../kinematics/rest.ts';
import type { LinearSpringModel, SpringModel } from '../kinematics/attached.ts';
import type { LeverModel } from '../kinematics/model.ts';
import type { Pose } from '../kinematics/pose.ts';
import { createStatics } from '../forces/closing.ts';
import { missingOf, NO_TORQUE } from '../forces/springLack.ts';
import { springPlaces, withPlaces } from '../forces/springPlaces.ts';
import { springSpan, springTorques } from '../forces/springs.ts';
import { isMoved } from '../forces/springsReaching.ts';
import { following, leastOf, rangesBelow, zerosOf, type Along, type Extreme } from '../travel/extremes.ts';
import { once } from '../travel/once.ts';
import type { Travel } from '../travel/travel.ts';
import type { TravelRange } from './finding.ts';
import { along, type Study } from './study.ts';
import { goesOtherwise } from './wayOfOpening.ts';

export interface SpringAction {
  readonly spring: SpringModel;
  /** Travels between which its torque neither changes its way nor begins or ends; the travel's samples are among them. */
  readonly samples: readonly number[];
  /** Its closing torque at each body that it turns by itself, N·m; empty where the torque is not known. */
  readonly torques: readonly SpringEffect[];
  /** The body that it opens most, if any. */
  readonly opening: OpeningEffect | undefined;
  /** Where it holds nothing: an extension spring shorter, a compression spring longer than its free length. Empty where that is not known. */
  readonly slack: readonly TravelRange[];
  /** Least length of an extension spring, greatest of a compression spring, m; undefined where that is not known. */
  readonly loosest: Extreme | undefined;
}

export interface SpringEffect {
  readonly lever: LeverModel;
  readonly torque: Along;
  /** Whether it is of both ends of the spring, brought to the lever through the linkage. */
  readonly brought?: true;
}

export interface OpeningEffect {
  readonly lever: LeverModel;
  readonly brought?: true | undefined;
  readonly ranges: readonly TravelRange[];
  /** Closing torque where it opens most, N·m, below 0. */
  readonly worst: Extreme;
  /** Where within the travel its line meets the axis; empty where it never does. */
  readonly deadCentres: readonly number[];
}

/** Of every spring of which the pedal moves an end, in the order of the file. */
export const springActions = once((study: Study): readonly SpringAction[] => {
  const { mechanism } = study.travel;
  return mechanism.attached.springs.filter((spring) => isMoved(mechanism, spring)).map((spring) => actionOf(study, spring));
});

export { missingOf, NO_TORQUE };

/** m; less is rounding. */
const SAME_LENGTH = 1e-9;
/** Of the travel; a stretch that short is one place. */
const SAME_PLACE = 1e-9;

function actionOf(study: Study, spring: SpringModel): SpringAction {
  const { travel } = study;
  const linear = spring.kind === 'torsion' ? undefined : spring;
  const meets = springPlaces(travel, spring);
  const samples = meets === undefined ? travel.samples : withPlaces(travel.samples, meets);
  const torques = missingOf(spring) === undefined ? effectsOf(study, spring) : [];
  const looseness = linear && loosenessOf(travel, linear);
  const openings = torques
    .flatMap(({ lever, torque, brought }): OpeningEffect[] => {
      const worst = leastOf(torque, samples);
      if (worst === undefined || !(worst.value < -NO_TORQUE) || goesOtherwise(study, lever)) return [];
      const ranges = rangesBelow(torque, samples).filter(({ from, to }) => to - from > SAME_PLACE);
      const crossed = meets?.axis ?? (linear === undefined ? [] : zerosOf(torque, samples).filter((at) => isTaut(looseness, at)));
      return [{ lever, brought, ranges, worst, deadCentres: crossed.filter((at) => at > SAME_PLACE && at < 1 - SAME_PLACE) }];
    })
    .sort((one, other) => one.worst.value - other.worst.value);
  return { spring, samples, torques, opening: openings[0], ...slackness(travel, linear, looseness, samples) };
}

/**
 * The closing torque of a spring at the levers on which it works. Where both its ends turn within one body, the levers' torques are
 * brought to one of them by virtual work: alone neither says whether the spring closes.
 */
function effectsOf(study: Study, spring: SpringModel): readonly SpringEffect[] {
  const { build, mechanism, poseAt } = study.travel;
  const lever = mechanism.levers[spring.lever]!;
  if (spring.kind === 'torsion' || spring.from.kind === 'place') return [{ lever, torque: along(study, `${spring.name}.torque`) }];
  const other = mechanism.levers[spring.from.lever]!;
  const own = (of: LeverModel, pose: Pose): number =>
    springTorques(build, pose, spring).reduce((sum, each) => (each.lever === of.index ? sum + each.closing : sum), 0);
  const group = mechanism.groups[lever.group];
  const together =
    group !== undefined && bodiesOf(build, group).some(({ levers }) => [lever, other].every(({ index }) => levers.includes(index)));
  if (!together) {
    const moved = [lever, other].filter((each) => each.group >= 0);
    return moved.map((of) => ({ lever: of, torque: (at) => own(of, poseAt(at)) }));
  }
  const statics = createStatics(build);
  return [
    {
      lever,
      brought: true,
      torque(at) {
        const pose = poseAt(at);
        const { unit } = statics.at(pose);
        const brought = own(lever, pose) + (own(other, pose) * unit[other.index]!) / unit[lever.index]!;
        return Number.isFinite(brought) ? brought : NaN;
      },
    },
  ];
}

/** Length less free length of an extension spring, the other way of a compression spring: below 0 it is slack. m. */
function loosenessOf({ build, poseAt }: Travel, spring: LinearSpringModel): Along | undefined {
  if (spring.freeLength === undefined) return undefined;
  const free = build.parameters[spring.freeLength]!;
  const way = spring.kind === 'extension' ? 1 : -1;
  return (at) => way * (springSpan(build, poseAt(at), spring).length - free);
}

function isTaut(looseness: Along | undefined, at: number): boolean {
  return looseness !== undefined && looseness(at) > SAME_LENGTH;
}

function slackness(
  { build, poseAt }: Travel,
  spring: LinearSpringModel | undefined,
  looseness: Along | undefined,
  samples: readonly number[],
): Pick<SpringAction, 'slack' | 'loosest'> {
  if (spring === undefined || looseness === undefined) return { slack: [], loosest: undefined };
  const slack = rangesBelow(
    following(looseness, (value) => value + SAME_LENGTH),
    samples,
  ).filter(({ from, to }) => to - from > SAME_PLACE);
  const least = leastOf(looseness, samples);
  return { slack, loosest: least && { value: springSpan(build, poseAt(least.travel), spring).length, travel: least.travel } };
}
