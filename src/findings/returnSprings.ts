/** Which springs count as return springs of a body with plates, and why the others do not. */
import { hasPlay } from '../kinematics/rest.ts';
import { leversOf } from '../forces/springsReaching.ts';
import type { SensorModel, SpringModel } from '../kinematics/attached.ts';
import type { LeverModel, Mechanism } from '../kinematics/model.ts';
import { following, rangesBelow } from '../travel/extremes.ts';
import type { PlatesBody } from './platesClosing.ts';
import { missingOf, NO_TORQUE, springActions } from './springActions.ts';
import type { Study } from './study.ts';
import { rangeWords } from './words.ts';

/** A spring that is meant as a return spring and is none that could be left alone with the plates. */
export interface NoSecond {
  readonly spring: SpringModel;
  /** Follows its name, e.g. `is slack from 0 % to 12 % of pedal travel`. */
  readonly why: string;
  /** The joint with free play across which alone it acts; undefined where it is another reason. */
  readonly across?: string;
  /** Whether it would be one, and is only taken for the own spring of a sensor. */
  readonly inSensor?: true;
}

export interface ReturnSprings {
  /** Those that close the body over the whole travel, each by itself; a spring whose torque is not known is taken to. */
  readonly closing: readonly SpringModel[];
  readonly others: readonly NoSecond[];
}

export function returnSprings(study: Study, { levers, springs }: PlatesBody): ReturnSprings {
  const { mechanism } = study.travel;
  const [lever] = levers;
  const counting = springs.filter(({ source }) => source.countsAsReturn);
  const others: NoSecond[] = [];
  const closing = counting.filter((spring) => {
    const why = whyNotAllTheWay(study, spring);
    const sensor = sensorAlone(mechanism, spring);
    if (why !== undefined) others.push({ spring, why });
    else if (sensor !== undefined) others.push({ spring, why: sensorWords(mechanism, spring, sensor), inSensor: true });
    return why === undefined && sensor === undefined;
  });
  return { closing, others: lever === undefined ? others : [...others, ...acrossPlay(mechanism, lever)] };
}

/** Undefined where it closes over the whole travel, or its torque is not known. */
function whyNotAllTheWay(study: Study, spring: SpringModel): string | undefined {
  const action = springActions(study).find((each) => each.spring.name === spring.name);
  if (action === undefined || missingOf(spring) !== undefined) return undefined;
  const { samples, torques, opening, slack } = action;
  const [deadCentre] = opening?.deadCentres ?? [];
  if (opening !== undefined) {
    return `${deadCentre === undefined ? '' : 'passes its dead centre and '}opens ${opening.lever.name} ${rangeWords(opening.ranges)}`;
  }
  if (slack.length > 0) return `is slack ${rangeWords(slack)}`;
  const without = torques
    .map(({ torque }) =>
      rangesBelow(
        following(torque, (value) => value - NO_TORQUE),
        samples,
      ),
    )
    .find((ranges) => ranges.length > 0);
  return without === undefined ? undefined : `brings nothing ${rangeWords(without)}`;
}

/** The sensor on whose own lever a spring works: one that carries no plates, and joins no further part of the load path. */
function sensorAlone({ attached, levers, joints }: Mechanism, spring: SpringModel): SensorModel | undefined {
  if (spring.kind !== 'torsion' || levers[spring.lever]!.plates.length > 0) return undefined;
  if (levers[spring.lever]!.driver === undefined || joints.some(({ driver }) => driver === spring.lever)) return undefined;
  return attached.sensors.find(({ lever }) => lever === spring.lever);
}

function sensorWords({ levers }: Mechanism, { lever }: SpringModel, { name }: SensorModel): string {
  return `turns ${levers[lever]!.name}, which carries the sensor ${name} and no plates: give it \`counts_as_return: false\` where it is the sensor’s own spring`;
}

/** Springs nearer to the pedal than free play that ends: once it is taken up they close the lever too. */
function acrossPlay({ levers, joints, attached }: Mechanism, lever: LeverModel): readonly NoSecond[] {
  const found: NoSecond[] = [];
  let play: string | undefined;
  for (let at = lever.driver; at !== undefined; at = levers[joints[at]!.driver ?? -1]?.driver) {
    const joint = joints[at]!;
    if (joint.kind === 'cable' || (joint.kind === 'coupling' && joint.oneWay)) break;
    if (hasPlay(joint)) play ??= joint.name;
    if (play === undefined) continue;
    for (const spring of attached.springs) {
      if (!spring.source.countsAsReturn || !leversOf(spring).includes(joint.driver)) continue;
      found.push({ spring, why: `acts only across the free play of ${play}`, across: play });
    }
  }
  return found;
}
