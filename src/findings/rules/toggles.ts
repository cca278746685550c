/**
 * Dead centres within the travel.
 *
 * `toggle-opening`: rod and driven arm come in line (transmission angle 0): the pedal cannot turn the lever further.
 * `toggle-returning`: rod and driving arm come in line (drive angle 0): the return springs cannot push back through, and a
 * throttle that passes it stays open.
 */
import { greatestOf, leastOf } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { percent } from '../words.ts';
import { nameOf } from './notAssembled.ts';

/** rad; at a dead centre found to the last bit of the travel the angle is the square root of that. */
const DEAD = 1e-6;

export function toggles(study: Study): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling') return [];
    const found: Finding[] = [];
    for (const which of ['transmission', 'drive'] as const) {
      const figure = along(study, `${joint.name}.${which}`);
      const least = leastOf(figure, samples);
      const most = greatestOf(figure, samples);
      if (least === undefined || most === undefined || least.value > DEAD) continue;
      const opening = which === 'transmission';
      const lever = mechanism.levers[opening ? joint.driven : (joint.driver ?? joint.driven)]!.name;
      found.push({
        code: opening ? 'toggle-opening' : 'toggle-returning',
        severity: 'error',
        part: joint.name,
        span: joint.source.nameSpan,
        message: opening
          ? `${nameOf(joint)} comes in line with the arm of ${lever} at ${percent(least.travel)} of pedal travel: the pedal cannot turn ${lever} beyond it`
          : `${nameOf(joint)} comes in line with the arm of ${lever} at ${percent(least.travel)} of pedal travel: the return springs cannot push back through it, and the throttle can stay open`,
        cure: opening
          ? 'Change the clocking of the driven arm, or take less travel'
          : 'Change the clocking of the driving arm, or take less travel',
        worst: { value: least.value, dimension: 'angle', travel: least.travel },
        ranges: [{ from: least.travel, to: least.travel }],
      });
    }
    return found;
  });
}
