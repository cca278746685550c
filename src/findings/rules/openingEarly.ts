/**
 * An open stop is met before the pedal lands.
 *
 * What is left of the pedal's travel stretches the cable; with no cable before it, the linkage takes the whole foot, and bends.
 * Either way the next hard push ends at the throttle shaft instead of the pedal's own stop. Up to 2 mm of stretch is a note, more of
 * it, or a linkage that takes the foot, a warning: common practice, no source.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {closed: 0 deg, open: 82 deg}
 * #                                ^^^^^^ warning[opening-early]: the rest of the travel stretches the cable main by 3.65 mm
 * pedal: {cable: main, pull: 39 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}
 * ```
 *
 * Cure: let the pedal meet its own stop first: less pedal travel, a shorter driving arm, a longer driven arm or a larger drum.
 */
import type { Contact } from '../../travel/stops.ts';
import { greatestOf } from '../../travel/extremes.ts';
import type { Finding, Mend } from '../finding.ts';
import { LENGTH_MARGIN } from '../margin.ts';
import { OPENING_TOLERANCE } from '../openingTolerance.ts';
import { along, mendBy, type Study } from '../study.ts';
import { millimetres, percent } from '../words.ts';

/** m of cable stretch that a stop may take without remark: common practice, no source. */
const STRETCH = 2e-3;

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
        ...(cable === undefined ? landingMend(study, contact) : stretch !== undefined && stretchMend(study, cable.name, stretch)),
      },
    ];
  });
}

/** Less pedal, until the cable stretches no more than it may; none is needed for what is only a note. */
function stretchMend(study: Study, cable: string, stretch: number): { readonly mend?: Mend } {
  if (stretch <= STRETCH) return {};
  return mendBy(study, pedalPath(study), { kind: 'greatest', column: `${cable}.stretch` }, STRETCH - LENGTH_MARGIN);
}

/** Less pedal, until it lands as the stop is all but met: beyond, the opening stays the same, and nothing tells by how much. */
function landingMend(study: Study, contact: Contact): { readonly mend?: Mend } {
  const { mechanism, build } = study.travel;
  const lever = mechanism.levers[contact.lever]!;
  if (lever.openStop === undefined) return {};
  const stop = build.parameters[lever.openStop.parameter]!;
  return mendBy(study, pedalPath(study), { kind: 'greatest', column: `${lever.name}.opening` }, stop - OPENING_TOLERANCE / 2);
}

function pedalPath({ travel }: Study): string {
  return travel.mechanism.drive.kind === 'lever' ? 'pedal.travel' : 'pedal.pull';
}
