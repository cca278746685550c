/**
 * Random linkages for property tests. Everything assembles as drawn by construction; some stand near a toggle, of the driven or
 * the driving arm, or near a change point, on purpose.
 */
import fc from 'fast-check';
import { type Sketch, type SketchDrum, type SketchEnd, type SketchJoint, type SketchLever, type Turn } from './sketch.ts';
import { cross, dot, minus, plus, size, square, times, unit, type Vector } from './vector.ts';

export interface MechanismChoice {
  /** Which linkages come up; all kinds where absent. */
  readonly only?: 'planar' | 'spatial';
  /** Joints that may come up; all where absent. */
  readonly joints?: readonly SketchJoint['kind'][];
  /** How many levers; two to five where absent. */
  readonly levers?: number;
  /** Whether driven levers get closed stops, where they are drawn, and open ones; none where absent. */
  readonly stops?: boolean;
}

/** Linkages of two to five levers. Two with the same seed are the same. */
export function anyMechanism(choice: MechanismChoice = {}): fc.Arbitrary<Sketch> {
  return fc.array(fc.integer({ min: 0, max: FINENESS - 1 }), { minLength: DRAWS, maxLength: DRAWS, size: 'max' }).map((draws) => {
    let at = 0;
    return drawMechanism(() => draws[at++ % DRAWS]! / FINENESS, choice);
  });
}

const FINENESS = 2 ** 24;
/** Enough for five levers; more would start over. */
const DRAWS = 160;

/** A number from 0 to below 1. */
type Draw = () => number;

interface Draft {
  readonly name: string;
  readonly pivot: Vector;
  readonly axis: Vector;
  readonly reference: Vector;
  readonly opens?: Turn;
  readonly arms: Record<string, Vector>;
  readonly drums: Record<string, SketchDrum>;
}

const between = (draw: Draw, low: number, high: number): number => low + (high - low) * draw();
const either = <T>(draw: Draw, choices: readonly T[]): T => choices[Math.floor(draw() * choices.length)]!;

function drawMechanism(draw: Draw, { only, joints: allowed, levers, stops }: MechanismChoice): Sketch {
  const spatial = only === undefined ? draw() < 0.45 : only === 'spatial';
  const count = levers ?? 2 + Math.floor(draw() * 4);
  const may = (kind: SketchJoint['kind']): boolean => allowed === undefined || allowed.includes(kind);
  const drafts: Draft[] = [];
  const joints: SketchJoint[] = [];
  const pulled = may('cable') && draw() < 0.12;
  if (!pulled) drafts.push(drawLever(draw, 'foot', [0, 0, 0], spatial));
  while (drafts.length < count) {
    const parent = drafts.length === 0 ? undefined : draw() < 0.7 ? drafts.at(-1)! : either(draw, drafts);
    const child = drawLever(draw, `lever_${drafts.length}`, parent?.pivot ?? [0, 0, 0], spatial);
    const name = `joint_${joints.length}`;
    const roll = draw();
    const kind: SketchJoint['kind'] = roll < 0.55 ? 'rod' : roll < 0.72 ? 'slot' : roll < 0.82 ? 'coupling' : 'cable';
    if (parent === undefined) joints.push(drawCable(draw, name, undefined, child, spatial));
    else if (kind === 'slot' && may(kind)) joints.push(drawSlot(draw, name, parent, child));
    else if (kind === 'coupling' && may(kind))
      joints.push({ kind, name, from: parent.name, to: child.name, ratio: between(draw, 0.3, 2) * either(draw, [1, -1]) });
    else if (kind === 'cable' && may(kind)) joints.push(drawCable(draw, name, parent, child, spatial));
    else joints.push(drawRod(draw, name, parent, child, spatial));
    drafts.push(child);
  }
  const travel = draw() < 0.15 ? between(draw, 200, 420) : between(draw, 5, 110);
  const pedal: Sketch['pedal'] = pulled
    ? { kind: 'cable', cable: joints[0]!.name, pull: between(draw, 5, 60) }
    : { kind: 'lever', lever: 'foot', opens: openingWay(joints, drafts), travel };
  const stop = (lever: SketchLever): SketchLever => {
    if (lever.name === 'foot' || draw() < 0.4) return lever;
    return { ...lever, stops: { ...(draw() < 0.7 && { closed: 0 }), ...(draw() < 0.8 && { open: between(draw, 2, 50) }) } };
  };
  return { levers: stops === true ? drafts.map(stop) : drafts, joints, pedal };
}

