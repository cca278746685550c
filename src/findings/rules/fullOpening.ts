/**
 * Whether the throttle opens fully, and what takes the foot.
 *
 * `opening-missed`: the pedal is down and a shaft with plates is not fully open. `opening-early`: an open stop is met before the
 * pedal lands; the rest of its travel stretches the cable, or, with no cable before it, the linkage takes the foot.
 */
import { greatestOf } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { degrees, millimetres, percent } from '../words.ts';

/** rad (0.1°); of two shafts only one can touch its stop, and this much less of opening changes no air. Common practice, no source. */
const OPEN = 0.1 * (Math.PI / 180);
/** m of cable stretch that a stop may take without remark: common practice, no source. */
const STRETCH = 2e-3;

export function openingMissed(study: Study): readonly Finding[] {
  const { mechanism, build, samples } = study.travel;
  return mechanism.levers.flatMap((lever): Finding[] => {
    if (lever.fullOpening === undefined) return [];
    const full = build.parameters[lever.fullOpening]!;
    const greatest = greatestOf(along(study, `${lever.name}.opening`), samples);
    if (greatest === undefined || greatest.value >= full - OPEN) return [];
    const rod = mechanism.joints.find((joint) => joint.driven === lever.index && joint.kind === 'rod');
    return [
      {
        code: 'opening-missed',
        severity: 'warning',
        part: lever.name,
        span: lever.openStop?.span ?? lever.source.nameSpan,
        message: `${lever.name} opens ${degrees(greatest.value)} at most, at ${percent(greatest.travel)} of pedal travel: ${degrees(full - greatest.value, 2)} short of its full ${degrees(full)}`,
        cure: 'Lengthen the driving arm or shorten the driven arm, or give the pedal more travel',
        worst: { ...greatest, dimension: 'angle' },
        limit: { value: full, dimension: 'angle', from: lever.openStop ? 'open stop of this lever' : '90° of plate less seat and idle' },
        ...(rod && { related: [{ span: rod.source.nameSpan, message: `${rod.name} drives ${lever.name}` }] }),
      },
    ];
  });
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
