/**
 * Two shafts with plates do not open together.
 *
 * Every barrel should get the same air. Near idle a tenth of a degree is a good part of the whole opening, and the engine idles
 * unevenly and stumbles as it comes off idle; further up half a degree is hardly felt. Each shaft is compared with that of the first
 * plates in the file. More than 0.1° apart at rest or below 5° of opening (of both in the mean), or 0.5° above, is a warning; more
 * than 0.5° at rest an error: common practice, no source. `limits: {step: …}` replaces both figures, the one below and the one above 5°.
 * The difference in air is of open area, relative to the mean of both, and is told of plates of one size only. Where plates of one size
 * have another seat or idle, they differ in air at the same opening: at rest and below 5° that is held against the same limits, as the
 * opening that would make it. A shaft that a stage drives (a coupling with `lag` or `one_way`, a rod with `lost`) is out of step on purpose:
 * that is a note.
 *
 * ```yaml
 * format: 1
 * levers:
 *   crank: {pivot: [0, 0]}
 *   front: {pivot: [100, 0], stops: {open: 80 deg}}
 *   rear: {pivot: [200, 0], stops: {open: 78 deg}}
 * # ^^^^ warning[out-of-step]: rear stands up to 0.12° less open than front below 5° of opening (mean of both)
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
import type { Joint, LeverModel } from '../../kinematics/model.ts';
import { hasPlay } from '../../kinematics/rest.ts';
import { NEAR_IDLE, outOfStep as stepsOf, stepFigure, stepSamples, type StepDifference } from '../../plates/outOfStep.ts';
import { areaAt, areaSlopeAt, openingAt, plateShape } from '../../plates/platesAt.ts';
import { rangesBelow, type Extreme } from '../../travel/extremes.ts';
import type { Finding, Mend } from '../finding.ts';
import { isOffDrawn, rodsBefore } from '../rodsBefore.ts';
import { limitOf, type Study } from '../study.ts';
import { openingLevers } from '../wayOfOpening.ts';
import { degrees, percent, squareMillimetres } from '../words.ts';

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
  /** What is beyond the limit: of opening, or, as `air`, the opening that would make the difference in area. */
  readonly what: 'opening' | 'air';
  readonly found: Extreme;
  /** rad. */
  readonly limit: number;
}

function stepFinding(study: Study, first: PlatesModel, second: PlatesModel): Finding | undefined {
  const { mechanism, build, poseAt } = study.travel;
  const limit = limitOf(study, 'step');
  const below = limit.warning;
  const above = limit.error ?? limit.warning;
  const { atRest, nearIdle, above: further } = stepsOf(study.travel, first, second);
  const [one, other] = [mechanism.levers[first.lever]!, mechanism.levers[second.lever]!];
  const stage = stageBetween(study, one, other);
  const fit = fitOf(study, first, second);
  const part = (where: Where, difference: StepDifference, most: number): readonly Part[] => {
    const isBeyond = (found: Extreme | undefined): found is Extreme => found !== undefined && Math.abs(found.value) > most + SAME;
    const { opening, air } = difference;
    if (isBeyond(opening)) return [{ where, difference, what: 'opening', found: opening, limit: most }];
    const isCompared = where !== 'above' && stage === undefined && fit === 'other seat or idle';
    return isCompared && isBeyond(air) ? [{ where, difference, what: 'air', found: air, limit: most }] : [];
  };
  const resting = part('at rest', atRest, below);
  // Where it is greatest at rest, that is told already.
  const idling = part('below', nearIdle, below).filter(({ found }) => resting.length === 0 || found.travel > 0);
  const parts = [...resting, ...idling, ...part('above', further, above)];
  const excess = (of: Part): number => Math.abs(of.found.value) / of.limit;
  const [worst] = [...parts].sort((a, b) => excess(b) - excess(a));
  if (worst === undefined) return undefined;
  const common = {
    code: 'out-of-step' as const,
    part: other.name,
    span: other.source.nameSpan,
    related: [{ span: one.source.nameSpan, message: `${one.name}, with which it is compared` }],
  };
  if (stage !== undefined && resting.length === 0) {
    const [widest = worst] = [...parts].sort((a, b) => Math.abs(b.found.value) - Math.abs(a.found.value));
    return { ...common, severity: 'note', message: stageWords(widest, one.name, other.name, stage), ...worstOf(widest, limit.from) };
  }
  const told = stage === undefined ? parts : resting;
  const uneven = resting.length > 0;
  const isApart = resting.some(({ what }) => what === 'opening');
  const failed = limit.error !== undefined && resting.some(({ found }) => Math.abs(found.value) > (limit.error ?? 0) + SAME);
  const openingOf = (at: number, { lever }: PlatesModel): number => openingAt(build, poseAt(at, lever), lever);
  const areaOf = (at: number, plates: PlatesModel): number => areaAt(build, poseAt(at, plates.lever), plates);
  const areas = (at: number): readonly [number, number] => [areaOf(at, first), areaOf(at, second)];
  /** How far they may still come apart, rad. */
  const spare = (at: number): number => {
    const [a, b] = [openingOf(at, first), openingOf(at, second)];
    const near = at === 0 || (a + b) / 2 < NEAR_IDLE;
    const [more, less] = areas(at);
    const slope = areaSlopeAt(build, poseAt(at, second.lever), second);
    const air = near && fit === 'other seat or idle' && slope > 0 ? Math.abs(more - less) / slope : 0;
    return (near ? below : above) + SAME - Math.max(Math.abs(a - b), air);
  };
  const words = told.map((each, i) => wordsOf(each, i === 0 ? ` than ${one.name}` : '', fit !== 'another size', areas)).join('; ');
  return {
    ...common,
    severity: failed ? 'error' : 'warning',
    message: `${other.name} ${words}${uneven ? ': the engine idles unevenly' : ''}`,
    cure: isApart
      ? 'Set the rod at which both rest on their stops together'
      : told.every(({ what }) => what === 'air')
        ? `Give ${first.name} and ${second.name} the same \`seat\` and \`idle\`, or set their stops to the same air`
        : 'Clock the arms of both shafts alike, and drive them alike',
    ranges: rangesBelow(
      stepFigure(study.travel, first, second, `within ${below} ${above} ${fit}`, spare),
      stepSamples(study.travel, first, second),
    ),
    ...worstOf(stage === undefined ? worst : (resting[0] ?? worst), limit.from),
    ...(isApart && restMend(study, one, other)),
  };
}

