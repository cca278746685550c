/**
 * No spring that counts as return can close the plates of a shaft.
 *
 * Only springs on levers that rods, forks and couplings join to the shaft close it, and springs on what the shaft itself pulls. A cable
 * never pushes: a spring on the pedal pulls the pedal back and leaves the plates open, and so it is before a one-way coupling. A spring
 * inside a sensor, or another with `counts_as_return: false`, is not meant to do it. Formula SAE Rules 2024, IC.3.3.2, ask for return
 * springs at the throttle body itself. A file that describes no springs at all is not held to it; it is told that closing was not
 * checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], drums: {wheel: {radius: 60 mm, wraps: counterclockwise}}}
 *   shaft: {pivot: [320, 30], drums: {wheel: {radius: 24 mm, wraps: clockwise}}, stops: {open: 60 deg}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 24 deg}
 * cables: {main: {from: pedal.wheel, leaves: [80, 60], enters: [250, 54], to: shaft.wheel}}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
 * # ^^^^ error[no-return-spring]: No return spring closes shaft
 * springs:
 *   foot: {lever: pedal, rate: 4 N*mm/deg, preload: 900 N*mm}
 * ```
 *
 * Cure: put two return springs on the throttle shaft itself, or on a lever that a rod joins to it.
 */
import { leversOf } from '../../forces/springsReaching.ts';
import type { SpringModel } from '../../kinematics/attached.ts';
import type { Finding } from '../finding.ts';
import { platesBodies, unreadOfClosing } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { listed } from '../words.ts';

export function noReturnSpring(study: Study): readonly Finding[] {
  const all = study.travel.mechanism.attached.springs;
  if (all.length === 0 || unreadOfClosing(study) !== undefined) return [];
  return platesBodies(study).flatMap(({ levers, springs }): Finding[] => {
    const [first] = levers;
    const [plates] = first?.plates ?? [];
    if (first === undefined || plates === undefined || springs.some(({ source }) => source.countsAsReturn)) return [];
    const names = listed(levers.map(({ name }) => name));
    return [
      {
        code: 'no-return-spring',
        severity: 'error',
        part: first.name,
        span: plates.nameSpan,
        message: `No return spring closes ${names}: ${springs.length === 0 ? 'no spring of the file can reach it' : 'the springs that reach it do not count as return'}`,
        cure: `Put two return springs on ${first.name}, or on a lever that a rod joins to it`,
        related: all.map((spring) => ({ span: spring.source.nameSpan, message: whyNot(study, spring, springs) })),
      },
    ];
  });
}

function whyNot({ travel: { mechanism } }: Study, spring: SpringModel, reaching: readonly SpringModel[]): string {
  const levers = leversOf(spring).map((lever) => mechanism.levers[lever]!);
  const moved = levers.filter(({ group }) => group >= 0);
  const names = listed((moved.length > 0 ? moved : levers).map(({ name }) => name));
  if (reaching.includes(spring)) return `${spring.name} reaches it, but does not count as return`;
  if (moved.length === 0) return `${spring.name} works on ${names}, which nothing joins to it`;
  return `${spring.name} works on ${names}, from which no closing torque comes to it: a cable, a one-way coupling or free play does not push it closed`;
}
