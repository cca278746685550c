/**
 * Columns of what acts: the torque of each spring and the closing torque at each lever, without friction; the pedal's effort and release
 * and the tension of each cable, with it. Only for a file with springs: without one nothing is known of what closes the throttle. And
 * closing torque over friction, whole and with each spring off, where the file gives friction: without it there is nothing to hold the
 * torque against. Effort and release with each spring off stand with the springs.
 */
import { lostJoint } from '../definition/lost.ts';
import { isGiven } from '../forces/friction/missing.ts';
import { createFriction, type FrictionSolver, type FrictionStatics } from '../forces/friction/statics.ts';
import { springTorques } from '../forces/springs.ts';
import { rateOf } from '../forces/wire/rate.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import type { Mechanism } from '../kinematics/model.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Travel } from '../travel/travel.ts';
import { column, type Column } from './column.ts';

export interface ForceColumns {
  /** Empty where the file has no springs or nothing at the pedal to read the force at. */
  readonly pedal: readonly Column[];
  ofLever(lever: number): readonly Column[];
  ofCable(cable: number): readonly Column[];
  readonly springs: readonly Column[];
}

export function forceColumns({ mechanism }: Travel): ForceColumns {
  const { springs, pad } = mechanism.attached;
  if (springs.length === 0) return { pedal: [], ofLever: () => [], ofCable: () => [], springs: [] };
  // With a spring or a joint that could not be read, what the others bring is not what closes the throttle.
  const { definition } = mechanism;
  const known = definition.unread?.some(({ path }) => path.startsWith('springs.')) !== true && lostJoint(definition) === undefined;
  const friction = remembered();
  const off = rememberedOff();
  const of = (read: (at: FrictionStatics) => number) => (build: Build, pose: Pose) =>
    known ? read(friction(build, pose).statics) + 0 : NaN;
  const rubs = isGiven(mechanism.friction);
  const hasEffort = mechanism.drive.kind === 'cable' || pad !== undefined;
  const acting = { forces: true, own: (): readonly number[] => [known ? 1 : 0] } as const;
  const force = (key: string, read: (at: FrictionStatics) => number): Column => column('pedal', key, 'force', 'N', of(read), acting);
  return {
    pedal: hasEffort ? [force('effort', ({ effort }) => effort), force('release', ({ release }) => release)] : [],
    ofLever: (lever) => [
      column(
        mechanism.levers[lever]!.name,
        'closing',
        'torque',
        'N·mm',
        of(({ frictionless }) => frictionless.closing[lever]!),
        acting,
      ),
      ...(rubs
        ? [
            column(
              mechanism.levers[lever]!.name,
              'margin',
              'number',
              '',
              of(({ margin }) => bounded(margin[lever]!)),
              acting,
            ),
          ]
        : []),
    ],
    ofCable: (cable) => [
      column(
        mechanism.cables[cable]!.name,
        'tension',
        'force',
        'N',
        of(({ pressing }) => pressing.tension[cable]!),
        acting,
      ),
    ],
    springs: springs.flatMap((spring, number) => [
      torqueColumn(spring),
      ...(rubs
        ? [
            column(
              spring.name,
              'margin_off',
              'number',
              '',
              (build, pose) => (known ? marginOff(friction(build, pose), pose, number) : NaN),
              acting,
            ),
          ]
        : []),
      ...(hasEffort
        ? (['effort', 'release'] as const).map((key) =>
            column(
              spring.name,
              `${key}_off`,
              'force',
              'N',
              (build, pose) => (known ? off(build, pose, spring.name)[key] + 0 : NaN),
              acting,
            ),
          )
        : []),
    ]),
  };
}

/** Where nothing rubs there is no figure. */
function bounded(margin: number): number {
  return Number.isFinite(margin) ? margin : NaN;
}

/** With a spring off, the least of the shafts with plates that it reaches; where there is none, of the lever on which it works. */
function marginOff({ solver, mechanism: { levers, attached } }: Solved, pose: Pose, number: number): number {
  const off = solver.springOff(pose, number);
  const shafts = off.levers.flatMap((index, i) => (levers[index]!.plates.length > 0 && levers[index]!.group >= 0 ? [off.margin[i]!] : []));
  const own = off.levers.indexOf(attached.springs[number]!.lever);
  return bounded(shafts.length > 0 ? Math.min(...shafts) : (off.margin[own] ?? NaN));
}

function torqueColumn(spring: SpringModel): Column {
  return column(spring.name, 'torque', 'torque', 'N·mm', (build, pose) => springTorques(build, pose, spring)[0]!.closing + 0, {
    ...(spring.kind === 'torsion' && {
      lever: spring.lever,
      own: (build: Build) => [build.parameters[spring.preload]!, rateOf(build, spring)],
    }),
  });
}

interface Solved {
  readonly statics: FrictionStatics;
  readonly solver: FrictionSolver;
  readonly mechanism: Mechanism;
}

/** Several columns are read at one pose; a pose of one build at one travel is always the same. */
function remembered(): (build: Build, pose: Pose) => Solved {
  let of: Build | undefined;
  let solver: FrictionSolver | undefined;
  let travel = NaN;
  let known: Solved | undefined;
  return (build, pose) => {
    if (solver === undefined || build !== of) {
      solver = createFriction(build);
      of = build;
      known = undefined;
    }
    if (known === undefined || pose.travel !== travel) {
      known = { statics: solver.at(pose), solver, mechanism: build.mechanism };
      travel = pose.travel;
    }
    return known;
  };
}

/** With a spring off both are read at one pose, too. The solver is one of its own: what the one above found must stand meanwhile. */
function rememberedOff(): (build: Build, pose: Pose, without: string) => Pick<FrictionStatics, 'effort' | 'release'> {
  let of: Build | undefined;
  let solver: FrictionSolver | undefined;
  let travel = NaN;
  let name: string | undefined;
  let known = { effort: NaN, release: NaN };
  return (build, pose, without) => {
    if (solver === undefined || build !== of) {
      solver = createFriction(build);
      of = build;
      name = undefined;
    }
    if (name !== without || pose.travel !== travel) {
      const { effort, release } = solver.at(pose, without);
      known = { effort, release };
      name = without;
      travel = pose.travel;
    }
    return known;
  };
}
