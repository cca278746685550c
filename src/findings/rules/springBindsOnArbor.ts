/**
 * The coil of a torsion spring winds itself tight on what stands in it, or nearly.
 *
 * Wound up, the wire makes more turns of a smaller diameter. Once it lies on its arbor it gives way no more: it grips, drags as it comes back
 * and can hold the throttle open. Where its inside comes down to the arbor it is an error; where it comes nearer than a tenth of itself, a
 * warning: a clearance that spring makers recommend, from memory. The spring is taken to wind up as the throttle opens, and to be
 * free of load where its torque is zero. Without `arbor` it is not checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [0, 0], stops: {open: 80 deg}}
 * pedal: {lever: shaft, opens: counterclockwise, travel: 80 deg}
 * springs:
 *   winder:
 *     lever: shaft
 *     preload: 100 N*mm
 *     wire: {diameter: 1.6 mm, mean_coil: 14 mm, active_turns: 9, material: music_wire, arbor: 12 mm}
 * #                                                                                            ^^^^^ error[spring-binds-on-arbor]: narrows to 11.92 mm inside at 100 %
 * ```
 *
 * Cure: take a thinner arbor, a larger coil, or more turns, which narrow less for the same angle. A sleeve in the place of a full shaft helps
 * nothing: it is the outside that counts.
 */
import { rateOf } from '../../forces/wire/rate.ts';
import { woundInside } from '../../forces/wire/torsion.ts';
import { following, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { wireLoads } from '../wireLoads.ts';
import { millimetres, percent } from '../words.ts';

export function springBindsOnArbor(study: Study): readonly Finding[] {
  const { build } = study.travel;
  return wireLoads(study).flatMap(({ spring, wire, coil, samples }): Finding[] => {
    const { arbor: written } = wire.source;
    if (spring.kind !== 'torsion' || wire.arbor === undefined || written === undefined) return [];
    const arbor = build.parameters[wire.arbor]!;
    const rate = rateOf(build, spring);
    const inside = following(along(study, `${spring.name}.torque`), (torque) => woundInside(coil, torque / rate));
    const least = leastOf(inside, samples);
    if (least === undefined) return [];
    const binds = least.value <= arbor + SAME;
    const limit = binds ? arbor : arbor / CLEAR_SHARE;
    if (!binds && !(least.value < limit - SAME)) return [];
    return [
      {
        code: 'spring-binds-on-arbor',
        severity: binds ? 'error' : 'warning',
        part: spring.name,
        span: written.span,
        message: `The coil of ${spring.name} narrows to ${millimetres(least.value)} inside at ${percent(least.travel)} of pedal travel, ${binds ? 'and binds on' : 'less than a tenth clear of'} its arbor of ${millimetres(arbor)}`,
        cure: 'Take a thinner arbor, a larger coil or more turns',
        ranges: rangesBelow(
          following(inside, (value) => value - limit),
          samples,
        ),
        worst: { ...least, dimension: 'length' },
        limit: {
          value: limit,
          dimension: 'length',
          from: binds ? 'arbor of this spring' : 'arbor of at most 90 % of the inside: spring makers’ practice, from memory',
        },
      },
    ];
  });
}

/** The most that an arbor should fill of the inside. */
const CLEAR_SHARE = 0.9;
/** m; less is rounding. */
const SAME = 1e-9;
