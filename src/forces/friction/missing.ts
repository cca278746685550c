/** Which friction the file gives no figures for: it is left out of all forces, so that they are rather too good than true. */
import type { FrictionModel } from '../../kinematics/frictionModel.ts';
import type { Joint, LeverModel, Mechanism } from '../../kinematics/model.ts';

/** What rubs at one part and is left out. */
export interface MissingFriction {
  /** Name of a lever or joint, and its place in the text. */
  readonly source: LeverModel['source'] | Joint['source'];
  /** The parts that it takes away from: the lever itself, or those that a joint joins. */
  readonly levers: readonly number[];
  /** E.g. `drag`, `its bearing`, `its ends`, `its housing`. */
  readonly what: string;
  /** Keys that would give it, the first alone where there are several ways. */
  readonly keys: readonly string[];
}

/** Whether the file gives any friction at all. */
export function isGiven({ levers, joints }: FrictionModel): boolean {
  return levers.some(({ drag, bearing }) => (drag ?? bearing) !== undefined) || joints.some(({ coefficient }) => coefficient !== undefined);
}

/** Of what the pedal moves, in load-path order, levers before what they drive. */
export function missingFriction(mechanism: Mechanism): readonly MissingFriction[] {
  const { levers, joints, drive } = mechanism;
  const ofDriven = joints.flatMap((joint) => [...ofJoint(mechanism, joint), ...ofLever(mechanism, levers[joint.driven]!)]);
  return drive.kind === 'lever' ? [...ofLever(mechanism, levers[drive.lever]!), ...ofDriven] : ofDriven;
}

function ofLever({ friction }: Mechanism, { index, source, plates }: LeverModel): readonly MissingFriction[] {
  const { drag, bearing } = friction.levers[index]!;
  const missing = (what: string, key: string): MissingFriction => ({ source, levers: [index], what, keys: [key] });
  return [
    ...(drag === undefined ? [missing('its drag', 'friction')] : []),
    ...(bearing === undefined
      ? [missing(plates.length > 0 ? 'its bearing, on which the vacuum presses the plates' : 'its bearing under load', 'bearing')]
      : []),
  ];
}

function ofJoint({ friction }: Mechanism, joint: Joint): readonly MissingFriction[] {
  const { coefficient, pin, bend } = friction.joints[joint.index]!;
  const levers = joint.driver === undefined ? [joint.driven] : [joint.driver, joint.driven];
  const missing = (what: string, all: readonly (readonly [key: string, value: unknown])[]): readonly MissingFriction[] => {
    const keys = all.filter(([, value]) => value === undefined).map(([key]) => key);
    return keys.length === 0 ? [] : [{ source: joint.source, levers, what, keys }];
  };
  switch (joint.kind) {
    case 'rod':
      if (joint.source.ends === undefined) return missing('its ends', [['ends', undefined]]);
      return missing('its ends', [
        ['pin', pin],
        ['friction', coefficient],
      ]);
    case 'slot':
      return missing('its pin in the fork', [['friction', coefficient]]);
    case 'cable':
      return missing('its housing', [
        ['bend', bend],
        ['friction', coefficient],
      ]);
    case 'coupling':
      return [];
  }
}
