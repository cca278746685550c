/** What holds of every random linkage, looked at by a second method from the engine's rotations alone. */
import { closureOf, continuation, isReachable, type Closure, type Followed, type Rotations } from '../support/closure.ts';
import { drivenLever, drivingLever, type Sketch, type SketchJoint } from '../support/sketch.ts';
import { sensesOf, solveSketch, type Solved } from '../support/solveSketch.ts';

const STATIONS = [0, 0.03, 0.1, 0.25, 0.5, 0.75, 1];

export interface RandomReport {
  readonly faults: readonly string[];
  /** Stations whose rotations were compared with those of the second method. */
  readonly compared: number;
  /** Linkages that cannot be assembled over the whole travel. */
  readonly parted: number;
}

export function checkRandom(sketches: readonly Sketch[]): RandomReport {
  const faults: string[] = [];
  let compared = 0;
  let parted = 0;
  sketches.forEach((sketch, index) => {
    const solved = solveSketch(sketch);
    const closure = closureOf(sketch, sensesOf(solved.mechanism));
    const drawn = Object.fromEntries(sketch.levers.map((lever) => [lever.name, 0]));
    const branches = sketch.joints.map((joint) => Math.sign(closure.leverage(joint, drawn)));
    const follow = continuation(closure);
    let followed = true;
    for (const travel of STATIONS) {
      const rotations = solved.rotationsAt(travel);
      const say = (fault: string): number => faults.push(`#${index} at ${travel}: ${fault}`);
      sketch.joints.forEach((joint, i) => jointFaults(closure, joint, rotations, travel, branches[i]!).forEach(say));
      if (!followed) continue;
      const other = follow.to(travel);
      if (other !== undefined) {
        compared++;
        differences(rotations, other).forEach(say);
        continue;
      }
      followed = false;
      parted++;
      if (!comesToDeadCentre(solved, closure, follow.reached(), travel)) {
        say(`the second method parts at ${follow.reached()}, the engine does not`);
      }
    }
  });
  return { faults, compared, parted };
}

/** Relative to the length of a rod or inner cable, or to a pin's drawn reach. */
const KEPT = 1e-12;
/** Sine of the angle from a dead centre; nearer to it rounding decides on which side of it a part stands. */
const AT_DEAD_CENTRE = 1e-6;

function jointFaults(closure: Closure, joint: SketchJoint, rotations: Rotations, travel: number, branch: number): readonly string[] {
  const driver = drivingLever(joint);
  if (driver !== undefined && Number.isNaN(rotations[driver])) {
    return Number.isNaN(rotations[drivenLever(joint)]) ? [] : [`${joint.name} is driven by nothing and stands`];
  }
  const name = `${joint.kind} ${joint.name}`;
  if (Number.isNaN(rotations[drivenLever(joint)])) {
    return isReachable(closure, joint, rotations, travel, -1e-13) ? [`${name} could be assembled`] : [];
  }
  const residual = closure.residual(joint, rotations, travel);
  const leverage = closure.leverage(joint, rotations) * branch;
  return [
    ...(Math.abs(residual) <= KEPT ? [] : [`${name} is off by ${residual}`]),
    ...(leverage > -AT_DEAD_CENTRE ? [] : [`${name} has left its branch`]),
  ];
}

/** rad. */
const SAME = 1e-11;
/** Relative error of figures that go through a dozen roundings. */
const ROUNDING = 1e-13;

function differences(rotations: Rotations, { rotations: others, magnified }: Followed): readonly string[] {
  return Object.entries(others).flatMap(([lever, other]) => {
    const miss = Math.abs(rotations[lever]! - other);
    return miss <= SAME + ROUNDING * magnified ? [] : [`${lever} stands ${miss} rad off, errors magnified ${magnified} times`];
  });
}

/**
 * Whether between two stations the engine has a joint that cannot be assembled or that stands within `NEAR` of its dead centre, which
 * is where the second method may lose it.
 */
function comesToDeadCentre(solved: Solved, closure: Closure, from: number, to: number): boolean {
  const { joints } = closure.sketch;
  // Most have come apart at the far end.
  for (let i = SCANNED; i >= 0; i--) {
    const rotations = solved.rotationsAt(from + ((to - from) * i) / SCANNED);
    if (joints.some((joint) => !(Math.abs(closure.leverage(joint, rotations)) > NEAR))) return true;
  }
  return false;
}

const SCANNED = 1000;
const NEAR = 1e-4;
