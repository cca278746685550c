/**
 * Where along the pedal an answer can turn: for each lever the places between which its rotation is monotone, and the
 * places where a joint's angles are extreme. Known in closed form at each joint and carried back along the load path.
 */
import { advanceTo } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import type { CableJoint, CouplingJoint, Joint, Mechanism, RodJoint, SlotJoint } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { bracketedRoot, lastWithValue, turnRoots } from '../numeric/roots.ts';
import { trigRoots } from '../numeric/trigPolynomial.ts';
import { oncePer } from './once.ts';
import { anglePlaces } from './anglePlaces.ts';
import {
  bothWays,
  cableDeadCentres,
  cableForms,
  pinAt,
  rodForm,
  rodLengths,
  slotBackForm,
  slotContactsAt,
  slotForm,
  slotOffsets,
  slotTurnsBackAt,
} from './jointForms.ts';

export interface Places {
  /** For each lever, pedal travels from 0 to 1 between which its rotation is monotone or cannot be assembled. */
  readonly levers: readonly (readonly number[])[];
  /** For each cable, the same of its pull. */
  readonly pulls: readonly (readonly number[])[];
  /** For each joint, where an angle that its findings speak of can be extreme, rising. */
  readonly joints: readonly (readonly number[])[];
  /** All of them, rising, with 0 and 1. */
  readonly all: readonly number[];
}

/** The places as the build's bounds stand now. */
export function findPlaces(build: Build, finder = createFinder(build)): Places {
  const { levers, pulls } = findTurns(build, finder);
  const joints = build.mechanism.joints.map((joint) => anglePlaces(build, finder, joint, levers));
  return { levers, pulls, joints, all: merge([0, 1], ...levers, ...pulls, ...joints) };
}

/** Where an answer can turn that follows from the way of one lever alone: at the levers and joints from the pedal to it. */
export function placesTo({ joints, levers }: Mechanism, places: Places, lever: number): readonly number[] {
  const lists = [places.levers[lever]!];
  for (let at: number | undefined = lever; at !== undefined;) {
    const joint: Joint | undefined = joints[levers[at]!.driver ?? -1];
    if (joint === undefined) break;
    lists.push(places.joints[joint.index]!);
    if (joint.kind === 'cable') lists.push(places.pulls[joint.cable]!);
    at = joint.driver;
    if (at !== undefined) lists.push(places.levers[at]!);
  }
  return merge(...lists);
}

/** Places between which levers and pulls are monotone, as far as the load path has been followed. */
export interface Turns {
  readonly levers: (readonly number[])[];
  readonly pulls: (readonly number[])[];
}

/** All of them. */
function findTurns(build: Build, finder: Finder): Turns {
  const turns = startTurns(build);
  for (const joint of build.mechanism.joints) followTurns(build, finder, joint, turns);
  return turns;
}

/** Those of the pedal alone. */
export function startTurns(build: Build): Turns {
  const { mechanism } = build;
  const ends = [0, 1];
  const levers: (readonly number[])[] = mechanism.levers.map(() => ends);
  if (mechanism.drive.kind === 'lever') levers[mechanism.drive.lever] = merge(ends, pedalKinks(build));
  return { levers, pulls: mechanism.cables.map(() => ends) };
}

/** Adds those of one joint's driven lever, whose driver's are known. */
export function followTurns(build: Build, finder: Finder, joint: Joint, turns: Turns): void {
  const from = joint.driver === undefined ? [0, 1] : turns.levers[joint.driver]!;
  turns.levers[joint.driven] = turningPlaces(build, finder, joint, from, turns.pulls);
}

/** Searches a build along the pedal. It is for the dimensions that stand in the build; with others another one is made. */
export interface Finder {
  readonly build: Build;
  /** Travels at which a lever's rotation, modulo a turn, is one of `angles`; `spans` are the lever's monotone places. */
  rotationAt(lever: number, spans: readonly number[], angles: readonly number[]): readonly number[];
  /** The same of a figure of the pose that depends on the joints that lead to `joint`, monotone on `spans`. */
  valueAt(read: (pose: Pose) => number, joint: number | undefined, spans: readonly number[], targets: readonly number[]): readonly number[];
}

