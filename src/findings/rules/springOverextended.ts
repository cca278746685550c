/**
 * An extension spring is drawn out so far that it takes a set.
 *
 * Its coil or its hook then yields: it stays longer than it was, brings less, and its hook is where it breaks. The length is that at which the
 * first of them comes to its limit: the twist of the coil, the bending of the loop of a full hook, and where `hook_bend` is given the twist
 * where the wire leaves the coil. The limits are shares of the least tensile strength, from textbooks; those of extension springs were
 * read on a page that cites them. A spring given by `rate` is not checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [0, 0], arms: {tail: {radius: 30 mm, angle: 200 deg}}, stops: {open: 70 deg}}
 * pedal: {lever: shaft, opens: counterclockwise, travel: 70 deg}
 * springs:
 *   tail:
 *     from: [-10, 60]
 *     to: shaft.tail
 *     free_length: 65 mm
 *     initial_tension: 4 N
 *     wire: {diameter: 1 mm, mean_coil: 8 mm, active_turns: 10, material: music_wire}
 * #                                                         ^^ error[spring-overextended]: its hook is stressed to
 * ```
 *
 * Cure: hang it on a shorter arm or nearer, or take a spring with more turns, which gives way further.
 */
import { springSpan } from '../../forces/springs.ts';
import { HELD_FROM } from '../../forces/wire/limits.ts';
import { rateOf } from '../../forces/wire/rate.ts';
import { following, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { bearable, wireLoads, worstStress } from '../wireLoads.ts';
import { megapascals, millimetres, percent } from '../words.ts';

export function springOverextended(study: Study): readonly Finding[] {
  const { build, poseAt } = study.travel;
  return wireLoads(study).flatMap((each): Finding[] => {
    const { spring, wire, load, samples, greatest } = each;
    const most = bearable(each, 'held');
    if (spring.kind !== 'extension' || spring.freeLength === undefined || most === undefined) return [];
    const worst = worstStress(each, greatest.value);
    if (worst === undefined || !(greatest.value > most * (1 + SAME))) return [];
    const { length } = springSpan(build, poseAt(greatest.travel), spring);
    const free = build.parameters[spring.freeLength]!;
    const longest = free + Math.max(0, most - build.parameters[spring.initialTension]!) / rateOf(build, spring);
    const hook = worst.place === 'extension-coil' ? 'coil' : 'hook';
    return [
      {
        code: 'spring-overextended',
        severity: 'error',
        part: spring.name,
        span: wire.source.activeTurns.span,
        message: `${spring.name} is drawn out to ${millimetres(length)} at ${percent(greatest.travel)} of pedal travel: its ${hook} is stressed to ${megapascals(worst.stress)} and takes a set from ${millimetres(longest)} on`,
        cure: 'Hang it so that it is drawn out less, or take more turns',
        ranges: rangesBelow(
          following(load, (value) => most - value),
          samples,
        ),
        worst: { value: length, travel: greatest.travel, dimension: 'length' },
        limit: { value: longest, dimension: 'length', from: HELD_FROM },
      },
    ];
  });
}

/** Relative; what is just as much is not more, however it was rounded. */
const SAME = 1e-9;
