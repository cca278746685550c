/**
 * Columns of what acts: the torque of each spring, the closing torque at each lever, and the pedal's effort, all without friction. Only
 * for a file with springs: without one nothing is known of what closes the throttle.
 */
import { createStatics, type Statics, type StaticsSolver } from '../forces/closing.ts';
import { springTorques } from '../forces/springs.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Travel } from '../travel/travel.ts';
import { column, type Column } from './column.ts';

export interface ForceColumns {
  /** Empty where the file has no springs or nothing at the pedal to read the force at. */
  readonly pedal: readonly Column[];
  ofLever(lever: number): readonly Column[];
  readonly springs: readonly Column[];
}

export function forceColumns({ mechanism, build }: Travel): ForceColumns {
  const { springs, pad } = mechanism.attached;
  if (springs.length === 0) return { pedal: [], ofLever: () => [], springs: [] };
  const statics = remembered(createStatics(build));
  const hasEffort = mechanism.drive.kind === 'cable' || pad !== undefined;
  return {
    pedal: hasEffort ? [column('pedal', 'effort', 'force', 'N', (_, pose) => statics(pose).effort)] : [],
    ofLever: (lever) => [
      column(mechanism.levers[lever]!.name, 'closing', 'torque', 'N·mm', (_, pose) => statics(pose).closing[lever]! + 0),
    ],
    springs: springs.map(torqueColumn),
  };
}

function torqueColumn(spring: SpringModel): Column {
  return column(spring.name, 'torque', 'torque', 'N·mm', (build, pose) => springTorques(build, pose, spring)[0]!.closing + 0);
}

/** Several columns are read at one pose; a pose of one travel is always the same. */
function remembered(solver: StaticsSolver): (pose: Pose) => Statics {
  let travel = NaN;
  let known: Statics | undefined;
  return (pose) => {
    if (known === undefined || pose.travel !== travel) {
      known = solver.at(pose);
      travel = pose.travel;
    }
    return known;
  };
}
