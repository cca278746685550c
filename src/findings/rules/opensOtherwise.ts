/**
 * A lever is driven the other way than its `opens` says.
 *
 * It would close as the pedal goes down. Nothing else that is said of its way is then worth reading, so nothing else is said. Most
 * often one of the two is a slip of the pen: `opens` of the lever or the pedal, or `wraps` of a drum.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 * # ^^^^^ error[opens-otherwise]: it would close as the pedal goes down
 *     pivot: [100, 0]
 *     opens: clockwise
 *     drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}
 * pedal: {cable: main, pull: 24 mm}
 * cables:
 *   main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
 * ```
 *
 * Cure: check `opens` of this lever, `wraps` of the drum and `opens` of the pedal.
 */
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { drivenLevers, goesOtherwise } from '../wayOfOpening.ts';

export function opensOtherwise(study: Study): readonly Finding[] {
  return drivenLevers(study)
    .filter((lever) => goesOtherwise(study, lever))
    .map((lever) => ({
      code: 'opens-otherwise',
      severity: 'error',
      part: lever.name,
      span: lever.source.nameSpan,
      message: `${lever.name} is driven the other way than its \`opens\` says: it would close as the pedal goes down`,
      cure: 'Check `opens` of this lever, `wraps` of the drum and `opens` of the pedal',
    }));
}
