/**
 * A movement of the engine: levers, housing ends and spring anchors carried along with the pedal still, all lengths kept.
 *
 * Points turn about `about` by Rodrigues' formula and then shift. Rods and cables keep the lengths they were drawn with, so that the
 * moved linkage rests and opens elsewhere.
 */
import type { Movement } from '../definition/definition.ts';
import { anySquare, cross, dot, vectorAt, type Vector } from '../numeric/vector.ts';
import type { Build } from './build.ts';
import { drumAt, type DrumPoint } from './joints/drum.ts';
import type { LeverModel } from './model.ts';
import { decideWindings } from './branches.ts';
import { createBounds } from './build.ts';
import { settleRest } from './rest.ts';

/** A build as the movement leaves it, at rest; its open stops must be settled. */
export function movedBuild(build: Build, movement: Movement): Build {
  const { mechanism } = build;
  const moved: Build = {
    ...build,
    parameters: Float64Array.from(build.parameters),
    bounds: createBounds(mechanism),
  };
  const carry = motionOf(movement);
  const point = (at: number): void => put(moved.parameters, at, carry.point(at, build.parameters));
  const direction = (at: number): void => put(moved.parameters, at, carry.direction(at, build.parameters));
  for (const each of movement.moves) {
    if (each.kind === 'lever') {
      const lever = mechanism.levers[mechanism.leverIndex.get(each.lever) ?? -1];
      if (lever === undefined) continue;
      point(lever.pivot);
      direction(lever.axis);
      for (const pin of lever.pins.values()) {
        point(pin);
        direction(pin + 3);
        direction(pin + 6);
      }
      for (const joint of mechanism.joints) {
        if (joint.kind !== 'slot' || joint.fork !== lever.index) continue;
        direction(joint.direction);
        direction(joint.normal);
      }
    } else if (each.kind === 'cable-end') {
      const cable = mechanism.cables.find((joint) => joint.name === each.cable);
      const end = each.end === 'enters' ? cable?.drivenEnd : cable?.driverEnd;
      if (end !== undefined) point(end.housing);
      const along = mechanism.directions.housings.get(each.cable)?.[each.end];
      if (along !== undefined) direction(along);
    } else {
      const spring = mechanism.attached.springs.find(({ name }) => name === each.spring);
      if (spring !== undefined && spring.kind !== 'torsion' && spring.from.kind === 'place') point(spring.from.place);
    }
  }
  takeUpSlack(build, moved, movement, carry);
  decideWindings(mechanism, moved.parameters);
  settleRest(moved);
  return moved;
}

/**
 * A pin at a cable's end keeps its drawn length, so its movement shows by itself. At a drum the way from housing to rim and around it
 * changes: what it gains, free length and wrap together, is taken off the slack.
 */
function takeUpSlack(build: Build, moved: Build, movement: Movement, carry: Carry): void {
  const carried = new Set(movement.moves.flatMap((each) => (each.kind === 'lever' ? [each.lever] : [])));
  for (const joint of build.mechanism.cables) {
    for (const end of [joint.driverEnd, joint.drivenEnd]) {
      if (end?.kind !== 'drum') continue;
      const { drum } = end;
      const lever = build.mechanism.levers[drum.lever]!;
      drumAt(drum, build.parameters, 0, point);
      // A driven drum unwinds as it turns its way, a driving one winds on: so the wrap lies behind or before the rim point.
      const side = end === joint.drivenEnd ? drum.wraps : -drum.wraps;
      const mark = anySquare(vectorAt(build.parameters, lever.axis));
      const before = drumPath(build.parameters, lever, end.housing, side, point.radius, mark);
      const turnedMark = carried.has(lever.name) ? carry.turned(mark) : mark;
      const after = drumPath(moved.parameters, lever, end.housing, side, point.radius, turnedMark);
      const wrap = after.angle - before.angle;
      const gained = after.free - before.free + side * point.radius * (wrap - TURN * Math.round(wrap / TURN));
      moved.parameters[joint.slack] = moved.parameters[joint.slack]! - gained;
    }
  }
}

const TURN = 2 * Math.PI;
const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };

/** Free length from a housing end to a drum's rim, and where on the rim it arrives, about the axis from a mark on the drum. */
function drumPath(
  p: Float64Array,
  lever: LeverModel,
  housing: number,
  side: number,
  radius: number,
  mark: Vector,
): { readonly free: number; readonly angle: number } {
  const axis = vectorAt(p, lever.axis);
  const pivot = vectorAt(p, lever.pivot);
  const end = vectorAt(p, housing);
  const from: Vector = [end[0] - pivot[0], end[1] - pivot[1], end[2] - pivot[2]];
  const height = dot(from, axis);
  const flat: Vector = [from[0] - height * axis[0], from[1] - height * axis[1], from[2] - height * axis[2]];
  const distance = Math.hypot(...flat);
  const across = Math.sqrt(distance * distance - radius * radius);
  const toHousing = Math.atan2(dot(cross(mark, flat), axis), dot(mark, flat));
  // Seen from the axis, the rim point lies acos(R / distance) off the housing, on the side to which the pull turns the drum back.
  return { free: Math.hypot(across, height), angle: toHousing - side * Math.atan2(across, radius) };
}

interface Carry {
  turned(vector: Vector): Vector;
  point(at: number, p: Float64Array): Vector;
  direction(at: number, p: Float64Array): Vector;
}

function motionOf({ shift, turn, about, axis }: Movement): Carry {
  const place = (of: Movement['shift']): Vector => [of?.x.nominal ?? 0, of?.y.nominal ?? 0, of?.z?.nominal ?? 0];
  const angle = turn?.nominal ?? 0;
  const given: Vector = axis ? [axis.x.nominal, axis.y.nominal, axis.z?.nominal ?? 0] : [0, 0, 1];
  const size = Math.hypot(...given);
  const [ux, uy, uz]: Vector = [given[0] / size, given[1] / size, given[2] / size];
  const centre = place(about);
  const by = place(shift);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const turned = ([x, y, z]: Vector): Vector => {
    const along = (ux * x + uy * y + uz * z) * (1 - c);
    return [
      x * c + (uy * z - uz * y) * s + ux * along,
      y * c + (uz * x - ux * z) * s + uy * along,
      z * c + (ux * y - uy * x) * s + uz * along,
    ];
  };
  return {
    turned,
    direction: (at, p) => turned(vectorAt(p, at)),
    point(at, p) {
      const [x, y, z] = vectorAt(p, at);
      const [rx, ry, rz] = turned([x - centre[0], y - centre[1], z - centre[2]]);
      return [centre[0] + rx + by[0], centre[1] + ry + by[1], centre[2] + rz + by[2]];
    },
  };
}

function put(p: Float64Array, at: number, vector: Vector): void {
  p[at] = vector[0];
  p[at + 1] = vector[1];
  p[at + 2] = vector[2];
}