function drawLever(draw: Draw, name: string, from: Vector, spatial: boolean): Draft {
  const way = between(draw, 0, 2 * Math.PI);
  const away = between(draw, 60, 260);
  const rise = spatial ? between(draw, -60, 60) : 0;
  const tilt: Vector = [between(draw, -1.2, 1.2), between(draw, -1.2, 1.2), draw() < 0.8 ? 1 : -1];
  const pivot: Vector = name === 'foot' ? from : plus(from, [away * Math.cos(way), away * Math.sin(way), rise]);
  const opens = draw() < 0.3 ? { opens: either<Turn>(draw, ['clockwise', 'counterclockwise']) } : {};
  if (!spatial) return { name, pivot, axis: [0, 0, 1], reference: [1, 0, 0], ...(name !== 'foot' && opens), arms: {}, drums: {} };
  return { name, pivot, axis: tilt, reference: [1, 0.2, 0.1], ...(name !== 'foot' && opens), arms: {}, drums: {} };
}

/** Unit vectors e₁ and e₂ square to a lever's axis u, with u × e₁ = e₂. */
function frameOf({ axis, reference }: Pick<Draft, 'axis' | 'reference'>): { readonly u: Vector; readonly e1: Vector; readonly e2: Vector } {
  const u = unit(axis);
  const e1 = unit(square(reference, u));
  return { u, e1, e2: cross(u, e1) };
}

function armPlace(lever: Draft, radius: number, angle: number, offset: number): Vector {
  const { u, e1, e2 } = frameOf(lever);
  const arm = plus(times(e1, radius * Math.cos(angle)), times(e2, radius * Math.sin(angle)));
  return plus(plus(lever.pivot, times(u, offset)), arm);
}

function addArm(lever: Draft, name: string, place: Vector): SketchEnd {
  lever.arms[name] = place;
  return { lever: lever.name, part: name };
}

/** Polar angle in a lever's frame of a place's direction from its axis. */
function polarAngle(lever: Draft, place: Vector): number {
  const { e1, e2 } = frameOf(lever);
  const d = minus(place, lever.pivot);
  return Math.atan2(dot(d, e2), dot(d, e1));
}

/** A small angle of either sign, spread evenly over its powers of ten. */
function smallAngle(draw: Draw): number {
  return either(draw, [1, -1]) * 10 ** between(draw, -4, -1);
}

function drawRod(draw: Draw, name: string, parent: Draft, child: Draft, spatial: boolean): SketchJoint {
  const out = `out_${name}`;
  const r1 = between(draw, 15, 80);
  const r2 = between(draw, 15, 80);
  const angle = between(draw, -Math.PI, Math.PI);
  const lift1 = spatial ? between(draw, -15, 15) : 0;
  const lift2 = spatial ? between(draw, -15, 15) : 0;
  const roll = draw();
  let p1 = armPlace(parent, r1, angle, lift1);
  let p2: Vector;
  if (roll < 0.15) {
    // The driven arm nearly in line with the rod, stretched or folded.
    const inLine = polarAngle(child, p1) + (draw() < 0.5 ? Math.PI : 0);
    const off = smallAngle(draw);
    p2 = armPlace(child, r2, inLine + off, lift2);
    if (size(minus(p1, p2)) < SHORTEST * r2) p2 = armPlace(child, r2, inLine + Math.PI + off, lift2);
  } else if (roll < 0.3) {
    // The driving arm nearly in line.
    p2 = armPlace(child, r2, angle, lift2);
    const inLine = polarAngle(parent, p2) + (draw() < 0.5 ? Math.PI : 0);
    const off = smallAngle(draw);
    p1 = armPlace(parent, r1, inLine + off, lift1);
    if (size(minus(p1, p2)) < SHORTEST * r2) p1 = armPlace(parent, r1, inLine + Math.PI + off, lift1);
    p2 = clearOfToggle(draw, child, p1, p2, r2, lift2);
  } else if (roll < 0.42 && !spatial) {
    // Nearly a parallelogram, whose change points the travel may come past.
    p2 = armPlace(child, r1 * (1 + smallAngle(draw) / 10), angle, 0);
    p2 = clearOfToggle(draw, child, p1, p2, r1, 0);
  } else {
    p2 = clearOfToggle(draw, child, p1, armPlace(child, r2, between(draw, -Math.PI, Math.PI), lift2), r2, lift2);
  }
  const length = draw() < 0.5 ? {} : { length: size(minus(p1, p2)) };
  return { kind: 'rod', name, from: addArm(parent, out, p1), to: addArm(child, 'in', p2), ...length };
}

/** A rod shorter than this against its driven arm is not drawn: rounding in its length would be 1e-13 and more. */
const SHORTEST = 0.2;
/** Least sine of the transmission angle where no toggle is asked for. */
const CLEAR = 0.05;

