/**
 * A pin leaves its fork.
 *
 * `reach` says how near to its pivot and how far from it the fork can hold the pin. Beyond, the pin drops out of the open end or
 * stands against the bottom, and the throttle is either free of the pedal or jammed.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {tang: {radius: 30 mm, angle: 90 deg}}}
 *   fork: {pivot: [0, 60]}
 * pedal: {lever: pedal, opens: clockwise, travel: 35 deg}
 * slots:
 *   pair: {pin: pedal.tang, fork: fork, angle: 270 deg, reach: [25 mm, 38 mm]}
 * #                                                            ^^^^^^^^^^^^^^ error[slot-run-out]: at 100 % of pedal travel
 * ```
 *
 * Cure: make the fork longer, or bring its pivot nearer to the middle of the pin's way.
 */
import { greatestOf, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Slot } from '../../definition/definition.ts';
import type { Finding, Mend } from '../finding.ts';
import { LENGTH_MARGIN } from '../margin.ts';
import { along, writeBy, type Study } from '../study.ts';
import { millimetres, percent, rangeWords } from '../words.ts';

/** m; less is rounding. */
const SAME = 1e-9;

export function slotRunOut(study: Study): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'slot' || joint.source.reach === undefined) return [];
    const { min, max, span } = joint.source.reach;
    const reach = along(study, `${joint.name}.reach`);
    const inside = (travel: number): number => Math.min(reach(travel) - min.nominal, max.nominal - reach(travel));
    const worst = leastOf(inside, samples);
    if (worst === undefined || worst.value >= -SAME) return [];
    const ranges = rangesBelow(inside, samples);
    return [
      {
        code: 'slot-run-out',
        severity: 'error',
        part: joint.name,
        span,
        message: `The pin of ${joint.name} leaves its fork by ${millimetres(-worst.value)} at ${percent(worst.travel)} of pedal travel (${rangeWords(ranges)})`,
        cure: 'Make the fork longer, or bring its pivot nearer to the middle of the pin’s way',
        ranges,
        worst: { value: reach(worst.travel), dimension: 'length', travel: worst.travel },
        limit: { value: reach(worst.travel) < min.nominal ? min.nominal : max.nominal, dimension: 'length', from: 'reach of this slot' },
        ...longerFork(joint.source, leastOf(reach, samples)?.value ?? NaN, greatestOf(reach, samples)?.value ?? NaN),
      },
    ];
  });
}

/** A longer fork at the end that the pin passes; where it passes both, one figure does not mend it. */
function longerFork({ reach }: Slot, least: number, greatest: number): { readonly mend?: Mend } {
  if (reach === undefined) return {};
  const under = least < reach.min.nominal - SAME;
  const over = greatest > reach.max.nominal + SAME;
  if (under === over) return {};
  return under ? writeBy(reach.min, least - LENGTH_MARGIN) : writeBy(reach.max, greatest + LENGTH_MARGIN);
}
