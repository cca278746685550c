/** Closing torque over friction of all that has to come back by itself, with all springs and with each return spring off. */
import { frictionUnits, LOCKS_AT, unitMargin, type FrictionUnit } from '../../findings/frictionUnits.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import type { LimitBand } from '../../protocol/charts.ts';
import { NO_TORQUE } from '../../findings/springActions.ts';
import { createFriction, type FrictionSolver } from '../../forces/friction/statics.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { leastOfAll, type AlongColumn, type ChartPlan, type CurvePlan } from './plan.ts';

/** More is as good as free of friction, and would leave no room for what matters. */
const MOST = 10;

/** Without curves where the file gives no friction. */
export function planMargins(study: Study): ChartPlan {
  const units = frictionUnits(study);
  const solverAt = standing();
  const curves = units.flatMap((unit) =>
    [undefined, ...unit.springs.filter(({ source }) => source.countsAsReturn).map(({ name }) => name)].map((without): CurvePlan => {
      const { name } = unit.lever;
      const off = units.length === 1 ? `${without} off` : `${name} (${without} off)`;
      return {
        column: columnOf(study, unit, without, solverAt),
        label: without === undefined ? name : off,
        part: without ?? name,
        shown: (value) => Math.min(value, MOST),
        margin: leastOfAll,
      };
    }),
  );
  const title = `Closing torque over friction, shown up to ${MOST} times`;
  return { id: 'margins', title, unit: '', curves, bands: curves.length === 0 ? [] : bandsOf(study), straight: false, upTo: MOST };
}

function columnOf(study: Study, unit: FrictionUnit, without: string | undefined, solverAt: Standing): AlongColumn {
  const { springs } = study.travel.mechanism.attached;
  const name = `${unit.lever.name}.margin${without === undefined ? '' : ` without ${without}`}`;
  const spring = springs.findIndex((each) => each.name === without);
  return {
    name,
    dimension: 'number',
    unit: '',
    scale: 1,
    along: unitMargin(study, unit, without),
    ...(spring >= 0 && { read: readOff(unit.lever.index, spring, solverAt) }),
  };
}

/** As `unitMargin`, of any build. */
function readOff(lever: number, spring: number, solverAt: Standing): NonNullable<AlongColumn['read']> {
  return (build, pose) => {
    const { levers, closing, margin } = solverAt(build, pose).springOff(pose, spring);
    const at = levers.indexOf(lever);
    return at >= 0 && closing[at]! > NO_TORQUE ? margin[at]! : NaN;
  };
}

type Standing = (build: Build, pose: Pose) => FrictionSolver;

/** A solver as it stands in a pose with all springs on: several curves are read at one pose. */
function standing(): Standing {
  let of: Build | undefined;
  let solver: FrictionSolver | undefined;
  let travel = NaN;
  return (build, pose) => {
    if (solver === undefined || build !== of) {
      solver = createFriction(build);
      of = build;
      travel = NaN;
    }
    if (pose.travel !== travel) solver.comingBack(pose);
    travel = pose.travel;
    return solver;
  };
}

function bandsOf(study: Study): readonly LimitBand[] {
  const { warning, error = LOCKS_AT } = limitOf(study, 'closing_margin');
  return [
    { severity: 'error', from: undefined, to: error, label: `under ${error} times the friction` },
    ...(error < warning ? [{ severity: 'warning' as const, from: error, to: warning, label: `under ${warning} times the friction` }] : []),
  ];
}
