/** What is left open of springs, plates, sensors and the pedal's force, each with the reason. */
import type { Span } from '../definition/span.ts';
import { isMoved, leversOf, springsReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { whyNoForceAt } from '../requirements/missing.ts';
import { rangesBelow, type Along, type Range } from '../travel/extremes.ts';
import { rangeWords } from '../travel/words.ts';
import type { NotChecked } from './finding.ts';
import { closingAlong, effortAlong } from './forcesAlong.ts';
import { hasUnreadSprings, whyClosingUnknown } from './platesClosing.ts';
import { frictionNotChecked } from './frictionNotChecked.ts';
import { movedLevers, movedStudy } from './movedLinkage.ts';
import { reactionsNotChecked } from './reactionsNotChecked.ts';
import { restBand } from './restBand.ts';
import { hasFaultBand } from './sensorFit.ts';
import { missingOf } from './springActions.ts';
import type { Study } from './study.ts';
import { whyStill } from './whyStill.ts';
import { wireNotChecked } from './wireNotChecked.ts';

/** Of the pedal: told where one part is lost. */
export const SNAPS_BACK = 'how fast it snaps back: that is worked out with what one lost part leaves';

export function attachedNotChecked(study: Study): readonly NotChecked[] {
  return [...springsLeft(study), ...platesLeft(study), ...sensorsLeft(study), ...pedalLeft(study), ...movementsLeft(study)];
}

function told(part: { readonly name: string; readonly nameSpan: Span }, message: string): NotChecked {
  return { part: part.name, span: part.nameSpan, message: `Not checked: ${message}` };
}

function springsLeft(study: Study): readonly NotChecked[] {
  const { definition } = study;
  const { mechanism } = study.travel;
  const { springs } = mechanism.attached;
  const torqueLeft = (spring: SpringModel): readonly string[] => {
    const missing = missingOf(spring);
    if (missing !== undefined) return [`its torque, ${missing}`];
    if (definition.pedal === undefined || isMoved(mechanism, spring)) return [];
    const still = leversOf(spring).map((lever) => mechanism.levers[lever]!.name);
    return [`whether it closes the throttle, since ${whyStill(definition, still)}`];
  };
  return springs.flatMap((spring) =>
    [...torqueLeft(spring), ...wireNotChecked(study, spring)].map((message) => told(spring.source, message)),
  );
}

function platesLeft(study: Study): readonly NotChecked[] {
  const { mechanism } = study.travel;
  const { plates, springs } = mechanism.attached;
  return plates.flatMap((each): NotChecked[] => {
    const lever = mechanism.levers[each.lever]!;
    const { source } = each;
    if (lever.group < 0) return [told(source, `open area, closing torque and step, since ${whyStill(study.definition, [lever.name])}`)];
    const reaching = springsReaching(mechanism, lever.index);
    const left: NotChecked[] = [];
    const unknown = whyClosingUnknown(study, reaching);
    if (springs.length === 0 && !hasUnreadSprings(study)) {
      left.push(told(source, 'what closes its shaft, since the file describes no springs'));
    } else if (unknown !== undefined) left.push(told(source, `the closing torque of its shaft, since ${unknown}`));
    else left.push(...closingGaps(study, lever, source));
    if (source.vacuum !== undefined) left.push(told(source, 'what `vacuum` adds to the closing torque'));
    return left;
  });
}

/** Where the closing torque has no value though the lever stands somewhere: behind a cable that stretches without a stiffness. */
function closingGaps(study: Study, lever: LeverModel, source: { readonly name: string; readonly nameSpan: Span }): readonly NotChecked[] {
  const ranges = gaps(study, closingAlong(study, lever.index));
  return ranges.length === 0
    ? []
    : [told(source, `the closing torque of its shaft ${rangeWords(ranges)}, ${whyAt(study, `${lever.name}.closing`, ranges)}`)];
}

/** Stretches where a figure has no value though every lever that the pedal moves stands somewhere. */
function gaps({ travel: { mechanism, poseAt, samples } }: Study, figure: Along): readonly Range[] {
  const stands = (at: number): boolean => {
    const { rotation } = poseAt(at);
    return mechanism.levers.every(({ group, index }) => group < 0 || !Number.isNaN(rotation[index]!));
  };
  const lacks: Along = (at) => (Number.isNaN(figure(at)) && stands(at) ? -1 : 1);
  return rangesBelow(lacks, samples).filter(({ from, to }) => to - from > ONE_PLACE);
}

function whyAt({ travel }: Study, column: string, [gap]: readonly Range[]): string {
  const why = gap && whyNoForceAt(column, travel, (gap.from + gap.to) / 2);
  return why === undefined ? 'where a force is not known' : `since ${why}`;
}

/** Of the travel; at a dead centre a figure has no value at one place alone. */
const ONE_PLACE = 1e-6;

function sensorsLeft(study: Study): readonly NotChecked[] {
  const { mechanism } = study.travel;
  return mechanism.attached.sensors.flatMap((sensor): NotChecked[] => {
    const lever = mechanism.levers[sensor.lever]!;
    const { source } = sensor;
    if (lever.group < 0) return [told(source, `signal and range, since ${whyStill(study.definition, [lever.name])}`)];
    return [
      ...(sensor.mechanical === undefined ? [told(source, 'whether it is turned past its own stops, for want of `mechanical`')] : []),
      ...(hasFaultBand(study, sensor)
        ? []
        : [told(source, 'whether its signal is taken for a fault: that is known of sensors with a supply of 5 V only')]),
    ];
  });
}

function pedalLeft(study: Study): readonly NotChecked[] {
  const { definition, columns, travel } = study;
  const { pedal } = definition;
  if (pedal === undefined) return [];
  const one = (message: string): NotChecked => ({ part: 'pedal', span: pedal.span, message: `Not checked: ${message}` });
  const { attached } = travel.mechanism;
  const left = [...frictionNotChecked(study), ...reactionsNotChecked(study), one(SNAPS_BACK)];
  const moved = attached.springs.filter((spring) => isMoved(travel.mechanism, spring));
  const unknown = whyClosingUnknown(study, moved);
  if (unknown !== undefined) return [...left, one(`pedal effort, since ${unknown}`)];
  if (attached.springs.length === 0) return [...left, one('pedal effort, since the file describes no springs')];
  if (!columns.has('pedal.effort')) return [...left, one('pedal effort, for want of `pad`')];
  const ranges = gaps(study, effortAlong(study));
  return ranges.length === 0 ? left : [...left, one(`pedal effort ${rangeWords(ranges)}, ${whyAt(study, 'pedal.effort', ranges)}`)];
}

/** Of a spring whose anchor moves more than friction is asked only where there is friction to hold it against. */
function movementsLeft(study: Study): readonly NotChecked[] {
  const levers = movedLevers(study);
  return study.definition.movements.flatMap((movement) => {
    const { name, moves } = movement;
    const moving = levers.filter((each) => each.movement === movement);
    const isHeldAgainst = moving.length > 0 && moving.every(({ lever }) => restBand(movedStudy(study, movement), lever).kind !== 'unknown');
    return moves.flatMap((moved): NotChecked[] =>
      moved.kind === 'spring-anchor' && !isHeldAgainst
        ? [{ part: moved.spring, span: moved.span, message: `Not checked: what the movement ${name} does to its torque` }]
        : [],
    );
  });
}
