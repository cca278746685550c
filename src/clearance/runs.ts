/**
 * What runs straight between two places: the inner of a cable from a housing end to the pin or the round drum that it hangs on, as thick as the
 * cable's `diameter`, and an extension or compression spring between its ends, as thick as what it is coiled from makes it (mean coil and one
 * wire). A spring is taken to be as thick as its coil up to its ends and round beyond them, which is more than it is.
 *
 * A slack inner sags from its line, and the way of a housing is in no file.
 */
import type { Cable, Spring } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { createPose } from '../kinematics/pose.ts';
import { innerAt } from '../kinematics/poseGeometry.ts';
import { leversOf } from '../forces/springsReaching.ts';
import type { RunBody } from './bodies.ts';
import { figuresAt, isAlongZ, isBounded, layerOfAll, pinCorner, standing } from './corners.ts';
import { UNITS, type Corner, type Piece } from './piece.ts';

/** A part of a cable, or a spring, that has no shape here. */
export interface Runless {
  readonly name: string;
  readonly kind: 'housing' | 'inner' | 'spring';
  /** The key that the file leaves out; undefined where none would tell the shape. */
  readonly want: 'diameter' | 'wire' | undefined;
}

export function runsOf(build: Build): { readonly runs: readonly RunBody[]; readonly runless: readonly Runless[] } {
  const { cables, attached } = build.mechanism;
  const runs: RunBody[] = [];
  const runless: Runless[] = [];
  const put = (kind: RunBody['kind'], source: Cable | Spring, levers: readonly number[], pieces: readonly Piece[]): boolean => {
    if (pieces.length === 0 || !pieces.every(isBounded)) return false;
    const inSpace = levers.some((lever) => !isAlongZ(build, lever));
    runs.push({ kind, name: source.name, source, layer: layerOfAll(build, levers), levers, pieces, inSpace });
    return true;
  };
  for (const joint of cables) {
    const { name, source } = joint;
    runless.push({ name, kind: 'housing', want: undefined });
    const diameter = source.diameter?.nominal;
    if (diameter === undefined) {
      runless.push({ name, kind: 'inner', want: 'diameter' });
      continue;
    }
    // Each free end is a body of its own: the two may lie on two layers.
    const whole = ENDS.map((which) => {
      const lever = which === 'enters' ? joint.driven : joint.driver;
      if (lever === undefined) return true;
      const corners = freeInner(build, joint, which);
      return corners !== undefined && put('cable', source, [lever], [{ corners, radius: (diameter / 2) * UNITS, name, kind: 'inner' }]);
    });
    if (whole.includes(false)) runless.push({ name, kind: 'inner', want: undefined });
  }
  for (const spring of attached.springs) {
    const { name, source, wire } = spring;
    if (spring.kind === 'torsion' || wire === undefined) {
      runless.push({ name, kind: 'spring', want: spring.kind === 'torsion' ? undefined : 'wire' });
      continue;
    }
    const { from } = spring;
    const start = from.kind === 'place' ? standing(figuresAt(build, from.place)) : pinCorner(build, from.lever, from.pin);
    const radius = ((build.parameters[wire.meanCoil]! + build.parameters[wire.diameter]!) / 2) * UNITS;
    const corners = [start, pinCorner(build, spring.lever, spring.to)];
    if (!put('spring', source, leversOf(spring), [{ corners, radius, name, kind: 'spring' }])) {
      runless.push({ name, kind: 'spring', want: undefined });
    }
  }
  return { runs, runless };
}

const ENDS = ['leaves', 'enters'] as const;

/** From the housing end to the pin, or to where the inner comes onto a round drum; undefined on another drum, and where the end lies within. */
function freeInner(build: Build, joint: CableJoint, which: (typeof ENDS)[number]): readonly Corner[] | undefined {
  const [end, lever] = which === 'enters' ? [joint.drivenEnd, joint.driven] : [joint.driverEnd, joint.driver];
  if (end === undefined || lever === undefined) return undefined;
  const housing = figuresAt(build, end.housing);
  if (end.kind === 'pin') return [standing(housing), pinCorner(build, lever, end.pin)];
  if (end.drum.form.kind !== 'round') return undefined;
  // However the drum stands, a straight inner comes onto its rim at one place.
  const inner = innerAt(build, createPose(build.mechanism), joint, which);
  if (inner === undefined) return undefined;
  const [x, y, z] = inner;
  return [standing(housing), standing([housing[0] + UNITS * x, housing[1] + UNITS * y, (housing[2] ?? 0) + UNITS * z])];
}