function worstOf({ found, limit }: Part, from: string): Pick<Finding, 'worst' | 'limit'> {
  return {
    worst: { value: Math.abs(found.value), dimension: 'angle', travel: found.travel },
    limit: { value: limit, dimension: 'angle', from },
  };
}

/** rad; less is rounding. */
const SAME = 1e-9;

/** How the plates of two shafts compare: a difference in bore or shaft is on purpose, and so are other figures for air then. */
function fitOf({ travel: { build } }: Study, first: PlatesModel, second: PlatesModel): 'alike' | 'other seat or idle' | 'another size' {
  const [one, other] = [plateShape(build, first), plateShape(build, second)];
  if (one.bore !== other.bore || one.shaft !== other.shaft) return 'another size';
  const idle = ({ idle: at }: PlatesModel): number => build.parameters[at]!;
  return one.seat === other.seat && idle(first) === idle(second) ? 'alike' : 'other seat or idle';
}

/** The joint by which one of the shafts follows as a later stage; undefined where both are driven alike. */
function stageBetween({ travel: { mechanism } }: Study, one: LeverModel, other: LeverModel): Joint | undefined {
  const wayTo = (lever: LeverModel): readonly Joint[] => {
    const way: Joint[] = [];
    for (let at = lever.driver; at !== undefined; at = mechanism.levers[mechanism.joints[at]!.driver ?? -1]?.driver) {
      way.push(mechanism.joints[at]!);
    }
    return way;
  };
  const [first, second] = [wayTo(one), wayTo(other)];
  const apart = [...second.filter((joint) => !first.includes(joint)), ...first.filter((joint) => !second.includes(joint))];
  return apart.find((joint) => joint.kind !== 'slot' && hasPlay(joint));
}

/** Differences are those of the first less the second. */
function stageWords({ found }: Part, one: string, other: string, stage: Joint): string {
  const apart = `${degrees(Math.abs(found.value))} ${found.value < 0 ? 'further' : 'less'} open than ${one}`;
  return `${other} and ${one} open in stages, by the ${stage.kind} ${stage.name}: ${other} stands up to ${apart}, at ${percent(found.travel)} of pedal travel`;
}

/**
 * E.g. `stands 0.38° further open than front at rest, with 26 % more air`. Differences are those of the first less the second.
 * @param areas open area of one plate of each at a pedal travel, m²
 */
function wordsOf(
  { where, difference: { area }, what, found }: Part,
  than: string,
  sameSize: boolean,
  areas: (at: number) => readonly [number, number],
): string {
  const place =
    where === 'at rest'
      ? ' at rest'
      : ` ${where} ${degrees(NEAR_IDLE)} of opening (mean of both), at ${percent(found.travel)} of pedal travel`;
  const upTo = where === 'at rest' ? '' : 'up to ';
  if (what === 'air') {
    const [first, second] = areas(found.travel);
    const share = airWords((2 * (first - second)) / (first + second));
    return `passes ${upTo}${share} air${than}${place}, ${squareMillimetres(second)} against ${squareMillimetres(first)} a plate: as much as ${degrees(Math.abs(found.value))} of opening`;
  }
  const apart = `stands ${upTo}${degrees(Math.abs(found.value))} ${found.value < 0 ? 'further' : 'less'} open${than}${place}`;
  const air = area === undefined || !sameSize ? undefined : airWords(area.value);
  if (air === undefined || area === undefined) return apart;
  return where === 'at rest' ? `${apart}, with ${air} air` : `${apart}, with up to ${air} air at ${percent(area.travel)}`;
}

/** By how much the second passes more or less than the first. @param area first less second, over the mean of both */
function airWords(area: number): string {
  const less = area / (1 + area / 2);
  if (!Number.isFinite(less)) return 'all the';
  return `${percent(Math.abs(less))} ${less < 0 ? 'more' : 'less'}`;
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
