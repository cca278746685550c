/**
 * Where the tilt of a rod's ends can turn, for bolts of any direction: bounded, not sampled.
 *
 * With b a bolt turning with its lever, e = P₂ − P₁ and G = |e|²/2 kept by the rod, F = b·e turns along the pedal where
 *     J = F₁ G₂ − F₂ G₁ = 0,  the indices being derivatives by the driver's and the driven lever's rotation.
 * Between the places at which neither lever turns back, a stretch of the pedal is a box of the two rotations. Where |J| at its middle
 * exceeds what J can change to its corners, F is monotone there; other stretches are halved until they are `NARROW`, and neighbours
 * that remain hold the zeros of J, or where it comes nearest to zero.
 */
import { advanceTo } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { createPose } from '../kinematics/pose.ts';
import { bracketedRoot } from '../numeric/roots.ts';
import { cross, dot, minus, plus, scaled, size, vectorAt, type Vector } from '../numeric/vector.ts';
import { rodLengths } from './jointForms.ts';

/** Whether a direction fixed to a lever lies along its axis, so that it does not turn. */
export function isAlongAxis(p: Float64Array, bolt: number): boolean {
  return size(vectorAt(p, bolt + 3)) <= ALONG;
}

/** Sine of the angle within which a bolt is along its axis. */
const ALONG = 1e-12;

/** @param bolts nine parameters each, fixed to the driving and the driven lever; @param spans between which both levers are monotone */
export function boltTiltPlaces(
  build: Build,
  joint: RodJoint,
  bolts: { readonly from: number; readonly to: number },
  spans: readonly number[],
): readonly number[] {
  return [bolts.from, bolts.to].flatMap((bolt) => turningPlaces(build, joint, bolt, bolt === bolts.from, spans));
}

/** Of the travel; within so short a stretch the tilt changes by less than rounding and workshop alike. */
const NARROW = 1 / 8192;
/** Evaluations after which a search ends; what is left then turns so little that its sampled values serve. */
const MOST = 20_000;

interface Station {
  readonly travel: number;
  readonly driver: number;
  readonly driven: number;
  /** J, m³; NaN where not assembled. */
  readonly value: number;
}

function turningPlaces(build: Build, joint: RodJoint, bolt: number, atDriver: boolean, spans: readonly number[]): readonly number[] {
  const p = build.parameters;
  const pose = createPose(build.mechanism);
  let left = MOST;
  const at = (travel: number): Station => {
    left--;
    advanceTo(build, travel, pose, joint.index);
    const driver = pose.rotation[joint.driver]!;
    const driven = pose.rotation[joint.driven]!;
    return { travel, driver, driven, value: turning(p, joint, bolt, atDriver, driver, driven) };
  };
  const [perDriver, perDriven] = steepness(build, joint, bolt, atDriver);
  const open: (readonly [Station, Station])[] = [];
  const search = (low: Station, high: Station): void => {
    const middle = at((low.travel + high.travel) / 2);
    if ([low, middle, high].every(({ value }) => Number.isNaN(value))) return;
    const reach = Math.max(Math.abs(middle.driver - low.driver), Math.abs(high.driver - middle.driver)) * perDriver;
    const across = Math.max(Math.abs(middle.driven - low.driven), Math.abs(high.driven - middle.driven)) * perDriven;
    if (Math.abs(middle.value) > reach + across || left < 0) return;
    if (high.travel - low.travel <= NARROW) {
      if (!Number.isNaN(low.value + high.value)) open.push([low, high]);
      return;
    }
    search(low, middle);
    search(middle, high);
  };
  for (let i = 1; i < spans.length; i++) search(at(spans[i - 1]!), at(spans[i]!));
  return clusters(open).flatMap((cluster) => placesIn(cluster, (travel) => at(travel).value));
}

/** Runs of stretches that touch. */
function clusters(stretches: readonly (readonly [Station, Station])[]): readonly (readonly Station[])[] {
  const found: Station[][] = [];
  for (const [low, high] of stretches) {
    const last = found.at(-1);
    if (last?.at(-1)?.travel === low.travel) last.push(high);
    else found.push([low, high]);
  }
  return found;
}

/** The zeros of J in a run; where it only comes near to zero, the nearest station. */
function placesIn(cluster: readonly Station[], value: (travel: number) => number): readonly number[] {
  const zeros = cluster.flatMap((high, i): number[] => {
    const low = cluster[i - 1];
    if (low === undefined || low.value * high.value > 0) return [];
    return [bracketedRoot(value, low.travel, low.value, high.travel, high.value, 0)];
  });
  if (zeros.length > 0) return zeros;
  return [cluster.reduce((best, each) => (Math.abs(each.value) < Math.abs(best.value) ? each : best)).travel];
}

interface Turning {
  /** Vector as it stands, and its first derivative by rotation. */
  readonly at: Vector;
  readonly slope: Vector;
}

function turned(p: Float64Array, turning9: number, rotation: number): Turning {
  const perp = vectorAt(p, turning9 + 3);
  const across = vectorAt(p, turning9 + 6);
  const c = Math.cos(rotation);
  const s = Math.sin(rotation);
  return { at: plus(plus(vectorAt(p, turning9), perp, c), across, s), slope: plus(scaled(across, c), perp, -s) };
}

/** J at a pair of rotations. */
function turning(p: Float64Array, joint: RodJoint, bolt: number, atDriver: boolean, driver: number, driven: number): number {
  const start = turned(p, joint.driverPin, driver);
  const end = turned(p, joint.drivenPin, driven);
  const b = turned(p, bolt, atDriver ? driver : driven);
  const e = minus(end.at, start.at);
  const turn = dot(b.slope, e);
  const f1 = -dot(b.at, start.slope) + (atDriver ? turn : 0);
  const f2 = dot(b.at, end.slope) + (atDriver ? 0 : turn);
  return f1 * dot(e, end.slope) + f2 * dot(e, start.slope);
}

/**
 * Bounds of |∂J/∂φ₁| and |∂J/∂φ₂|, from the lengths of what J is made of. Of the bolt only the part square to its axis turns; the part
 * along it moves no pin of its own lever, and one of the other lever by no more than the sine between the axes.
 */
function steepness(build: Build, joint: RodJoint, bolt: number, atDriver: boolean): readonly [number, number] {
  const { mechanism, parameters: p } = build;
  const length = Math.max(...rodLengths(joint, p));
  const arm = (pin: number): number => size(vectorAt(p, pin + 3));
  const axis = (lever: number): Vector => vectorAt(p, mechanism.levers[lever]!.axis);
  const skew = size(cross(axis(joint.driver), axis(joint.driven)));
  const swing = size(vectorAt(p, bolt + 3));
  const [own, other] = atDriver ? [arm(joint.driverPin), arm(joint.drivenPin)] : [arm(joint.drivenPin), arm(joint.driverPin)];
  const ownFirst = swing * (own + length);
  const ownSecond = swing * (3 * own + length);
  const otherBoth = (skew * size(vectorAt(p, bolt)) + swing) * other;
  const mixed = swing * other;
  // Of G, by the own and the other lever.
  const [g, h] = [length * own, length * other];
  const [gg, hh, gh] = [own * own + g, other * other + h, own * other];
  const byOwn = ownSecond * h + ownFirst * gh + mixed * g + otherBoth * gg;
  const byOther = mixed * h + ownFirst * hh + otherBoth * g + otherBoth * gh;
  return atDriver ? [byOwn, byOther] : [byOther, byOwn];
}
