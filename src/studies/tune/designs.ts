/**
 * Places to begin from that Freudenstein's equation gives, where a lever that a rod turns in a plane is to follow the curve.
 *
 * At three points of the curve the turn of the driving lever is known as the linkage stands, and that of the driven one is wanted. With the
 * angles at which the two arms begin left open, each pair of them gives one four-bar through the three points. The free dimensions
 * are then brought as near to that four-bar as they can be: where they are its lengths and clocking, onto it.
 */
import { putDimensions, createBuild } from '../../kinematics/createBuild.ts';
import { chebyshevPoints, synthesise } from '../../kinematics/fourBar/freudenstein.ts';
import type { Mechanism, RodJoint } from '../../kinematics/model.ts';
import { differences } from '../../numeric/differences.ts';
import { leastSquares, type LeastSquares } from '../../numeric/leastSquares.ts';
import { solveTravel } from '../../travel/travel.ts';
import type { TrialCase } from './trial.ts';

/** In parts of the bounds; empty where the lever that follows is not turned by a rod in the plane of its driver. Yields as it goes. */
export function* designsOf(of: TrialCase, lever: number): Generator<undefined, readonly Float64Array[]> {
  const { mechanism, free, wanted } = of;
  const joint = mechanism.joints[mechanism.levers[lever]!.driver ?? -1];
  if (joint?.kind !== 'rod') return [];
  const travel = solveTravel(mechanism);
  if (!isPlanar(mechanism, travel.build.parameters, joint)) return [];
  const points = chebyshevPoints(wanted.from, wanted.to, 3);
  const sense = mechanism.senses[lever]!;
  const turned = points.map((at) => travel.poseAt(at).rotation[joint.driver]!);
  const follows = points.map((at) => sense * wanted.value(at));
  if (![...turned, ...follows].every(Number.isFinite)) return [];
  const found: Float64Array[] = [];
  for (let i = 0; i < ANGLES; i++) {
    for (let j = 0; j < ANGLES; j++) {
      const [phi, psi] = [(2 * Math.PI * (i + 0.5)) / ANGLES, (2 * Math.PI * (j + 0.5)) / ANGLES];
      const made = synthesise(turned.map((each, k) => ({ phi: phi + each, psi: psi + follows[k]! })));
      if (made.kind === 'failed') continue;
      const { a, b, c } = made.fourBar;
      // A negative link is one whose angle is half a turn on.
      const wantedArms = {
        in: { radius: Math.abs(a), angle: a < 0 ? phi + Math.PI : phi },
        out: { radius: Math.abs(c), angle: c < 0 ? psi + Math.PI : psi },
        rod: b,
      };
      if (Math.max(wantedArms.in.radius, wantedArms.out.radius, b) > LONGEST) continue;
      const x = yield* broughtTo(mechanism, joint, free, wantedArms);
      if (x !== undefined) found.push(x);
    }
  }
  return found;
}

/** Beginnings of each arm that are tried, evenly around. */
const ANGLES = 8;
/** Times the distance of the pivots; longer links fit into no engine bay. */
const LONGEST = 4;

/** Both turn about z, counted the same way. */
function isPlanar({ levers }: Mechanism, parameters: Float64Array, { driver, driven }: RodJoint): boolean {
  return [driver, driven].every((lever) => parameters[levers[lever]!.axis + 2]! > 1 - PARALLEL);
}

const PARALLEL = 1e-12;

/** A four-bar in parts of the distance of its pivots, angles from the line between them. */
interface Arms {
  readonly in: { readonly radius: number; readonly angle: number };
  readonly out: { readonly radius: number; readonly angle: number };
  readonly rod: number;
}

function* broughtTo(
  mechanism: Mechanism,
  joint: RodJoint,
  free: TrialCase['free'],
  arms: Arms,
): Generator<undefined, Float64Array | undefined> {
  const build = createBuild(mechanism);
  const values = Float64Array.from(mechanism.nominal);
  const [from, to] = [mechanism.levers[joint.driver]!.pivot, mechanism.levers[joint.driven]!.pivot];
  const evaluate = (x: Float64Array, into: Float64Array): boolean => {
    free.forEach((each, i) => (values[each.index] = each.from + x[i]! * (each.to - each.from)));
    putDimensions(build, values);
    const p = build.parameters;
    const [dx, dy] = [p[to]! - p[from]!, p[to + 1]! - p[from + 1]!];
    const ground = Math.hypot(dx, dy);
    const line = Math.atan2(dy, dx);
    const arm = (pin: number, { radius, angle }: Arms['in'], at: number): void => {
      // The arm square to the axis stands behind the three figures of its base.
      into[at] = p[pin + PERP]! / ground - radius * Math.cos(line + angle);
      into[at + 1] = p[pin + PERP + 1]! / ground - radius * Math.sin(line + angle);
    };
    arm(joint.driverPin, arms.in, 0);
    arm(joint.drivenPin, arms.out, 2);
    into[4] = p[joint.length]! / ground - arms.rod;
    return into.every(Number.isFinite);
  };
  const n = free.length;
  const bounds = { from: new Float64Array(n), to: new Float64Array(n).fill(1) };
  const problem: LeastSquares = {
    count: 5,
    ...bounds,
    evaluate,
    differentiate: (x, residuals, jacobian) => differences(evaluate, x, residuals, { ...bounds, step: DIFFERENCE }, jacobian),
  };
  const met = yield* leastSquares(problem, new Float64Array(n).fill(0.5), { steps: 25, enough: 1e-12, still: 1e-6 });
  return met?.x;
}

/** Within the nine parameters of a pin. */
const PERP = 3;
const DIFFERENCE = 1e-6;
