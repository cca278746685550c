/**
 * The pedal is down and a shaft with plates is not fully open.
 *
 * The engine never gets all the air that the plates could pass. Full is the shaft's open stop, or, where it has none, 90° of plate
 * less seat and idle. Short of it by 0.1° or less is taken as full, since of two shafts only one can touch its stop: common practice,
 * no source. It is a warning, and an error where the shaft does not open at all; that nothing drives it is told as
 * `not-driven`. Where it opens furthest at a dead centre on the way to it, that is what is told, with the shortfall beside it.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {closed: 0 deg, open: 82 deg}
 * #                                ^^^^^^ warning[opening-missed]: 5.13° short of its full 82°
 * pedal: {cable: main, pull: 33.2 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}
 * ```
 *
 * Cure: lengthen the driving arm, shorten the driven arm or take a smaller drum, or give the pedal more travel.
 */
import { greatestOf } from '../../travel/extremes.ts';
import { passedAt } from '../../kinematics/joints/cable.ts';
import type { CableJoint, Joint, LeverModel, RodJoint } from '../../kinematics/model.ts';
import { travelOf } from '../../travel/travel.ts';
import type { Finding, Mend } from '../finding.ts';
import { OPENING_TOLERANCE } from '../openingTolerance.ts';
import { restedWith } from '../restingLength.ts';
import { drawnLength, isOffDrawn, lengthToSet, lengthWords, offDrawnWords, rodsBefore } from '../rodsBefore.ts';
import { along, mendBy, writeBy, type Study } from '../study.ts';
import { degrees, millimetres, percent } from '../words.ts';

export function openingMissed(study: Study): readonly Finding[] {
  const { mechanism, build, samples } = study.travel;
  return mechanism.levers.flatMap((lever): Finding[] => {
    // Of a lever that nothing drives, the text has its problem.
    if (lever.fullOpening === undefined || lever.group < 0) return [];
    const full = build.parameters[lever.fullOpening]!;
    const greatest = greatestOf(along(study, `${lever.name}.opening`), samples);
    if (greatest === undefined || greatest.value >= full - OPENING_TOLERANCE) return [];
    const joint = lever.driver === undefined ? undefined : mechanism.joints[lever.driver];
    const loose = looseCable(study, lever);
    const rod = rodToBlame(study, lever, full);
    return [
      {
        code: 'opening-missed',
        severity: greatest.value > OPENING_TOLERANCE ? 'warning' : 'error',
        part: lever.name,
        span: lever.openStop?.span ?? lever.source.nameSpan,
        message: `${lever.name} opens ${degrees(greatest.value)} at most, at ${percent(greatest.travel)} of pedal travel: ${degrees(full - greatest.value)} short of its full ${degrees(full)}`,
        ...(rod
          ? { cure: `Set ${rod.joint.name} to ${lengthWords(study, rod.joint, rod.length)}, its length as drawn` }
          : loose === undefined
            ? missedCure(study, lever, greatest.travel)
            : { cure: loose }),
        worst: { ...greatest, dimension: 'angle' },
        limit: { value: full, dimension: 'angle', from: lever.openStop ? 'open stop of this lever' : '90° of plate less seat and idle' },
        ...(rod ? writeBy(rod.joint.source.length, rod.length) : joint && loose === undefined && missedMend(study, lever, joint, full)),
        ...relatedOf(study, lever, joint, rod?.joint),
      },
    ];
  });
}

/** The rod on the way to a lever with which, were it as long as drawn, the lever would open fully, with that length; undefined where there is none. */
function rodToBlame(study: Study, lever: LeverModel, full: number): { readonly joint: RodJoint; readonly length: number } | undefined {
  const { mechanism, build } = study.travel;
  for (const joint of rodsBefore(study, lever.index)) {
    const opensWith = (length: number): boolean =>
      mechanism.senses[lever.index]! * travelOf(restedWith(build, joint, length)).poseAt(1).rotation[lever.index]! >=
      full - OPENING_TOLERANCE;
    const drawn = drawnLength(study, joint);
    if (isOffDrawn(study, joint) && opensWith(drawn)) return { joint, length: lengthToSet(joint, drawn, opensWith) };
  }
  return undefined;
}

function relatedOf(study: Study, lever: LeverModel, joint: Joint | undefined, off: RodJoint | undefined): Pick<Finding, 'related'> {
  if (off !== undefined) {
    const span = off.source.length?.span ?? off.source.nameSpan;
    return { related: [{ span, message: `${off.name} is ${offDrawnWords(study, off)}` }] };
  }
  return joint?.kind === 'rod' ? { related: [{ span: joint.source.nameSpan, message: `${joint.name} drives ${lever.name}` }] } : {};
}

