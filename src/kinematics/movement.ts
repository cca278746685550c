/**
 * A movement of the engine: levers and housing ends carried along with the pedal still, all lengths kept.
 *
 * Points turn about `about` by Rodrigues' formula and then shift. Rods and cables keep the lengths they were drawn with, so that the
 * moved linkage rests and opens elsewhere.
 */
import type { Movement } from '../definition/definition.ts';
import type { Build } from './build.ts';
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
    }
  }
  decideWindings(mechanism, moved.parameters);
  settleRest(moved);
  return moved;
}

type Vector = readonly [number, number, number];

interface Carry {
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
  const read = (p: Float64Array, at: number): Vector => [p[at]!, p[at + 1]!, p[at + 2]!];
  return {
    direction: (at, p) => turned(read(p, at)),
    point(at, p) {
      const [x, y, z] = read(p, at);
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
