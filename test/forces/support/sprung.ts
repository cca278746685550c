/**
 * A drawn linkage with springs, as the force tests write it: the sketch of the kinematic tests with what acts on it, in the units of a
 * throttle file (mm, degrees, N, N·mm), its text, and the engine's answers to that text.
 */
import type { Mechanism } from '../../../src/kinematics/model.ts';
import { columnsOf } from '../../../src/table/columns.ts';
import { tabulate } from '../../../src/table/table.ts';
import { solveTravel, type Travel } from '../../../src/travel/travel.ts';
import type { Rotations } from '../../support/closure.ts';
import { sketchText, type Sketch, type SketchEnd } from '../../support/sketch.ts';
import { mechanismOf, sensesOf } from '../../support/solveSketch.ts';
import type { Vector } from '../../support/vector.ts';

export interface TorsionSketch {
  readonly kind: 'torsion';
  readonly name: string;
  readonly lever: string;
  /** N·mm a degree. */
  readonly rate: number;
  /** N·mm. */
  readonly preload: number;
  readonly countsAsReturn?: boolean;
}

export interface LinearSketch {
  readonly kind: 'extension' | 'compression';
  readonly name: string;
  readonly from: Vector | SketchEnd;
  readonly to: SketchEnd;
  /** N/mm. */
  readonly rate: number;
  readonly freeLength: number;
  /** N; extension springs only. */
  readonly initialTension?: number;
  readonly countsAsReturn?: boolean;
}

export type SpringSketch = TorsionSketch | LinearSketch;

export interface SprungSketch extends Sketch {
  readonly springs: readonly SpringSketch[];
  /** Arm of the pedal's lever that the foot presses. */
  readonly pad?: string;
  /** Of a pedal that is a cable. */
  readonly leverRatio?: number;
  /** N/mm, by the cable's name. */
  readonly stiffness?: Readonly<Record<string, number>>;
}

export function isPlace(from: Vector | SketchEnd): from is Vector {
  return !('lever' in from);
}

export function sprungText(sketch: SprungSketch): string {
  const { springs, pad, leverRatio, stiffness } = sketch;
  let text = sketchText(sketch);
  const extend = (name: string, more: string): void => {
    const line = new RegExp(`^( *${name}: \\{.*)\\}$`, 'm');
    if (!line.test(text)) throw new Error(`No line of ${name} in\n${text}`);
    text = text.replace(line, `$1, ${more}}`);
  };
  if (pad !== undefined) extend('pedal', `pad: ${pad}`);
  if (leverRatio !== undefined) extend('pedal', `lever_ratio: ${figure(leverRatio)}`);
  for (const [cable, rate] of Object.entries(stiffness ?? {})) extend(cable, `stiffness: ${figure(rate)}`);
  return springs.length === 0 ? text : `${text}springs:\n${springs.map((spring) => `  ${spring.name}: ${springText(spring)}\n`).join('')}`;
}

function springText(spring: SpringSketch): string {
  const counts = spring.countsAsReturn === undefined ? '' : `, counts_as_return: ${spring.countsAsReturn}`;
  if (spring.kind === 'torsion') {
    return `{lever: ${spring.lever}, rate: ${figure(spring.rate)}, preload: ${figure(spring.preload)}${counts}}`;
  }
  const { kind, from, to, rate, freeLength, initialTension } = spring;
  const start = isPlace(from) ? `[${from.map(figure).join(', ')}]` : `${from.lever}.${from.part}`;
  const tension = initialTension === undefined ? '' : `, initial_tension: ${figure(initialTension)}`;
  const rest = `rate: ${figure(rate)}, free_length: ${figure(freeLength)}${tension}${counts}`;
  return `{from: ${start}, to: ${to.lever}.${to.part}, kind: ${kind}, ${rest}}`;
}

/** All digits of a double, without an exponent. */
function figure(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(40).replace(/0+$/, '').replace(/\.$/, '') : text;
}

export interface SolvedSprung {
  readonly text: string;
  readonly mechanism: Mechanism;
  readonly travel: Travel;
  /** +1 or −1 for each lever: the way it opens. */
  readonly senses: Readonly<Record<string, number>>;
  rotationsAt(travel: number): Rotations;
  /** A row of the table at a pedal travel, in the table's units; NaN for null. Throws for a column that the file does not have. */
  rowAt(travel: number): (column: string) => number;
  /** One column along the pedal, in the table's unit; NaN where it has no value. */
  along(column: string): (travel: number) => number;
}

/** Throws where the reader finds fault: what the tests draw is sound. */
export function solveSprung(sketch: SprungSketch): SolvedSprung {
  return solveSprungText(sprungText(sketch));
}

export function solveSprungText(text: string): SolvedSprung {
  const mechanism = mechanismOf(text);
  const travel = solveTravel(mechanism);
  const columns = columnsOf(travel);
  return {
    text,
    mechanism,
    travel,
    senses: sensesOf(mechanism),
    rotationsAt(at) {
      const { rotation } = travel.poseAt(at);
      return Object.fromEntries(mechanism.levers.map((lever) => [lever.name, rotation[lever.index]!]));
    },
    along(name) {
      const column = columns.find((each) => each.name === name);
      if (column === undefined) throw new Error(`No column ${name} in\n${text}`);
      return (at) => column.read(travel.build, travel.poseAt(at)) * column.scale;
    },
    rowAt(at) {
      const values = new Map(tabulate(travel, columns, [at]).columns.map(({ name, values: [value] }) => [name, value ?? NaN]));
      return (name) => {
        const value = values.get(name);
        if (value === undefined) throw new Error(`No column ${name} among ${[...values.keys()].join(' ')}\n${text}`);
        return value;
      };
    },
  };
}
