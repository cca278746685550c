/**
 * The wire of a spring is stressed more than it bears.
 *
 * Over its limit held, the wire takes a set: the spring comes back weaker than it was wound, and with it the throttle. That is an error. Over
 * the limit of a million strokes, where one is known of the wire, it is a warning: springs of that stress break in time, and the limit is of
 * springs that come down to nothing at each stroke, which spares one that stays under preload. Both are shares of the least tensile strength
 * of the wire, from tables of textbooks, partly from memory; they are of wire that is not shot-peened, neither hot nor rusty. An extension
 * spring that takes a set is told as `spring-overextended`. Springs given by `rate` are not checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [0, 0], stops: {open: 80 deg}}
 * pedal: {lever: shaft, opens: counterclockwise, travel: 80 deg}
 * springs:
 *   winder:
 *     lever: shaft
 *     preload: 150 N*mm
 *     wire: {diameter: 2 mm, mean_coil: 14 mm, active_turns: 3.5, material: music_wire, arbor: 9 mm}
 * #                                                                         ^^^^^^^^^^ error[spring-overstressed]: 110 % of the strength of its wire
 * ```
 *
 * Cure: take more turns or a larger coil: both bend the wire less at the same angle. Less preload helps too. No figure is offered: what the
 * spring must bring comes first.
 */
import { HELD_FROM, OFTEN_FROM, type StressPlace } from '../../forces/wire/limits.ts';
import { following, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { bearable, wireLoads, type WireLoad } from '../wireLoads.ts';
import { megapascals, percent, share } from '../words.ts';

export function springOverstressed(study: Study): readonly Finding[] {
  return wireLoads(study).flatMap((each) => {
    // What sets an extension spring is how far it is drawn out.
    const held = each.spring.kind === 'extension' ? undefined : overstressed(each, 'held');
    const isSet = isOver(each, bearable(each, 'held'));
    return held ?? (isSet ? [] : (overstressed(each, 'often') ?? []));
  });
}

function overstressed(each: WireLoad, which: 'held' | 'often'): readonly Finding[] | undefined {
  const { spring, wire, load, samples, greatest, strength, stresses } = each;
  const most = bearable(each, which);
  if (strength === undefined || most === undefined || !isOver(each, most)) return undefined;
  const place = stresses.find(
    ({ perLoad, limits }) => limits[which] !== undefined && perLoad * most >= limits[which] * strength * (1 - SAME),
  );
  const limit = place?.limits[which];
  if (place === undefined || limit === undefined) return undefined;
  const stress = place.perLoad * greatest.value;
  const fate = which === 'held' ? 'from which on it takes a set' : 'that it bears a million times';
  return [
    {
      code: 'spring-overstressed',
      severity: which === 'held' ? 'error' : 'warning',
      part: spring.name,
      span: wire.source.material.span,
      message: `${spring.name}: ${PLACE[place.place]} is stressed to ${megapascals(stress)} at ${percent(greatest.travel)} of pedal travel, ${share(stress / strength)} of the strength of its wire, over the ${share(limit)} ${fate}`,
      cure: CURE[spring.kind],
      ranges: rangesBelow(
        following(load, (value) => most - value),
        samples,
      ),
      worst: { value: stress / strength, travel: greatest.travel, dimension: 'number' },
      limit: { value: limit, dimension: 'number', from: which === 'held' ? HELD_FROM : OFTEN_FROM },
    },
  ];
}

function isOver({ greatest }: WireLoad, most: number | undefined): boolean {
  return most !== undefined && greatest.value > most * (1 + SAME);
}

/** Relative; what is just as much is not more, however it was rounded. */
const SAME = 1e-9;

const PLACE: Readonly<Record<StressPlace, string>> = {
  'torsion-coil': 'the inside of its coil',
  'compression-coil': 'the inside of its coil',
  'extension-coil': 'the inside of its coil',
  'hook-bend': 'the loop of its hook',
  'hook-twist': 'the bend into its hook',
};

const CURE = {
  torsion: 'Take more turns or a larger coil, or less preload',
  extension: 'Take more turns or a larger coil, or draw it out less',
  compression: 'Take more turns or a larger coil, or press it together less',
} as const;