/** What to do about a cable before a lever that is never pulled tight; undefined where there is none. */
function looseCable(study: Study, lever: LeverModel): string | undefined {
  const { mechanism, build, samples } = study.travel;
  const joint = mechanism.groups[lever.group]?.cable;
  const cable = joint === undefined ? undefined : mechanism.cables[joint];
  const most = cable && greatestOf(along(study, `${cable.name}.pull`), samples);
  if (cable === undefined || most === undefined) return undefined;
  const slack = build.parameters[cable.slack]! + build.bounds.cableRest[cable.cable]!;
  if (most.value > slack) return undefined;
  return `Pull the cable ${cable.name} further or the other way: it is pulled by ${millimetres(most.value)} at most, and has ${millimetres(slack)} of slack`;
}

/** The other lever of its group that meets its open stop first, if one does. */
function stoppedBy(study: Study, lever: LeverModel): LeverModel | undefined {
  const contact = study.travel.contacts.find((each) => each.group === lever.group);
  return contact === undefined || contact.lever === lever.index ? undefined : study.travel.mechanism.levers[contact.lever];
}

/** What would open it further, told only where it is plain: it still opens as the pedal lands, or another lever's stop holds it. */
function missedCure(study: Study, lever: LeverModel, travel: number): { readonly cure?: string } {
  const { mechanism, poseAt } = study.travel;
  const other = stoppedBy(study, lever);
  if (other !== undefined) {
    return { cure: `${other.name} meets its open stop first and holds the whole group: set both stops to be met together` };
  }
  const pose = poseAt(1);
  const opens = travel === 1 && mechanism.senses[lever.index]! * pose.rate[lever.index]! > 0;
  if (!opens) return {};
  const joint = lever.driver === undefined ? undefined : mechanism.joints[lever.driver];
  switch (joint?.kind) {
    case undefined:
      return { cure: 'Give the pedal more travel' };
    case 'coupling':
      return { cure: 'Give the coupling a greater ratio or less lag, or the pedal more travel' };
    case 'cable':
      return { cure: cableCure(study, lever, joint) };
    default:
      return { cure: 'Lengthen the driving arm or shorten the driven arm, or give the pedal more travel' };
  }
}

/** How much further the cable would have to be pulled, and what of that its slack takes. */
function cableCure({ travel: { build, mechanism, poseAt } }: Study, lever: LeverModel, joint: CableJoint): string {
  const p = build.parameters;
  const slack = p[joint.slack]! + build.bounds.cableRest[joint.cable]!;
  const end = joint.drivenEnd;
  const sense = mechanism.senses[lever.index]!;
  const full = lever.fullOpening === undefined ? NaN : p[lever.fullOpening]!;
  const more =
    passedAt(mechanism, end, joint.driven, p, sense * full) - passedAt(mechanism, end, joint.driven, p, poseAt(1).rotation[lever.index]!);
  const further = more > 0 ? ` by ${millimetres(more)}` : '';
  const smaller = end.kind === 'drum' ? `take a smaller drum than ${lever.name}.${end.drum.name}` : 'shorten the driven arm';
  const pulled = `Pull the cable ${joint.name} further${further}, or ${smaller}`;
  return slack > SLACK && slack > more - SLACK ? `${pulled}; its slack takes ${millimetres(slack)}` : pulled;
}

/** m; less is none. */
const SLACK = 1e-6;

/**
 * The figure that sets how far it opens. Aimed half a tolerance short of full: beyond the stop the opening stays the same, so that
 * exactly full is no crossing but a whole stretch of the figure.
 */
function missedMend(study: Study, lever: LeverModel, joint: Joint, full: number): { readonly mend?: Mend } {
  const unknown = moverOf(joint);
  // Another lever's stop holds the group however far a cable pulls it.
  if (unknown === undefined || (joint.kind === 'cable' && stoppedBy(study, lever) !== undefined)) return {};
  return mendBy(study, unknown, { kind: 'greatest', column: `${lever.name}.opening` }, full - OPENING_TOLERANCE / 2);
}

/** Path of a rod's driving radius, a cable's driven one, or a coupling's ratio. */
function moverOf({ kind, name, source }: Joint): string | undefined {
  switch (kind) {
    case 'rod':
      return `levers.${source.from.lever}.arms.${source.from.part}.radius`;
    case 'cable':
      return `levers.${source.to.lever}.${source.to.kind === 'drum' ? 'drums' : 'arms'}.${source.to.part}.radius`;
    case 'coupling':
      return `couplings.${name}.ratio`;
    case 'slot':
      return undefined;
  }
}
