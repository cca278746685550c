/**
 * Columns of what acts: the torque of each spring and the closing torque at each lever, without friction, and the pedal's effort and
 * release with it. Only for a file with springs: without one nothing is known of what closes the throttle.
 */
import { lostJoint } from '../definition/lost.ts';
import { createFriction, type FrictionSolver, type FrictionStatics } from '../forces/friction/statics.ts';
import { springTorques } from '../forces/springs.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Travel } from '../travel/travel.ts';
import { column, type Column } from './column.ts';

export interface ForceColumns {
  /** Empty where the file has no springs or nothing at the pedal to read the force at. */
  readonly pedal: readonly Column[];
  ofLever(lever: number): readonly Column[];
  readonly springs: readonly Column[];
}

export function forceColumns({ mechanism }: Travel): ForceColumns {
  const { springs, pad } = mechanism.attached;
  if (springs.length === 0) return { pedal: [], ofLever: () => [], springs: [] };
  // With a spring or a joint that could not be read, what the others bring is not what closes the throttle.
  const { definition } = mechanism;
  const known = definition.unread?.some(({ path }) => path.startsWith('springs.')) !== true && lostJoint(definition) === undefined;
  const statics = remembered();
  const of = (read: (at: FrictionStatics) => number) => (build: Build, pose: Pose) => (known ? read(statics(build, pose)) + 0 : NaN);
  const hasEffort = mechanism.drive.kind === 'cable' || pad !== undefined;
  const force = (key: string, read: (at: FrictionStatics) => number): Column => column('pedal', key, 'force', 'N', of(read));
  return {
    pedal: hasEffort ? [force('effort', ({ effort }) => effort), force('release', ({ release }) => release)] : [],
    ofLever: (lever) => [
      column(
        mechanism.levers[lever]!.name,
        'closing',
        'torque',
        'N·mm',
        of(({ frictionless }) => frictionless.closing[lever]!),
      ),
    ],
    springs: springs.map(torqueColumn),
  };
}

function torqueColumn(spring: SpringModel): Column {
  return column(spring.name, 'torque', 'torque', 'N·mm', (build, pose) => springTorques(build, pose, spring)[0]!.closing + 0);
}

/** Several columns are read at one pose; a pose of one build at one travel is always the same. */
function remembered(): (build: Build, pose: Pose) => FrictionStatics {
  let of: Build | undefined;
  let solver: FrictionSolver | undefined;
  let travel = NaN;
  let known: FrictionStatics | undefined;
  return (build, pose) => {
    if (solver === undefined || build !== of) {
      solver = createFriction(build);
      of = build;
      known = undefined;
    }
    if (known === undefined || pose.travel !== travel) {
      known = solver.at(pose);
      travel = pose.travel;
    }
    return known;
  };
}