export function createFinder(build: Build): Finder {
  const pose = createPose(build.mechanism);
  const along =
    (read: (pose: Pose) => number, joint: number | undefined) =>
    (travel: number): number => {
      advanceTo(build, travel, pose, joint);
      return read(pose);
    };
  return {
    build,
    valueAt: (read, joint, spans, targets) => {
      const figure = along(read, joint);
      return targets.length === 0 ? [] : crossings(figure, stretches(figure, spans), targets);
    },
    rotationAt(lever, spans, angles) {
      if (angles.length === 0) return [];
      const figure = along((at) => at.rotation[lever]!, build.mechanism.levers[lever]!.driver);
      const within = stretches(figure, spans);
      const reached = within.flatMap(({ atLow, atHigh }) => [atLow, atHigh]);
      const least = Math.min(...reached);
      const most = Math.max(...reached);
      const targets: number[] = [];
      if (!(most - least <= MOST_TURNS * TURN)) return [];
      for (const angle of angles) {
        for (let k = Math.ceil((least - angle) / TURN); angle + k * TURN <= most; k++) targets.push(angle + k * TURN);
      }
      return crossings(figure, within, targets);
    },
  };
}

/** The parts of spans in which a figure has a value. */
function stretches(figure: (travel: number) => number, spans: readonly number[]): readonly Stretch[] {
  return spans.slice(1).flatMap((high, i) => assembled(figure, spans[i]!, high) ?? []);
}

function assembled(figure: (travel: number) => number, low: number, high: number): Stretch | undefined {
  const atLow = figure(low);
  const atHigh = figure(high);
  const middle = (low + high) / 2;
  // An end that is a dead centre may lie a rounding beyond it. Both may be ones that just still assemble, with nothing between them.
  if (Number.isNaN(figure(middle))) return undefined;
  if (!Number.isNaN(atLow) && !Number.isNaN(atHigh)) return { low, atLow, high, atHigh };
  const first = Number.isNaN(atLow) ? lastWithValue(figure, middle, low) : low;
  const last = Number.isNaN(atHigh) ? lastWithValue(figure, middle, high) : high;
  return { low: first, atLow: figure(first), high: last, atHigh: figure(last) };
}

function crossings(figure: (travel: number) => number, within: readonly Stretch[], targets: readonly number[]): readonly number[] {
  return within.flatMap(({ low, atLow, high, atHigh }) =>
    targets
      .filter((target) => (atLow - target) * (atHigh - target) <= 0 && atLow !== atHigh)
      .map((target) => bracketedRoot((travel) => figure(travel) - target, low, atLow - target, high, atHigh - target, 0)),
  );
}

/** Pedal travels and a figure's values at them. */
interface Stretch {
  readonly low: number;
  readonly atLow: number;
  readonly high: number;
  readonly atHigh: number;
}

/** Of the travel from 0 to 1, rising, each once; one of the lists itself where it holds all of them. */
export function merge(...lists: readonly (readonly number[])[]): readonly number[] {
  const [first] = lists;
  if (first !== undefined && isMerged(first) && lists.every((list) => list === first || list.length === 0)) return first;
  const all: number[] = [];
  // Adding zero turns a negative zero into zero.
  for (const list of lists) for (const travel of list) if (travel >= 0 && travel <= 1) all.push(travel + 0);
  all.sort((a, b) => a - b);
  let count = 0;
  for (const travel of all) if (count === 0 || travel !== all[count - 1]) all[count++] = travel;
  all.length = count;
  return lists.find((list) => list.length === count && list.every((travel, i) => travel === all[i])) ?? all;
}

function isMerged(list: readonly number[]): boolean {
  if (list.length === 0 || !(list[0]! >= 0 && list.at(-1)! <= 1)) return false;
  for (let i = 1; i < list.length; i++) if (!(list[i]! > list[i - 1]!)) return false;
  return !Object.is(list[0], -0);
}

const TURN = 2 * Math.PI;
/** A lever that turns more often than this is no throttle linkage; its turning places are left to the grid. */
const MOST_TURNS = 100;

function pedalKinks(build: Build): readonly number[] {
  const full = build.parameters[build.mechanism.drive.travel]!;
  return [build.bounds.pedalRest / full, build.bounds.pedalStop / full].filter((t) => t > 0 && t < 1);
}

function turningPlaces(
  build: Build,
  finder: Finder,
  joint: Joint,
  from: readonly number[],
  pulls: (readonly number[])[],
): readonly number[] {
  switch (joint.kind) {
    case 'rod':
      return rodTurns(finder, joint, from);
    case 'cable':
      return cableTurns(build, finder, joint, from, pulls);
    case 'slot':
      return slotTurns(finder, joint, from);
    case 'coupling':
      return merge(from, finder.rotationAt(joint.driver, from, lagEdges(build, joint)));
  }
}

