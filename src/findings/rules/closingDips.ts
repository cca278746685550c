/**
 * A shaft is closed less strongly somewhere on its way than at rest.
 *
 * Springs that are wound or drawn out as the throttle opens close it the harder the further it stands open. Where the closing torque
 * falls instead, by an arm that comes near the line of its spring or a lever that loses its hold, the throttle comes back from there
 * with less than presses it on its stop, and friction finds it first. Under four fifths of what it is at rest it is a note, under
 * half a warning: common practice, no source. Where one spring opens, passes its dead centre or is slack, or the linkage itself comes to a
 * dead centre, only that is told.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 * # ^^^^^ warning[closing-dips]: The closing torque at shaft falls to 40.4 % of that at rest
 *     pivot: [100, 0]
 *     arms: {tail: {radius: 20 mm, angle: 270 deg}}
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {open: 70 deg}
 * pedal: {cable: main, pull: 30.3 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates: {bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}}
 * springs:
 *   one: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
 *   two: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
 * ```
 *
 * Cure: clock the spring's arm so that it is square to the spring nearer to full opening than to rest. A spring on another lever works
 * through the linkage, whose hold on the shaft changes: one on the shaft itself does not dip. More preload of a torsion spring on the shaft
 * makes the dip a smaller share of the whole. Of a spring's arm no figure is offered: clocking it changes the torque at rest too.
 */
import { leastOf, rangesBelow } from '../../travel/extremes.ts';
import { createStatics } from '../../forces/closing.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import type { SpringModel } from '../../kinematics/attached.ts';
import { deadCentres } from '../deadCentres.ts';
import type { Finding, TravelRange } from '../finding.ts';
import { closingOf, platesBodies } from '../platesClosing.ts';
import { NO_TORQUE, springActions } from '../springActions.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';
import { newtonMillimetres, percent, rangeWords } from '../words.ts';

/** Of the closing torque at rest. Common practice, no source. */
const NOTED = 0.8;
const WARNED = 0.5;

export function closingDips(study: Study): readonly Finding[] {
  return platesBodies(study).flatMap(({ levers, springs }): Finding[] => {
    if (isToldOfSprings(study, springs)) return [];
    const dips = levers.flatMap((lever) => dipOf(study, lever, springs) ?? []).sort((one, other) => one.share - other.share);
    return dips.slice(0, 1).map(({ finding }) => finding);
  });
}

function dipOf(
  study: Study,
  lever: LeverModel,
  springs: readonly SpringModel[],
): { readonly share: number; readonly finding: Finding } | undefined {
  const closing = closingOf(study, lever, springs);
  if (closing === undefined) return undefined;
  const { torque, samples } = closing;
  const rest = torque(0);
  const worst = leastOf(torque, samples);
  // Where nothing closes at all, that is told.
  if (worst === undefined || !(worst.value > NO_TORQUE) || !(worst.value < NOTED * rest) || isUnbounded(rest, 'torque')) return undefined;
  const share = worst.value / rest;
  const warned = share < WARNED;
  const ranges = rangesBelow((at) => torque(at) - NOTED * rest, samples);
  if (comesToDeadCentre(study, lever, ranges)) return undefined;
  const finding: Finding = {
    code: 'closing-dips',
    severity: warned ? 'warning' : 'note',
    part: lever.name,
    span: lever.source.nameSpan,
    message: `The closing torque at ${lever.name} falls to ${percent(share)} of that at rest, from ${newtonMillimetres(rest)} to ${newtonMillimetres(worst.value)} at ${percent(worst.travel)} of pedal travel; it is under ${percent(NOTED)} ${rangeWords(ranges)}`,
    ...dipCure(study, lever, springs, worst.travel),
    ranges,
    worst: { ...worst, dimension: 'torque' },
    limit: {
      value: (warned ? WARNED : NOTED) * rest,
      dimension: 'torque',
      from: `${percent(warned ? WARNED : NOTED)} of that at rest: common practice, no source`,
    },
  };
  return { share, finding };
}

/** Whether a joint comes to a dead centre there that the lever's group drives or is driven by; others do not change what closes it. */
function comesToDeadCentre(study: Study, { group }: LeverModel, ranges: readonly TravelRange[]): boolean {
  const { joints, levers } = study.travel.mechanism;
  const isOfGroup = ({ part }: Finding): boolean => {
    let joint = joints.find(({ name }) => name === part);
    while (joint !== undefined) {
      if (levers[joint.driven]!.group === group) return true;
      const driver: LeverModel | undefined = joint.driver === undefined ? undefined : levers[joint.driver];
      if (driver?.group === group) return true;
      joint = driver?.driver === undefined ? undefined : joints[driver.driver];
    }
    return false;
  };
  const places = [...deadCentres(study, 'drive'), ...deadCentres(study, 'transmission')]
    .filter(isOfGroup)
    .flatMap((each) => each.ranges ?? []);
  return places.some((place) => ranges.some(({ from, to }) => from - BESIDE <= place.from && place.to <= to + BESIDE));
}

/** Of the travel. */
const BESIDE = 1e-6;

/** What would help the spring that loses most on the way there. */
function dipCure(study: Study, lever: LeverModel, springs: readonly SpringModel[], at: number): { readonly cure?: string } {
  const { build, poseAt } = study.travel;
  const statics = createStatics(build);
  const bringing = (spring: SpringModel, travel: number): number => {
    const all = statics.at(poseAt(travel)).closing[lever.index]!;
    return all - statics.at(poseAt(travel), spring.name).closing[lever.index]!;
  };
  const [losing] = springs
    .map((spring) => ({ spring, before: bringing(spring, 0), after: bringing(spring, at) }))
    .sort((one, other) => other.before - other.after - (one.before - one.after));
  if (losing === undefined || !(losing.before > losing.after)) return {};
  const { spring, before, after } = losing;
  const [effect] = springActions(study).find((each) => each.spring.name === spring.name)?.torques ?? [];
  if (effect === undefined) return {};
  // What it loses at its own lever against what arrives: the rest is lost by the linkage.
  const own = effect.torque(at) / effect.torque(0);
  if (effect.lever !== lever && own > after / before) {
    return {
      cure: `Move ${spring.name} from ${effect.lever.name} to ${lever.name}: it works through the linkage, whose hold on ${lever.name} falls, and a spring on ${lever.name} itself does not dip`,
    };
  }
  if (spring.kind === 'torsion') return {};
  return {
    cure: `Clock the arm of ${spring.name} on ${effect.lever.name} nearer to square with it there, or wind a torsion spring on ${lever.name} instead`,
  };
}

function isToldOfSprings(study: Study, springs: readonly SpringModel[]): boolean {
  return springActions(study).some(
    ({ spring, opening, slack }) => (opening !== undefined || slack.length > 0) && springs.some(({ name }) => name === spring.name),
  );
}
