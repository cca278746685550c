/**
 * A four-bar of the textbooks solved as a throttle file and read as a person would read it: off the columns of the table. Angles in
 * degrees as the textbooks have them, derivatives by θ2 as plain numbers.
 */
import { solveTravel } from '../../../src/travel/travel.ts';
import { solve, type Answers } from '../../../src/solve.ts';
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';
import { mechanismOf } from '../../support/solveSketch.ts';
import { fourBarFile } from './fourBarFile.ts';
import { halfTangentAngles } from './halfTangent.ts';

const DEG = Math.PI / 180;

/** Root of the half-tangent formula: `-1` open, `1` crossed. */
export type Root = -1 | 1;

export interface SolvedFourBar {
  readonly text: string;
  readonly answers: Answers;
  /** θ2 as drawn and the signed turn of the input over the whole travel. */
  readonly start: number;
  readonly travel: number;
  /** The station, a fraction, at which the input stands at θ2. */
  station(theta2: number): number;
  /** The input angle at a station. */
  theta2(station: number): number;
  /** A figure of the table where the input stands at θ2, in the table's unit; null where the table has none. */
  read(column: string, theta2: number): number | null;
  /** θ4 = drawn θ4 + rotation; NaN where the table has none. */
  theta4(theta2: number): number;
  /** dθ4/dθ2 from the column `driven.ratio`. */
  slope(theta2: number): number;
  /** d²θ4/dθ2² from the pose behind the table. */
  curvature(theta2: number): number;
}

export interface Drawing {
  /** A negative `a` or `c` is drawn as long as it is, turned by 180°. */
  readonly links: FourBar;
  readonly root: Root;
  readonly start: number;
  readonly travel: number;
  /** Degrees by which the output is drawn away from where the rod's length puts it: the rest has to put it right. */
  readonly drawnOff?: number;
  /** The output's angle as drawn, instead of where the half-tangent formula has it. */
  readonly theta4?: number;
}

/** Throws where the reader finds fault: a textbook's four-bar is a good file. */
export function solveFourBar({ links, root, start, travel, drawnOff = 0, theta4: given }: Drawing): SolvedFourBar {
  const drawn = (given ?? halfTangentAngles(links, start * DEG, root).theta4 / DEG) + drawnOff;
  const text = fourBarFile({
    links: { ...links, a: Math.abs(links.a), c: Math.abs(links.c) },
    theta2Deg: start + (links.a < 0 ? 180 : 0),
    theta4Deg: drawn + (links.c < 0 ? 180 : 0),
    travelDeg: travel,
  });
  const answers = solve(text);
  if (answers.problems.length > 0) throw new Error(`${JSON.stringify(answers.problems)}\n${text}`);
  const station = (theta2: number): number => (theta2 - start) / travel;
  const read = (column: string, theta2: number): number | null => readColumn(answers, column, station(theta2));
  const behind = solveTravel(mechanismOf(text));
  const driven = behind.mechanism.leverIndex.get('driven') ?? NaN;
  const drivenWay = wayOfOpening(answers);
  const footWay = Math.sign(travel);
  return {
    text,
    answers,
    start,
    travel,
    station,
    theta2: (at) => start + travel * at,
    read,
    theta4: (theta2) => drawn + (read('driven.rotation', theta2) ?? NaN),
    slope: (theta2) => (read('driven.ratio', theta2) ?? NaN) * drivenWay * footWay,
    curvature: (theta2) => (behind.poseAt(station(theta2)).curvature[driven] ?? NaN) / (travel * DEG) ** 2,
  };
}

export function readColumn(answers: Answers, name: string, station: number): number | null {
  const [column] = answers.table([station], [name]).columns;
  if (column === undefined) throw new Error(`no column ${name}`);
  return column.values[0] ?? null;
}

/** +1 where the driven lever opens counter-clockwise: the table counts its opening and its ratio that way. */
export function wayOfOpening(answers: Answers): number {
  const stations = Array.from({ length: 11 }, (_, i) => i / 10);
  const [rotation, opening] = ['driven.rotation', 'driven.opening'].map((name) => answers.table(stations, [name]).columns[0]!.values);
  let most = 0;
  let way = NaN;
  rotation!.forEach((turned, i) => {
    if (turned === null || Math.abs(turned) <= most) return;
    most = Math.abs(turned);
    way = Math.sign(turned * (opening![i] ?? NaN));
  });
  return way;
}

/** Angles ±, degrees from 0 to 180, at which coupler and output come in line (Norton, Design of Machinery, eq. 4.37, from memory). */
export function inputToggles({ a, b, c, d }: FourBar): readonly number[] {
  const middle = (a * a + d * d - b * b - c * c) / (2 * a * d);
  const off = Math.abs((b * c) / (a * d));
  return [middle + off, middle - off].filter((cosine) => Math.abs(cosine) <= 1).map((cosine) => Math.acos(cosine) / DEG);
}

/** How far, at most `wanted` degrees, an input at θ2 may be drawn away on one side without passing a toggle. */
export function leadWithin(links: FourBar, theta2: number, side: -1 | 1, wanted: number): number {
  const toggles = inputToggles(links).flatMap((toggle) => [toggle, -toggle, 360 - toggle]);
  const gaps = toggles.map((toggle) => side * (toggle - theta2)).filter((gap) => gap > 0);
  return Math.min(wanted, 0.8 * Math.min(Infinity, ...gaps));
}
