/**
 * Columns of what acts: the torque of each spring, the closing torque at each lever, and the pedal's effort, all without friction. Only
 * for a file with springs: without one nothing is known of what closes the throttle.
 */
import { createStatics, type Statics, type StaticsSolver } from '../forces/closing.ts';
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
  // With a spring that could not be read, what the others bring is not what closes the throttle.
  const known = mechanism.definition.unread?.some(({ path }) => path.startsWith('springs.')) !== true;
  const statics = remembered();
  const of = (read: (at: Statics) => number) => (build: Build, pose: Pose) => (known ? read(statics(build, pose)) + 0 : NaN);
  const hasEffort = mechanism.drive.kind === 'cable' || pad !== undefined;
  return {
    pedal: hasEffort
      ? [
          column(
            'pedal',
            'effort',
            'force',
            'N',
            of(({ effort }) => effort),
          ),
        ]
      : [],
    ofLever: (lever) => [
      column(
        mechanism.levers[lever]!.name,
        'closing',
        'torque',
        'N·mm',
        of(({ closing }) => closing[lever]!),
      ),
    ],
    springs: springs.map(torqueColumn),
  };
}

function torqueColumn(spring: SpringModel): Column {
  return column(spring.name, 'torque', 'torque', 'N·mm', (build, pose) => springTorques(build, pose, spring)[0]!.closing + 0);
}

/** Several columns are read at one pose; a pose of one build at one travel is always the same. */
function remembered(): (build: Build, pose: Pose) => Statics {
  let of: Build | undefined;
  let solver: StaticsSolver | undefined;
  let travel = NaN;
  let known: Statics | undefined;
  return (build, pose) => {
    if (solver === undefined || build !== of) {
      solver = createStatics(build);
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