function clearOfToggle(draw: Draw, child: Draft, p1: Vector, first: Vector, radius: number, lift: number): Vector {
  const { u } = frameOf(child);
  let best = first;
  let bestScore = -1;
  for (let attempt = 0; attempt < 6; attempt++) {
    const p2 = attempt === 0 ? first : armPlace(child, radius, between(draw, -Math.PI, Math.PI), lift);
    const arm = square(minus(p2, child.pivot), u);
    const rod = minus(p2, p1);
    const sine = Math.abs(dot(u, cross(arm, rod))) / (size(arm) * size(rod));
    const score = Math.min(sine / CLEAR, size(rod) / (SHORTEST * radius));
    if (score > bestScore) {
      best = p2;
      bestScore = score;
    }
    if (bestScore >= 1) break;
  }
  return best;
}

function drawSlot(draw: Draw, name: string, parent: Draft, child: Draft): SketchJoint {
  const drives = draw() < 0.5 ? 'fork' : 'pin';
  const [pinLever, fork] = drives === 'fork' ? [parent, child] : [child, parent];
  const { u } = frameOf(fork);
  // The pin stands towards the fork's pivot or anywhere, so that some forks are encircled.
  const near = draw() < 0.6 ? polarAngle(pinLever, fork.pivot) + between(draw, -0.8, 0.8) : between(draw, -Math.PI, Math.PI);
  const apart = size(square(minus(fork.pivot, pinLever.pivot), u));
  const place = armPlace(pinLever, draw() < 0.2 ? apart * between(draw, 1.1, 1.6) : between(draw, 20, 90), near, 0);
  const d = square(minus(place, fork.pivot), u);
  const reach = size(d);
  const offset = draw() < 0.4 ? 0 : between(draw, -0.5, 0.5) * reach;
  const { e1, e2 } = frameOf(fork);
  const polar = Math.atan2(dot(d, e2), dot(d, e1));
  // offset = reach sin(polar − angle), with the pin ahead of the pivot or, now and then, behind it.
  const lead = Math.asin(offset / reach);
  const angle = draw() < 0.8 ? polar - lead : polar - Math.PI + lead;
  return {
    kind: 'slot',
    name,
    pin: addArm(pinLever, `tang_${name}`, place),
    fork: fork.name,
    drives,
    angle: (angle * 180) / Math.PI,
    offset,
  };
}

function drawCable(draw: Draw, name: string, parent: Draft | undefined, child: Draft, spatial: boolean): SketchJoint {
  const slack = draw() < 0.5 ? 0 : between(draw, 0.1, 4);
  const near = (place: Vector): Vector =>
    plus(place, [between(draw, -150, 150), between(draw, -150, 150), spatial ? between(draw, -40, 40) : 0]);
  const end = (lever: Draft, part: string): SketchEnd => {
    if (draw() < 0.5)
      return addArm(
        lever,
        part,
        armPlace(lever, between(draw, 20, 80), between(draw, -Math.PI, Math.PI), spatial ? between(draw, -15, 15) : 0),
      );
    lever.drums[part] = drawDrum(draw);
    return { lever: lever.name, part };
  };
  const to = end(child, 'seat');
  const enters = near(child.arms.seat ?? child.pivot);
  if (parent === undefined) return { kind: 'cable', name, to, enters, slack };
  const part = `pull_${name}`;
  const from = end(parent, part);
  return { kind: 'cable', name, from, leaves: near(parent.arms[part] ?? parent.pivot), to, enters, slack };
}

function drawDrum(draw: Draw): SketchDrum {
  const wraps = either<Turn>(draw, ['counterclockwise', 'clockwise']);
  if (draw() < 0.5) return { radius: between(draw, 15, 50), wraps };
  const points: (readonly [number, number])[] = [];
  let opening = either(draw, [0, 0, -10]);
  const count = 2 + Math.floor(draw() * 4);
  for (let i = 0; i < count; i++) {
    points.push([opening, between(draw, 15, 45)]);
    opening += between(draw, 8, 40);
  }
  return { radius: points, wraps };
}

/** The way in which the pedal pulls its first cable; counter-clockwise where it pulls none. */
function openingWay(joints: readonly SketchJoint[], drafts: readonly Draft[]): Turn {
  const cable = joints.find((joint) => joint.kind === 'cable' && joint.from?.lever === 'foot');
  const foot = drafts[0]!;
  if (cable?.kind !== 'cable' || cable.from === undefined || cable.leaves === undefined) return 'counterclockwise';
  const pin = foot.arms[cable.from.part];
  if (pin === undefined) return foot.drums[cable.from.part]!.wraps;
  const { u } = frameOf(foot);
  const growth = dot(cross(u, minus(pin, foot.pivot)), minus(pin, cable.leaves));
  return growth < 0 ? 'clockwise' : 'counterclockwise';
}