/** Dead centres, where the driven lever turns back, and where free play is taken up. */
function rodTurns(finder: Finder, joint: RodJoint, from: readonly number[]): readonly number[] {
  return merge(from, finder.rotationAt(joint.driver, from, rodAngles(finder, joint)));
}

/** Driver rotations at which that can be: not anew for each time that the load path is followed. */
const rodAngles = oncePer(({ build }: Finder, joint: RodJoint): readonly number[] => {
  const p = build.parameters;
  const { driverPin, drivenPin } = joint;
  const angles: number[] = [];
  for (const length of rodLengths(joint, p)) {
    angles.push(...trigRoots(rodForm(p, driverPin, drivenPin, length)));
    // The driven turns back where the driving arm stands in line with the rod: one driver rotation for each such driven rotation.
    for (const driven of trigRoots(rodForm(p, drivenPin, driverPin, length))) {
      const e = pinAt(p, drivenPin, driven);
      const along = (offset: number): number =>
        p[driverPin + offset]! * (e[0] - p[driverPin]!) +
        p[driverPin + offset + 1]! * (e[1] - p[driverPin + 1]!) +
        p[driverPin + offset + 2]! * (e[2] - p[driverPin + 2]!);
      angles.push(...bothWays(Math.atan2(along(6), along(3))));
    }
    if (joint.lost !== undefined)
      angles.push(...restContacts(p, driverPin, pinAt(p, drivenPin, build.bounds.restRotation[joint.driven]!), length));
  }
  return angles;
});

/** Dead centres, where the driven lever turns back, and where play is taken up. */
function slotTurns(finder: Finder, joint: SlotJoint, from: readonly number[]): readonly number[] {
  return merge(from, finder.rotationAt(joint.driver, from, slotAngles(finder, joint)));
}

const slotAngles = oncePer(({ build }: Finder, joint: SlotJoint): readonly number[] => {
  const p = build.parameters;
  const angles: number[] = [];
  for (const offset of slotOffsets(joint, p)) {
    angles.push(...trigRoots(slotForm(joint, p, offset)));
    for (const driven of trigRoots(slotBackForm(joint, p, offset))) angles.push(...slotTurnsBackAt(joint, p, driven));
    if (joint.play !== undefined) angles.push(...slotContactsAt(joint, p, build.bounds.restRotation[joint.driven]!, offset));
  }
  return angles;
});

/** Driver rotations at which its pin is `length` from a fixed place. */
function restContacts(p: Float64Array, pin: number, place: readonly [number, number, number], length: number): readonly number[] {
  let a = 0;
  let b = 0;
  let c = -length * length;
  for (let axis = 0; axis < 3; axis++) {
    const d = place[axis]! - p[pin + axis]!;
    a += p[pin + 3 + axis]! * d;
    b += p[pin + 6 + axis]! * d;
    c += d * d + p[pin + 3 + axis]! ** 2;
  }
  return turnRoots(a, b, c / 2);
}

function cableTurns(
  build: Build,
  finder: Finder,
  joint: CableJoint,
  from: readonly number[],
  pulls: (readonly number[])[],
): readonly number[] {
  const p = build.parameters;
  const { cable, driver, driverEnd } = joint;
  let spans = from;
  if (driver !== undefined && driverEnd?.kind === 'pin') {
    spans = merge(from, finder.rotationAt(driver, from, trigRoots(cableForms(p, driverEnd.pin, driverEnd.housing).along)));
  }
  pulls[cable] = spans;
  const slack = p[joint.slack]!;
  const limits = [build.bounds.cableRest[cable]!, build.bounds.cableStop[cable]!, ...cableDeadCentres(joint, p)];
  const kinks = finder.valueAt(
    (pose) => pose.pull[cable]!,
    joint.index,
    spans,
    limits.filter(Number.isFinite).map((limit) => limit + slack),
  );
  return merge(spans, kinks);
}

function lagEdges(build: Build, joint: CouplingJoint): readonly number[] {
  if (joint.lag === undefined && !joint.oneWay) return [];
  const rest = build.bounds.restRotation[joint.driver]!;
  const lag = joint.lag === undefined ? 0 : build.parameters[joint.lag]!;
  return [rest - lag, rest + lag];
}
