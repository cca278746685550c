/**
 * How a reading changes with the dimensions, where that is known in closed form: of the rotations of levers, and of what follows from them
 * alone. The rest is left to differences.
 */
import type { Build } from '../../kinematics/build.ts';
import { pullTangent, type TangentState } from '../../kinematics/jointTangents.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { areaSlopeAt, plateShape } from '../../plates/platesAt.ts';
import { greatestOpenArea } from '../../plates/openArea.ts';
import { rotorAngleAt } from '../../sensor/sensorAt.ts';
import type { Column } from '../../table/column.ts';

/**
 * Change of a column per unit of a direction, SI, with the rates of parameters and rotations given; undefined where this direction needs
 * differences.
 */
export type Slope = (build: Build, state: TangentState) => number | undefined;

/** Undefined where the column has no closed form. */
export function slopeOf(mechanism: Mechanism, { owner, key }: Pick<Column, 'owner' | 'key'>): Slope | undefined {
  switch (key) {
    case 'rotation':
    case 'opening':
      return ofLever(mechanism, owner, key);
    case 'angle':
    case 'signal':
      return ofSensor(mechanism, owner, key);
    case 'area':
    case 'fraction':
      return ofPlates(mechanism, owner, key);
    case 'pull': {
      const joint = mechanism.cables.find(({ name }) => name === owner);
      return joint && ((_, state) => pullTangent(state, joint));
    }
    default:
      return undefined;
  }
}

function ofLever({ leverIndex, senses }: Mechanism, owner: string, key: 'rotation' | 'opening'): Slope | undefined {
  const lever = leverIndex.get(owner);
  if (lever === undefined) return undefined;
  const way = key === 'opening' ? senses[lever]! : 1;
  return (_, { rotationRates }) => way * rotationRates[lever]!;
}

function ofSensor({ attached, senses }: Mechanism, owner: string, key: 'angle' | 'signal'): Slope | undefined {
  const sensor = attached.sensors.find(({ name }) => name === owner);
  if (sensor === undefined) return undefined;
  const { atClosed, way, lever, range, signal } = sensor;
  return (build, { pose, parameterRates: dp, rotationRates }) => {
    const turned = dp[atClosed]! + way * senses[lever]! * rotationRates[lever]!;
    if (key === 'angle') return turned;
    const p = build.parameters;
    const angle = rotorAngleAt(build, pose, sensor);
    const [from, to] = [p[range[0]]!, p[range[1]]!];
    // Held outside of its range.
    if (angle <= from) return dp[signal[0]]!;
    if (angle >= to) return dp[signal[1]]!;
    const share = (angle - from) / (to - from);
    const shareRate = (turned - dp[range[0]]! - share * (dp[range[1]]! - dp[range[0]]!)) / (to - from);
    const span = p[signal[1]]! - p[signal[0]]!;
    return dp[signal[0]]! + share * (dp[signal[1]]! - dp[signal[0]]!) + span * shareRate;
  };
}

/** By bore, shaft and seat the area has no derivative of its own. */
function ofPlates({ attached, senses }: Mechanism, owner: string, key: 'area' | 'fraction'): Slope | undefined {
  const plates = attached.plates.find(({ name }) => name === owner);
  if (plates === undefined) return undefined;
  const { lever, idle, bore, shaft, seat } = plates;
  return (build, { pose, parameterRates: dp, rotationRates }) => {
    if (dp[bore] !== 0 || dp[shaft] !== 0 || dp[seat] !== 0) return undefined;
    const rate = areaSlopeAt(build, pose, plates) * (dp[idle]! + senses[lever]! * rotationRates[lever]!);
    return key === 'area' ? rate : rate / greatestOpenArea(plateShape(build, plates));
  };
}
