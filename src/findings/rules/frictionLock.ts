/**
 * Somewhere in the travel friction holds a shaft or the pedal, and the springs cannot bring it back.
 *
 * What closes it is set against all that rubs on the way: drag, bearings under their load, plates that the manifold's vacuum presses on
 * their shaft, rod ends, forks, and the cables that it draws back. Where that is no less than the closing torque, the throttle stays open
 * when the foot comes off. A lever between pedal and shaft that stays where it is holds the shaft by its cable. Of plates on a `bearing`
 * without `vacuum`, 70 kPa are taken: common practice, no source.
 *
 * It is looked at at 201 places of the pedal’s travel at least, and searched on from each that is lower than its neighbours, to where it is worst
 * and to where it begins and ends; where all springs are wound about axes only if one place comes within twice the friction. Among these places are, in closed form, all at which an
 * angle of a joint turns back, and all at which a spring between a fixed place and a pin begins, ends or passes its dead centre, with the
 * middles between them: a dip that such a spring makes by itself is found however narrow it is. No more is proved. Where friction
 * itself turns has no closed form, nor has what a spring between two turning pins does: a dip of theirs from over twice the friction down to it
 * and up again, all between two neighbouring places, would be missed, and so would the deeper of two between them.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 * # ^^^^^ error[friction-lock]: Friction holds shaft
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {open: 82.5 deg}
 *     bearing: {diameter: 10 mm, friction: 0.2}
 * pedal: {cable: main, pull: 35.55 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates: {bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg, vacuum: 70 kPa}}
 * springs:
 *   first: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}
 *   second: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}
 * ```
 *
 * Cure: better bearings (needle rollers in the place of plain bushes), or stronger springs.
 */
import type { LeverModel } from '../../kinematics/model.ts';
import { greatestOf } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { closingAlong } from '../forcesAlong.ts';
import { comesNear, frictionUnits, LOCKS, LOCKS_AT, unitMargin } from '../frictionUnits.ts';
import { OPENING_TOLERANCE } from '../openingTolerance.ts';
import { along, trespass, type Study } from '../study.ts';
import { listed, newtonMillimetres, percent, rangeWords } from '../words.ts';

export function frictionLock(study: Study): readonly Finding[] {
  return frictionUnits(study).flatMap((unit): Finding[] => {
    if (!isOpened(study, unit.lever)) return [];
    const margin = unitMargin(study, unit);
    const held = comesNear(study, unit, margin, LOCKS_AT) ? trespass(study, margin, LOCKS, 1, undefined, unit.samples) : undefined;
    if (held === undefined) return [];
    const { lever, shafts } = unit;
    const { worst, ranges } = held;
    const names = shafts.length > 0 ? listed(shafts.map(({ name }) => name)) : lever.name;
    const torque = closingAlong(study, lever.index)(worst.travel);
    const against = worst.value > 0 ? `friction takes ${newtonMillimetres(torque / worst.value)}` : 'a joint jams, whatever pushes it';
    return [
      {
        code: 'friction-lock',
        severity: 'error',
        part: lever.name,
        span: lever.source.nameSpan,
        message: `Friction holds ${names} ${rangeWords(ranges)}: the springs bring ${newtonMillimetres(torque)} to ${lever.name} at ${percent(worst.travel)}, and ${against}`,
        cure: 'Less friction, as by needle rollers in the place of plain bushes, or stronger springs',
        ranges,
        worst: { ...worst, dimension: 'number' },
        limit: { value: LOCKS.warning, dimension: 'number', from: LOCKS.from },
      },
    ];
  });
}

/** Which way is closed is not known of a lever that never opens: that it does not is told. */
function isOpened(study: Study, lever: LeverModel): boolean {
  return (greatestOf(along(study, `${lever.name}.opening`), study.travel.samples)?.value ?? 0) > OPENING_TOLERANCE;
}
