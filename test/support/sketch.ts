/**
 * A linkage as the tests draw it, in the units of a throttle file (mm, degrees), and its text. Every figure is written with all
 * its digits.
 */
import type { Vector } from './vector.ts';

export type Turn = 'counterclockwise' | 'clockwise';

export interface SketchDrum {
  /** mm, or opening in degrees with radius in mm. */
  readonly radius: number | readonly (readonly [number, number])[];
  readonly wraps: Turn;
}

export interface SketchLever {
  readonly name: string;
  readonly pivot: Vector;
  /** Any length; left out of the file where it is z and `reference` is x. */
  readonly axis: Vector;
  readonly reference: Vector;
  readonly opens?: Turn;
  /** Drawn places. */
  readonly arms: Readonly<Record<string, Vector>>;
  readonly drums: Readonly<Record<string, SketchDrum>>;
  readonly stops?: { readonly closed?: number; readonly open?: number };
}

export interface SketchEnd {
  readonly lever: string;
  readonly part: string;
}

export type SketchJoint =
  /** `length` as drawn where absent. */
  | {
      readonly kind: 'rod';
      readonly name: string;
      readonly from: SketchEnd;
      readonly to: SketchEnd;
      readonly length?: number;
      readonly lost?: number;
    }
  | {
      readonly kind: 'slot';
      readonly name: string;
      readonly pin: SketchEnd;
      readonly fork: string;
      readonly drives: 'fork' | 'pin';
      readonly angle: number;
      readonly offset: number;
      readonly play?: number;
    }
  | {
      readonly kind: 'coupling';
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly ratio: number;
      readonly lag?: number;
      readonly oneWay?: boolean;
    }
  | {
      readonly kind: 'cable';
      readonly name: string;
      readonly from?: SketchEnd;
      readonly leaves?: Vector;
      readonly enters: Vector;
      readonly to: SketchEnd;
      readonly slack: number;
    };

export type SketchPedal =
  | { readonly kind: 'lever'; readonly lever: string; readonly opens: Turn; readonly travel: number }
  | { readonly kind: 'cable'; readonly cable: string; readonly pull: number };

export interface Sketch {
  readonly levers: readonly SketchLever[];
  readonly joints: readonly SketchJoint[];
  readonly pedal: SketchPedal;
}

export function leverNamed(sketch: Sketch, name: string): SketchLever {
  const lever = sketch.levers.find((each) => each.name === name);
  if (lever === undefined) throw new Error(`The sketch has no lever ${name}`);
  return lever;
}

/** The lever that a joint turns. */
export function drivenLever(joint: SketchJoint): string {
  switch (joint.kind) {
    case 'rod':
    case 'cable':
      return joint.to.lever;
    case 'slot':
      return joint.drives === 'fork' ? joint.fork : joint.pin.lever;
    case 'coupling':
      return joint.to;
  }
}

/** The lever that drives a joint; undefined where the pedal is a cable. */
export function drivingLever(joint: SketchJoint): string | undefined {
  switch (joint.kind) {
    case 'rod':
    case 'cable':
      return joint.from?.lever;
    case 'slot':
      return joint.drives === 'fork' ? joint.pin.lever : joint.fork;
    case 'coupling':
      return joint.from;
  }
}

export function sketchText({ levers, joints, pedal }: Sketch): string {
  const block = (name: string, kind: SketchJoint['kind']): string => {
    const lines = joints.filter((joint) => joint.kind === kind).map((joint) => `  ${joint.name}: ${jointText(joint)}\n`);
    return lines.length === 0 ? '' : `${name}:\n${lines.join('')}`;
  };
  return `format: 1
levers:
${levers.map(leverText).join('')}pedal: ${pedalText(pedal)}
${block('cables', 'cable')}${block('rods', 'rod')}${block('slots', 'slot')}${block('couplings', 'coupling')}`;
}

function leverText(lever: SketchLever): string {
  const { axis, reference, arms, drums, stops } = lever;
  const plain = String(axis) === '0,0,1' && String(reference) === '1,0,0';
  const armLines = Object.entries(arms).map(([name, at]) => `${name}: {at: ${list(at)}}`);
  const drumLines = Object.entries(drums).map(([name, { radius, wraps }]) => {
    const form = typeof radius === 'number' ? `radius: ${figure(radius)}` : `profile: [${radius.map((point) => list(point)).join(', ')}]`;
    return `${name}: {${form}, wraps: ${wraps}}`;
  });
  const ends = [
    stops?.closed !== undefined && `closed: ${figure(stops.closed)}`,
    stops?.open !== undefined && `open: ${figure(stops.open)}`,
  ];
  return [
    `  ${lever.name}:`,
    `    pivot: ${list(lever.pivot)}`,
    ...(plain ? [] : [`    axis: ${list(axis)}`, `    reference: ${list(reference)}`]),
    ...(lever.opens === undefined ? [] : [`    opens: ${lever.opens}`]),
    ...(armLines.length > 0 ? [`    arms: {${armLines.join(', ')}}`] : []),
    ...(drumLines.length > 0 ? [`    drums: {${drumLines.join(', ')}}`] : []),
    ...(stops?.closed === undefined && stops?.open === undefined ? [] : [`    stops: {${ends.filter(Boolean).join(', ')}}`]),
    '',
  ].join('\n');
}

function pedalText(pedal: SketchPedal): string {
  return pedal.kind === 'cable'
    ? `{cable: ${pedal.cable}, pull: ${figure(pedal.pull)}}`
    : `{lever: ${pedal.lever}, opens: ${pedal.opens}, travel: ${figure(pedal.travel)}}`;
}

function jointText(joint: SketchJoint): string {
  const end = ({ lever, part }: SketchEnd): string => `${lever}.${part}`;
  const optional = (key: string, value: number | undefined): string => (value === undefined ? '' : `, ${key}: ${figure(value)}`);
  switch (joint.kind) {
    case 'rod':
      return `{from: ${end(joint.from)}, to: ${end(joint.to)}${optional('length', joint.length)}${optional('lost', joint.lost)}}`;
    case 'slot': {
      const { pin, fork, drives, angle, offset, play } = joint;
      return `{pin: ${end(pin)}, fork: ${fork}, drives: ${drives}, angle: ${figure(angle)}, offset: ${figure(offset)}${optional('play', play)}}`;
    }
    case 'coupling': {
      const { from, to, ratio, lag, oneWay } = joint;
      return `{from: ${from}, to: ${to}, ratio: ${figure(ratio)}${optional('lag', lag)}${oneWay === true ? ', one_way: true' : ''}}`;
    }
    case 'cable': {
      const { from, leaves, enters, to, slack } = joint;
      const start = from === undefined || leaves === undefined ? '' : `from: ${end(from)}, leaves: ${list(leaves)}, `;
      return `{${start}enters: ${list(enters)}, to: ${end(to)}, slack: ${figure(slack)}}`;
    }
  }
}

function list(values: readonly number[]): string {
  // A planar place is written with two figures: the file then never mentions z.
  const kept = values.length === 3 && values[2] === 0 ? values.slice(0, 2) : values;
  return `[${kept.map(figure).join(', ')}]`;
}

/** All digits of a double, without an exponent, which is not a quantity's way of writing. */
function figure(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(40).replace(/0+$/, '').replace(/\.$/, '') : text;
}
