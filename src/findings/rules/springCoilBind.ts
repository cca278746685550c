/**
 * A compression spring is pressed together until its turns meet, or nearly.
 *
 * Turn on turn it is a stop: the linkage cannot go on, and something bends, which is an error. Where less than 15 % of its travel is left, a
 * turn that lies unevenly meets its neighbour before the others, and the spring grows stiffer than its rate: a warning, by a clearance that
 * Shigley's Mechanical Engineering Design gives (from memory). The solid length is `total_turns` times the wire; with ends that are not
 * ground, count one turn more. Without `total_turns` it is not checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [0, 0], arms: {tail: {radius: 20 mm, angle: 180 deg}}, stops: {open: 60 deg}}
 * pedal: {lever: shaft, opens: clockwise, travel: 60 deg}
 * springs:
 *   pusher:
 *     from: [-13.5, 37]
 *     to: shaft.tail
 *     kind: compression
 *     free_length: 38 mm
 *     wire: {diameter: 1.6 mm, mean_coil: 14 mm, active_turns: 11, total_turns: 13, material: music_wire}
 * #                                                                             ^^ error[spring-coil-bind]: would be solid at 20.8 mm
 * ```
 *
 * Cure: take a spring with fewer turns or thinner wire, or one that is longer and starts further away.
 */
import { springSpan } from '../../forces/springs.ts';
import { solidLength } from '../../forces/wire/helical.ts';
import { following, leastOf, rangesBelow, type Along } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { wireLoads } from '../wireLoads.ts';
import { millimetres, percent } from '../words.ts';

export function springCoilBind(study: Study): readonly Finding[] {
  const { build, poseAt } = study.travel;
  return wireLoads(study).flatMap(({ spring, wire, coil, samples }): Finding[] => {
    const turns = wire.source.totalTurns;
    if (spring.kind !== 'compression' || spring.freeLength === undefined || wire.totalTurns === undefined || turns === undefined) return [];
    const length: Along = (at) => springSpan(build, poseAt(at), spring).length;
    const least = leastOf(length, samples);
    if (least === undefined) return [];
    const solid = solidLength(coil, build.parameters[wire.totalTurns]!);
    const free = build.parameters[spring.freeLength]!;
    const clear = solid + CLEARANCE * (free - least.value);
    const isSolid = least.value < solid + SAME;
    if (!isSolid && !(least.value < clear - SAME)) return [];
    const limit = isSolid ? solid : clear;
    const is = `${spring.name} is pressed to ${millimetres(least.value)} at ${percent(least.travel)} of pedal travel`;
    return [
      {
        code: 'spring-coil-bind',
        severity: isSolid ? 'error' : 'warning',
        part: spring.name,
        span: turns.span,
        message: isSolid
          ? `${is} and would be solid at ${millimetres(solid)}`
          : `${is}, ${millimetres(least.value - solid)} from solid: less than 15 % of what it is pressed together`,
        cure: 'Take fewer turns or thinner wire, or a longer spring that starts further away',
        ranges: rangesBelow(
          following(length, (value) => value - limit),
          samples,
        ),
        worst: { ...least, dimension: 'length' },
        limit: {
          value: limit,
          dimension: 'length',
          from: isSolid ? 'solid length of this spring' : '15 % clearance: Shigley’s Mechanical Engineering Design, from memory',
        },
      },
    ];
  });
}

/** Of what the spring is pressed together. */
const CLEARANCE = 0.15;
/** m; less is rounding. */
const SAME = 1e-9;
