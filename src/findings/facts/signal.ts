/** What a sensor tells: its signal at both ends of the pedal, and what the tuner gets of it for a degree and a percent of opening. */
import type { SensorModel } from '../../kinematics/attached.ts';
import { sensorResolution, type Resolution } from '../../sensor/resolution.ts';
import { fullTravel, signalEnds } from '../../sensor/sensorAt.ts';
import type { Fact } from '../finding.ts';
import type { Study } from '../study.ts';
import { whyStill } from '../whyStill.ts';

export function signalFacts({ definition, travel }: Study, sensor: SensorModel): readonly Fact[] {
  const { mechanism, build } = travel;
  const part = sensor.name;
  const own = mechanism.levers[sensor.lever]!;
  if (own.group < 0) {
    return [{ key: 'signal-at-rest', part, label: 'signal at rest', why: whyStill(definition, [own.name]) }];
  }
  const { rest, full } = signalEnds(build, sensor);
  const stopped = fullTravel(build);
  const signal = (key: string, label: string, value: number): Fact =>
    Number.isNaN(value)
      ? { key, part, label, why: 'it cannot be assembled there' }
      : { key, part, label, figure: { value, dimension: 'voltage' } };
  const { lever, tipIn, overall } = sensorResolution(travel, sensor);
  return [
    signal('signal-at-rest', 'signal at rest', rest),
    stopped < 1
      ? { ...signal('signal-at-full', 'signal where the pedal stops', full), travel: stopped }
      : signal('signal-at-full', 'signal at full pedal', full),
    ...resolutionFacts(part, lever.name, 'at tip-in', tipIn, `${lever.name} does not open`),
    ...resolutionFacts(part, lever.name, 'overall', overall, `${lever.name} does not open, or cannot be assembled`),
  ];
}

/** Sizes: whether the signal rises or falls is seen from its ends. */
function resolutionFacts(
  part: string,
  lever: string,
  where: 'at tip-in' | 'overall',
  resolution: Resolution | undefined,
  why: string,
): readonly Fact[] {
  const suffix = where === 'overall' ? 'overall' : 'tip-in';
  const degree = `for 1° of ${lever}, ${where}`;
  const percent = `for 1 % of its opening, ${where}`;
  if (resolution === undefined) return [{ key: `volts-per-degree-${suffix}`, part, label: `signal ${degree}`, why }];
  const { voltsPerAngle, voltsPerFull, countsPerAngle, countsPerFull } = resolution;
  const fact = (key: string, label: string, value: number, dimension: 'voltage' | 'number'): Fact => ({
    key: `${key}-${suffix}`,
    part,
    label,
    figure: { value: Math.abs(value), dimension },
  });
  return [
    fact('volts-per-degree', `signal ${degree}`, voltsPerAngle * DEGREE, 'voltage'),
    fact('volts-per-percent', `signal ${percent}`, voltsPerFull * PERCENT, 'voltage'),
    ...(countsPerAngle === undefined ? [] : [fact('counts-per-degree', `counts ${degree}`, countsPerAngle * DEGREE, 'number')]),
    ...(countsPerFull === undefined ? [] : [fact('counts-per-percent', `counts ${percent}`, countsPerFull * PERCENT, 'number')]),
  ];
}

/** rad. */
const DEGREE = Math.PI / 180;
const PERCENT = 0.01;
