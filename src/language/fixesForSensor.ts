/**
 * The place of a sensor in its range where `at_closed` follows from a formula; a plain one the finding itself knows. Turning the sensor on
 * its spindle shifts its angle over the whole travel by as much.
 */
import type { Finding } from '../findings/finding.ts';
import { ANGLE_MARGIN } from '../findings/margin.ts';
import type { Study } from '../findings/study.ts';
import type { FixAim } from './fixAim.ts';

export function aimsToFitSensor({ definition }: Study, finding: Finding): readonly FixAim[] {
  const sensor = definition.sensors.find(({ name }) => name === finding.part);
  const { worst, limit } = finding;
  if (sensor?.atClosed.formula === undefined || worst === undefined || limit === undefined) return [];
  const high = worst.value > limit.value;
  const unknown = sensor.atClosed.path;
  if (worst.dimension === 'voltage') {
    const outcome = { kind: 'at' as const, column: `${sensor.name}.signal`, travel: worst.travel };
    return [{ unknown, outcome, target: () => limit.value }];
  }
  const outcome = { kind: high ? ('greatest' as const) : ('least' as const), column: `${sensor.name}.angle` };
  return [{ unknown, outcome, target: () => limit.value + (high ? -ANGLE_MARGIN : ANGLE_MARGIN) }];
}
