/**
 * With the foot off, the throttle rests above its closed stop.
 *
 * Springs press every lever closed until the first closed stop of those joined together is met; any other stays that much open. On a
 * shaft with plates it is an error, since the engine will not come down to idle; on another lever a warning. Less than 0.001° is
 * taken as closed: common practice, no source. A closed stop above 0 on a shaft with plates contradicts the drawing, in which the
 * plates lie on their idle stop, and is an error too.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft:
 *     pivot: [100, 0]
 *     arms: {arm: {radius: 40 mm, angle: 60 deg}}
 *     stops: {closed: 0 deg}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 78 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm, length: 99.5 mm}
 * #                                                ^^^^^^^ error[held-open]: shaft is held 0.82° open at rest by the rod link
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 6 deg}
 * # ^^^^ warning[plate-past-square]: up to 1.09° past 90°
 * ```
 *
 * Cure: set the rod to the length at which both closed stops are met together.
 */
import type { Span } from '../../definition/span.ts';
import { turnedAt } from '../../kinematics/poseGeometry.ts';
import { minus } from '../../numeric/vector.ts';
import { pinAt } from '../../travel/jointForms.ts';
import { degrees } from '../words.ts';
import type { Finding } from '../finding.ts';
import type { LeverModel, RodJoint } from '../../kinematics/model.ts';
import { SHUT } from '../openingTolerance.ts';
import { isOffDrawn, lengthToSet, lengthWords, rodsBefore } from '../rodsBefore.ts';
import { restedWith, restingLength } from '../restingLength.ts';
import { writeBy, type Study } from '../study.ts';
import { tightCable } from '../tightCable.ts';

export function heldOpen(study: Study): readonly Finding[] {
  const { mechanism, build, poseAt } = study.travel;
  const pose = poseAt(0);
  return mechanism.levers.flatMap((lever): Finding[] => {
    if (lever.closedStop === undefined || lever.group < 0) return [];
    const closed = build.parameters[lever.closedStop.parameter]!;
    const open = mechanism.senses[lever.index]! * pose.rotation[lever.index]! - closed;
    if (!(open > SHUT)) return closed > SHUT && lever.plates.length > 0 ? [heldByOwnStop(lever, lever.closedStop.span, closed)] : [];
    if (tightCable(study.travel, lever.group) !== undefined) return [];
    const rod = rodToBlame(study, lever);
    const length = rod && closingLength(study, rod, lever, closed);
    const stops = lever.plates.length > 0 ? 'the engine will not idle' : 'it does not reach its closed stop';
    return [
      {
        code: 'held-open',
        severity: lever.plates.length > 0 ? 'error' : 'warning',
        part: lever.name,
        span: rod?.source.length?.span ?? lever.closedStop.span,
        message: `${lever.name} is held ${degrees(open)} open at rest${rod ? ` by the rod ${rod.name}` : ''}: ${stops}`,
        ...(rod && { cure: lengthCure(study, rod, length) }),
        worst: { value: open, dimension: 'angle', travel: 0 },
        limit: { value: SHUT, dimension: 'angle', from: 'common practice, no source' },
        ...(rod?.lengthDimension !== undefined && {
          mend: {
            unknown: mechanism.dimensions[rod.lengthDimension]!.path,
            ...(length === undefined
              ? { outcome: { kind: 'at' as const, column: `${lever.name}.opening`, travel: 0 }, target: closed }
              : { outcome: { kind: 'itself' as const }, target: length }),
          },
        }),
        ...(rod && { related: [{ span: lever.closedStop.span, message: `closed stop of ${lever.name}` }] }),
      },
    ];
  });
}

/** Everything is drawn on the idle stop: a closed stop above the drawn position contradicts the drawing. */
function heldByOwnStop(lever: LeverModel, span: Span, closed: number): Finding {
  return {
    code: 'held-open',
    severity: 'error',
    part: lever.name,
    span,
    message: `The closed stop of ${lever.name} holds it ${degrees(closed)} open at rest, though it is drawn on its idle stop`,
    cure: 'Draw the linkage with the plates on their idle stop and leave the closed stop at 0, or mend the stop',
    worst: { value: closed, dimension: 'angle', travel: 0 },
    limit: { value: SHUT, dimension: 'angle', from: 'common practice, no source' },
    ...writeBy(lever.source.stops?.closed, 0),
  };
}

/** With the turns of its adjuster. @param length undefined where none is known */
function lengthCure(study: Study, rod: RodJoint, length: number | undefined): string {
  const meet = `at which both closed stops meet together`;
  return `Set ${rod.name} to ${length === undefined ? 'the length' : `${lengthWords(study, rod, length)},`} ${meet}`;
}

/** The roundest length at which the rod lets its lever close, also where it drives another one, m; undefined where none is known. */
function closingLength(study: Study, rod: RodJoint, lever: LeverModel, closed: number): number | undefined {
  const { build, mechanism, poseAt } = study.travel;
  const wanted = rod.driven === lever.index ? ownLength() : restingLength(study, rod, lever, closed + SHUT / 10);
  return wanted === undefined ? undefined : lengthToSet(rod, wanted, closesWith);

  function ownLength(): number {
    const from = turnedAt(build, poseAt(0), rod.driver, rod.driverPin);
    const to = pinAt(build.parameters, rod.drivenPin, mechanism.senses[lever.index]! * closed);
    return Math.hypot(...minus(to, from));
  }

  /** And every other lever of its group: a rod that is too long for one is too short for another. */
  function closesWith(length: number): boolean {
    const { parameters, bounds } = restedWith(build, rod, length);
    return mechanism.levers.every(({ index, group, closedStop }) => {
      if (group !== lever.group || closedStop === undefined) return true;
      return mechanism.senses[index]! * bounds.restRotation[index]! - parameters[closedStop.parameter]! <= SHUT;
    });
  }
}

/**
 * The rod that holds a lever open: the nearest one off its drawn length on the lever's own way from the pedal, else one on the way of
 * a lever whose closed stop is met; else the nearest rod on its way, which at least can bring it to its stop.
 */
function rodToBlame(study: Study, lever: LeverModel): RodJoint | undefined {
  const { mechanism, build, poseAt } = study.travel;
  const own = rodsBefore(study, lever.index);
  const met = mechanism.levers.filter((other) => {
    if (other.group !== lever.group || other.closedStop === undefined) return false;
    const closed = build.parameters[other.closedStop.parameter]!;
    return mechanism.senses[other.index]! * poseAt(0).rotation[other.index]! - closed <= SHUT;
  });
  const others = met.flatMap((other) => rodsBefore(study, other.index));
  return [...own, ...others].find((rod) => isOffDrawn(study, rod)) ?? own[0];
}
