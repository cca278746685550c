/**
 * Two shafts with plates do not open together.
 *
 * Every barrel should get the same air. Near idle a tenth of a degree is a good part of the whole opening, and the engine idles
 * unevenly and stumbles as it comes off idle; further up half a degree is hardly felt. Each shaft is compared with that of the first
 * plates in the file. More than 0.1° apart at rest or below 5° of opening (of both in the mean), or 0.5° above, is a warning; more
 * than 0.5° at rest an error: common practice, no source. `limits: {step: …}` replaces both figures, the one below and the one above 5°.
 * The difference in air is of open area, relative to the mean of both, and is told of plates of one size only.
 *
 * ```yaml
 * format: 1
 * levers:
 *   crank: {pivot: [0, 0]}
 *   front: {pivot: [100, 0], stops: {open: 80 deg}}
 *   rear: {pivot: [200, 0], stops: {open: 78 deg}}
 * # ^^^^ warning[out-of-step]: rear stands up to 0.12° less open than front below 5° of opening
 * pedal: {lever: crank, opens: counterclockwise, travel: 79.9 deg}
 * couplings:
 *   one: {from: crank, to: front}
 *   two: {from: crank, to: rear, ratio: 0.976}
 * limits: {step: [0.1 deg, 2 deg]}
 * plates:
 *   front_bank: {lever: front, count: 2, bore: 40 mm, seat: 6 deg, idle: 4 deg}
 *   rear_bank: {lever: rear, count: 2, bore: 40 mm, seat: 6 deg, idle: 4 deg}
 * ```
 *
 * Cure: set the rod between the shafts, or to each of them, until both rest on their stops together, and clock their arms alike.
 */
import type { PlatesModel } from '../../kinematics/attached.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { NEAR_IDLE, outOfStep as stepsOf, type StepDifference } from '../../plates/outOfStep.ts';
import { openingAt, plateShape } from '../../plates/platesAt.ts';
import { rangesBelow, type Extreme } from '../../travel/extremes.ts';
import type { Finding, Mend } from '../finding.ts';
import { isOffDrawn, rodsBefore } from '../rodsBefore.ts';
import { limitOf, type Study } from '../study.ts';
import { openingLevers } from '../wayOfOpening.ts';
import { degrees, percent } from '../words.ts';

export function outOfStep(study: Study): readonly Finding[] {
  const { mechanism } = study.travel;
  const opening = new Set(openingLevers(study).map(({ index }) => index));
  const [first, ...others] = mechanism.attached.plates.filter(
    ({ lever }, i, all) => opening.has(lever) && all.findIndex((each) => each.lever === lever) === i,
  );
  return first === undefined ? [] : others.flatMap((second) => stepFinding(study, first, second) ?? []);
}

type Where = 'at rest' | 'below' | 'above';

/** A difference beyond its limit. */
interface Part {
  readonly where: Where;
  readonly difference: StepDifference;
  readonly opening: Extreme;
  /** rad. */
  readonly limit: number;
}

