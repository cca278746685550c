/**
 * Whether the throttle opens fully, and what takes the foot.
 *
 * `opening-missed`: the pedal is down and a shaft with plates is not fully open. `opening-early`: an open stop is met before the
 * pedal lands; the rest of its travel stretches the cable, or, with no cable before it, the linkage takes the foot.
 */
import { greatestOf } from '../../travel/extremes.ts';
import type { LeverModel, RodJoint } from '../../kinematics/model.ts';
import type { Finding } from '../finding.ts';
import { along, mendBy, type Study } from '../study.ts';
import { degrees, millimetres, percent } from '../words.ts';

/** rad (0.1°); of two shafts only one can touch its stop, and this much less of opening changes no air. Common practice, no source. */
const OPEN = 0.1 * (Math.PI / 180);
/** m of cable stretch that a stop may take without remark: common practice, no source. */
const STRETCH = 2e-3;

export function openingMissed(study: Study): readonly Finding[] {
  const { mechanism, build, samples } = study.travel;
  return mechanism.levers.flatMap((lever): Finding[] => {
    if (lever.fullOpening === undefined) return [];
    if (lever.group < 0) return [undriven(lever)];
    const full = build.parameters[lever.fullOpening]!;
    const greatest = greatestOf(along(study, `${lever.name}.opening`), samples);
    if (greatest === undefined || greatest.value >= full - OPEN) return [];
    const rod = mechanism.joints.find((joint): joint is RodJoint => joint.driven === lever.index && joint.kind === 'rod');
    const loose = looseCable(study, lever);
    return [
      {
        code: 'opening-missed',
        severity: greatest.value > OPEN ? 'warning' : 'error',
        part: lever.name,
        span: lever.openStop?.span ?? lever.source.nameSpan,
        message: `${lever.name} opens ${degrees(greatest.value)} at most, at ${percent(greatest.travel)} of pedal travel: ${degrees(full - greatest.value, 2)} short of its full ${degrees(full)}`,
        ...(loose === undefined ? missedCure(study, lever, greatest.travel) : { cure: loose }),
        worst: { ...greatest, dimension: 'angle' },
        limit: { value: full, dimension: 'angle', from: lever.openStop ? 'open stop of this lever' : '90° of plate less seat and idle' },
        ...(rod &&
          mendBy(
            study,
            `levers.${rod.source.from.lever}.arms.${rod.source.from.part}.radius`,
            { kind: 'greatest', column: `${lever.name}.opening` },
            full,
          )),
        ...(rod && { related: [{ span: rod.source.nameSpan, message: `${rod.name} drives ${lever.name}` }] }),
      },
    ];
  });
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

/** Plates on a lever that the pedal does not reach. */
function undriven(lever: LeverModel): Finding {
  return {
    code: 'opening-missed',
    severity: 'error',
    part: lever.name,
    span: lever.source.nameSpan,
    message: `${lever.name} carries plates, and nothing on the way from the pedal drives it`,
    cure: 'Join it to the load path by a rod, a cable, a slot or a coupling',
  };
}

/** What would open it further, told only where it is plain: it still opens as the pedal lands, or another lever's stop holds it. */
function missedCure(study: Study, lever: LeverModel, travel: number): { readonly cure?: string } {
  const { mechanism, contacts, poseAt } = study.travel;
  const contact = contacts.find((each) => each.group === lever.group);
  if (contact !== undefined && contact.lever !== lever.index) {
    const other = mechanism.levers[contact.lever]!.name;
    return { cure: `${other} meets its open stop first and holds the whole group: set both stops to be met together` };
  }
  const pose = poseAt(1);
  const opens = travel === 1 && mechanism.senses[lever.index]! * pose.rate[lever.index]! > 0;
  if (!opens) return {};
  const joint = lever.driver === undefined ? undefined : mechanism.joints[lever.driver];
  return joint?.kind === 'coupling'
    ? { cure: 'Give the coupling a greater ratio or less lag, or the pedal more travel' }
    : { cure: 'Lengthen the driving arm or shorten the driven arm, or give the pedal more travel' };
}

export function openingEarly(study: Study): readonly Finding[] {
  const { mechanism, contacts, samples } = study.travel;
  return contacts.flatMap((contact): Finding[] => {
    if (contact.travel >= 1) return [];
    const lever = mechanism.levers[contact.lever]!;
    const group = mechanism.groups[contact.group]!;
    const cable = group.cable === undefined ? undefined : mechanism.cables[group.cable];
    // Not at full pedal: another stop may hold the pedal itself before that.
    const most = cable && greatestOf(along(study, `${cable.name}.stretch`), samples);
    const stretch = most?.value;
    const met = `${lever.name} meets its open stop at ${percent(contact.travel)} of pedal travel`;
    return [
      {
        code: 'opening-early',
        severity: stretch !== undefined && stretch <= STRETCH ? 'note' : 'warning',
        part: lever.name,
        span: lever.openStop?.span ?? lever.source.nameSpan,
        message:
          stretch === undefined || cable === undefined
            ? `${met}: with no cable before it, the linkage and not the pedal's stop takes the foot`
            : `${met}: the rest of the travel stretches the cable ${cable.name} by ${millimetres(stretch)}`,
        cure: 'Let the pedal meet its own stop first: less travel, a shorter driving arm or a longer driven arm',
        ranges: [{ from: contact.travel, to: 1 }],
        ...(stretch !== undefined && {
          worst: { value: stretch, dimension: 'length' as const, travel: most?.travel ?? 1 },
          limit: { value: STRETCH, dimension: 'length' as const, from: 'common practice, no source' },
        }),
      },
    ];
  });
}
