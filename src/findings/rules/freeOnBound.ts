/**
 * A value that `tune` leaves free stands on one of its bounds.
 *
 * A search that comes to a bound would have gone on had it been let: a curve nearer to the wanted one may lie beyond it. Where the bound is a
 * stock length or the room that there is, nothing is wrong with standing on it, so it is a note. Nearer to a bound than a ten-thousandth of
 * the way between both counts as on it: common practice, no source.
 *
 * ```yaml
 * format: 1
 * let:
 *   reach: 40 mm
 * #        ^^^^^ note[free-on-bound]: stands on 40 mm, the greatest that `tune` allows
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: reach, wraps: counterclockwise}}
 * pedal: {cable: main, pull: 30 mm}
 * cables:
 *   main: {enters: [40, 40], to: shaft.wheel}
 * tune:
 *   free:
 *     reach: {from: 20 mm, to: 40 mm}
 *   curve:
 *     of: shaft.opening
 *     through: [[0 %, 0 deg], [100 %, 42 deg]]
 * ```
 *
 * Cure: widen the bound if there is room, and tune again.
 */
import { formatQuantity } from '../../definition/edit.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';

export function freeOnBound({ definition: { tune, lets } }: Study): readonly Finding[] {
  return (tune?.free ?? []).flatMap((free): Finding[] => {
    const { value, name } = lets[free.let]!;
    const [from, to] = [free.from.nominal, free.to.nominal];
    const near = ON_BOUND * (to - from);
    const isOn = (bound: number): boolean => Math.abs(value.nominal - bound) <= near;
    const on = isOn(to) ? ('greatest' as const) : isOn(from) ? ('least' as const) : undefined;
    if (on === undefined) return [];
    const bound = on === 'greatest' ? free.to : free.from;
    return [
      {
        code: 'free-on-bound',
        severity: 'note',
        part: name,
        span: value.span,
        message: `${name} stands on ${formatQuantity(bound.nominal, value.unit) ?? 'a bound'}, the ${on} that \`tune\` allows: a curve nearer to the wanted one may lie beyond`,
        cure: 'Widen the bound if there is room, and tune again',
        related: [{ span: bound.span, message: `the ${on} that it may be` }],
      },
    ];
  });
}

/** Of the way between both bounds. */
const ON_BOUND = 1e-4;
