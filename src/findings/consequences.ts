/**
 * One root cause instead of its consequences. Where a joint comes to a dead centre or cannot be assembled, much else follows from that
 * alone: its angle runs through its limit to zero there, the lever that it drives turns back from there or never opens further. What
 * only follows is told beside its cause, as a related place with its own words, and not as a finding of its own. A lever that passes its
 * closed stop, and plates that pass their seat, stay findings: they jam, which is another danger, and have cures of their own.
 *
 * It follows only at that joint, a lever behind it or what turns with it, and only where it meets that place of the travel. Whatever is wrong elsewhere too
 * stays a finding: of an angle that is under its limit in several stretches, those that do not come to the dead centre.
 */
import type { Joint } from '../kinematics/model.ts';
import { angleBeyondLimit } from './angleBeyondLimit.ts';
import { driveCheck, transmissionCheck } from './angleChecks.ts';
import type { FindingCode } from './codes.ts';
import type { Finding, TravelRange } from './finding.ts';
import { isBehind } from '../kinematics/isBehind.ts';
import type { Study } from './study.ts';

/** What each cause explains. The order counts: what an earlier one explains is no cause any more. */
const EXPLAINS = [
  ['change-point', ['toggle-returning', 'transmission-angle', 'drive-angle', 'turns-back', 'opening-missed', 'friction-lock']],
  ['toggle-opening', ['not-assembled', 'transmission-angle', 'opening-missed']],
  ['toggle-returning', ['drive-angle', 'turns-back', 'opening-missed', 'friction-lock', 'signal-turns-back']],
  ['not-assembled', ['transmission-angle', 'opening-missed']],
] as const satisfies readonly (readonly [FindingCode, readonly FindingCode[]])[];

/** The findings in their order, without those that only follow from another of them, which tells them as related places. */
export function withoutConsequences(study: Study, findings: readonly Finding[]): readonly Finding[] {
  let left: readonly Finding[] = findings;
  for (const [code, explained] of EXPLAINS) {
    for (const root of left.filter((finding) => finding.code === code)) left = told(study, left, root, explained);
  }
  return left;
}

/** The findings with those that only follow from them, each behind the one that it follows from. */
export function withFollowing(findings: readonly Finding[]): readonly Finding[] {
  return findings.flatMap((finding) => [finding, ...(finding.following ?? [])]);
}

/** The findings with what follows from one of them told beside it. */
function told(study: Study, findings: readonly Finding[], root: Finding, explained: readonly FindingCode[]): readonly Finding[] {
  const joint = study.travel.mechanism.joints.find(({ name }) => name === root.part);
  if (joint === undefined) return findings;
  const following: Finding[] = [];
  const apart = findings.flatMap((finding): Finding[] => {
    if (finding === root || !explained.includes(finding.code) || !follows(study, joint, root, finding, findings)) return [finding];
    following.push(finding);
    return restOf(study, joint, root, finding);
  });
  if (following.length === 0) return findings;
  // What is told beside a consequence would else be lost; of the joint itself it is said already.
  const related = following.flatMap(({ span, message, related: beside = [] }) => [
    { span, message },
    ...beside.filter((each) => each.span.start !== root.span.start),
  ]);
  return apart.map((finding) => (finding === root ? { ...root, related: [...(root.related ?? []), ...related], following } : finding));
}

/** Whether some of a finding follows from what is found at a joint. */
function follows(study: Study, joint: Joint, root: Finding, finding: Finding, findings: readonly Finding[]): boolean {
  const { mechanism } = study.travel;
  switch (finding.code) {
    case 'opening-missed': {
      const lever = mechanism.levers.find(({ name }) => name === finding.part);
      // It opens furthest there: nothing else ends its way.
      return (
        lever !== undefined && isBehind(mechanism, joint, lever) && finding.worst !== undefined && meets(root, at(finding.worst.travel))
      );
    }
    case 'turns-back': {
      const lever = mechanism.levers.find(({ name }) => name === finding.part);
      return lever !== undefined && isBehind(mechanism, joint, lever) && (finding.ranges ?? []).every((range) => meets(root, range));
    }
    case 'signal-turns-back': {
      const sensor = mechanism.attached.sensors.find(({ name }) => name === finding.part);
      const lever = sensor && mechanism.levers[sensor.lever];
      return lever !== undefined && isBehind(mechanism, joint, lever) && (finding.ranges ?? []).every((range) => meets(root, range));
    }
    case 'friction-lock': {
      const lever = mechanism.levers.find(({ name }) => name === finding.part);
      const driver = joint.driver === undefined ? undefined : mechanism.levers[joint.driver];
      return lever !== undefined && driver?.group === lever.group && locksByDriveAngle(joint, root, finding, findings);
    }
    case 'not-assembled':
    case 'toggle-returning':
      return finding.part === joint.name && (finding.ranges ?? []).every((range) => meets(root, range));
    default:
      return finding.part === joint.name && (finding.ranges ?? []).some((range) => meets(root, range));
  }
}

/**
 * Whether friction holds what turns only on account of a dead centre of the driving arm. There the springs push back through nothing, so that
 * any friction is enough: from some place before it on, and beyond it, where they would push on. Friction that holds it before the drive angle
 * comes under its limit on the way there is too great by itself.
 */
function locksByDriveAngle(joint: Joint, root: Finding, { ranges = [] }: Finding, findings: readonly Finding[]): boolean {
  const drive = withFollowing(findings).find(({ code, part }) => code === 'drive-angle' && part === joint.name);
  const flat = (drive?.ranges ?? []).filter((range) => meets(root, range));
  return ranges.every(({ from }) => flat.some((range) => range.from - BESIDE <= from && from <= range.to + BESIDE));
}

/** What of an angle under its limit does not come to the place where it is zero: nothing of other findings. */
function restOf(study: Study, joint: Joint, root: Finding, { code, mend }: Finding): Finding[] {
  if (joint.kind === 'coupling' || (code !== 'transmission-angle' && code !== 'drive-angle')) return [];
  const check = code === 'drive-angle' ? driveCheck(study) : transmissionCheck(study);
  const rest = angleBeyondLimit(study, joint, check, (range) => meets(root, range));
  return rest === undefined ? [] : [{ ...rest, ...(mend && { mend }) }];
}

/** Whether a stretch begins, ends or lies at one of the places where a cause is met. */
function meets(root: Finding, { from, to }: TravelRange): boolean {
  const places = (root.ranges ?? []).flatMap((range) => [range.from, range.to]);
  return places.some((place) => from - BESIDE <= place && place <= to + BESIDE);
}

function at(travel: number): TravelRange {
  return { from: travel, to: travel };
}

/** Of the travel; how far apart two rules may find one place. */
const BESIDE = 1e-6;