function stepFinding(study: Study, first: PlatesModel, second: PlatesModel): Finding | undefined {
  const { mechanism, build, poseAt, samples } = study.travel;
  const limit = limitOf(study, 'step');
  const below = limit.warning;
  const above = limit.error ?? limit.warning;
  const { atRest, nearIdle, above: further } = stepsOf(study.travel, first, second);
  const part = (where: Where, difference: StepDifference, most: number): readonly Part[] => {
    const { opening } = difference;
    return opening !== undefined && Math.abs(opening.value) > most + SAME ? [{ where, difference, opening, limit: most }] : [];
  };
  const resting = part('at rest', atRest, below);
  // Where it is greatest at rest, that is told already.
  const idling = part('below', nearIdle, below).filter(({ opening }) => resting.length === 0 || opening.travel > 0);
  const parts = [...resting, ...idling, ...part('above', further, above)];
  const excess = (of: Part): number => Math.abs(of.opening.value) / of.limit;
  const [worst] = [...parts].sort((one, other) => excess(other) - excess(one));
  if (worst === undefined) return undefined;
  const [one, other] = [mechanism.levers[first.lever]!, mechanism.levers[second.lever]!];
  const uneven = resting.length > 0;
  const failed = limit.error !== undefined && Math.abs(atRest.opening?.value ?? 0) > limit.error + SAME;
  const sameSize = isSameSize(study, first, second);
  const told = parts.map((each, i) => wordsOf(each, i === 0 ? ` than ${one.name}` : '', sameSize)).join('; ');
  return {
    code: 'out-of-step',
    severity: failed ? 'error' : 'warning',
    part: other.name,
    span: other.source.nameSpan,
    message: `${other.name} stands ${told}${uneven ? ': the engine idles unevenly' : ''}`,
    cure: uneven ? 'Set the rod at which both rest on their stops together' : 'Clock the arms of both shafts alike, and drive them alike',
    ranges: rangesBelow((at) => {
      const pose = poseAt(at);
      const [a, b] = [openingAt(build, pose, first.lever), openingAt(build, pose, second.lever)];
      return (at === 0 || (a + b) / 2 < NEAR_IDLE ? below : above) + SAME - Math.abs(a - b);
    }, samples),
    worst: { value: Math.abs(worst.opening.value), dimension: 'angle', travel: worst.opening.travel },
    limit: { value: worst.limit, dimension: 'angle', from: limit.from },
    related: [{ span: one.source.nameSpan, message: `${one.name}, with which it is compared` }],
    ...(uneven && restMend(study, one, other)),
  };
}

/** rad; less is rounding. */
const SAME = 1e-9;

function isSameSize({ travel: { build } }: Study, first: PlatesModel, second: PlatesModel): boolean {
  const [one, other] = [plateShape(build, first), plateShape(build, second)];
  return one.bore === other.bore && one.shaft === other.shaft && one.seat === other.seat;
}

/** E.g. `0.38° further open than front at rest, with 26 % more air`. Differences are those of the first less the second. */
function wordsOf({ where, difference: { area }, opening }: Part, than: string, sameSize: boolean): string {
  const apart = `${degrees(Math.abs(opening.value), 2)} ${opening.value < 0 ? 'further' : 'less'} open${than}`;
  const air = area === undefined || !sameSize ? undefined : airWords(area.value);
  if (where === 'at rest') return `${apart} at rest${air === undefined ? '' : `, with ${air} air`}`;
  const most = air === undefined || area === undefined ? '' : `, with up to ${air} air at ${percent(area.travel)}`;
  return `up to ${apart} ${where} ${degrees(NEAR_IDLE)} of opening, at ${percent(opening.travel)} of pedal travel${most}`;
}

function airWords(area: number): string {
  return `${percent(Math.abs(area))} ${area < 0 ? 'more' : 'less'}`;
}

/**
 * The length of a rod at which the shaft that stands further open rests as the other does: the rod off its drawn length on the way to
 * either of them and not to both, else the nearest on its own way.
 */
function restMend(study: Study, one: LeverModel, other: LeverModel): { readonly mend?: Mend } {
  const { mechanism, build, poseAt } = study.travel;
  const pose = poseAt(0);
  const [a, b] = [openingAt(build, pose, one.index), openingAt(build, pose, other.index)];
  const [open, shut] = a > b ? [one, other] : [other, one];
  const toShut = rodsBefore(study, shut.index);
  const toOpen = rodsBefore(study, open.index);
  const own = [...toOpen.filter((rod) => !toShut.includes(rod)), ...toShut.filter((rod) => !toOpen.includes(rod))];
  const rod = own.find((each) => isOffDrawn(study, each)) ?? own[0];
  if (rod?.lengthDimension === undefined) return {};
  const outcome = { kind: 'at' as const, column: `${open.name}.opening`, travel: 0 };
  return { mend: { unknown: mechanism.dimensions[rod.lengthDimension]!.path, outcome, target: Math.min(a, b) } };
}
