/** An angle of a joint that comes under or over its limit somewhere along the travel, as a finding. */
import type { FindingCode } from './codes.ts';
import type { AngledJoint } from './clocking.ts';
import type { Finding, TravelRange } from './finding.ts';
import { nameOf } from './jointName.ts';
import type { LimitPair } from './limits.ts';
import { along, trespass, type Study } from './study.ts';
import { degrees, percent, rangeWords } from './words.ts';

export interface AngleCheck {
  readonly code: FindingCode;
  /** Which column of the joint, e.g. `transmission`. */
  readonly angle: string;
  readonly limit: LimitPair;
  /** 1 where the angle must not come under its limit, −1 where it must not come over it. */
  readonly way: 1 | -1;
  /** What the joint has, e.g. `a drive angle`. */
  readonly what: string;
  readonly cure: string;
}

/**
 * Undefined where the angle keeps its limit.
 * @param leaveOut stretches beyond the limit that are told otherwise
 */
export function angleBeyondLimit(
  study: Study,
  joint: AngledJoint,
  check: AngleCheck,
  leaveOut?: (range: TravelRange) => boolean,
): Finding | undefined {
  const { code, angle, limit, way, what, cure } = check;
  const beyond = trespass(study, along(study, `${joint.name}.${angle}`), limit, way, leaveOut);
  if (beyond === undefined) return undefined;
  const { severity, worst, ranges } = beyond;
  const side = way > 0 ? 'under' : 'over';
  return {
    code,
    severity,
    part: joint.name,
    span: joint.source.nameSpan,
    message: `${nameOf(joint)} has ${what} of ${degrees(worst.value)} at ${percent(worst.travel)} of pedal travel; it is ${side} ${degrees(limit.warning)} ${rangeWords(ranges)}`,
    cure,
    ranges,
    worst: { ...worst, dimension: 'angle' },
    limit: { value: beyond.limit, dimension: 'angle', from: limit.from },
  };
}
