/** A linkage with a cable, a shaft with plates and a sensor, and readings of it as it would be with other dimensions. */
import { applyEdits, setFigure } from '../../../src/definition/edit.ts';
import { linkageValues } from '../../../src/definition/values.ts';
import { readDefinition } from '../../../src/definition/read.ts';
import { fitText } from '../../../src/fitText.ts';
import { randomOf } from '../../../src/numeric/random.ts';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import type { Fit } from '../../../src/studies/fit/fit.ts';
import { NOTHING_BESIDE, type ReadBeside } from '../../../src/studies/fit/gather.ts';

export const BENCH = `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 240 mm, angle: -70 deg}, clevis: {radius: 72 mm ± 0.3 mm, angle: 104 deg}}, friction: 50 N*mm}
  crank:
    pivot: [512 mm ± 0.3 mm, 148]
    arms: {out: {radius: 38 mm ± 0.3 mm, angle: 166 deg}}
    drums: {quadrant: {radius: 22 mm, wraps: clockwise, groove: 95 deg}}
    friction: 12 N*mm
  shaft:
    pivot: [604 mm ± 0.3 mm, 172]
    arms: {arm: {radius: 32 mm ± 0.3 mm, angle: 140 deg}}
    stops: {closed: 0 deg ± 0.3 deg, open: 84 deg}
    friction: 20 N*mm
    inertia: 95 kg*mm^2
pedal: {lever: foot, opens: counterclockwise, travel: 27 deg, pad: pad}
cables:
  main: {from: foot.clevis, leaves: [96, 68], enters: [448, 186], to: crank.quadrant, slack: 1 mm, bend: 120 deg, friction: 0.12, stiffness: 60 N/mm}
rods:
  link: {from: crank.out, to: shaft.arm, length: 110.5 mm ± 0.6 mm, adjust: {min: 104 mm, max: 116 mm, pitch: 1.25 mm}}
plates:
  bank: {lever: shaft, count: 4, bore: 42 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
sensors:
  tps: {lever: shaft, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
springs:
  back: {lever: shaft, rate: 2.2 N*mm/deg, preload: 240 N*mm}
`;

/** With a second return spring, and with two of the pedal's own: a check finds no error in it. */
export const SOUND_BENCH = `${BENCH}  second: {lever: shaft, rate: 2.2 N*mm/deg, preload: 240 N*mm}
  foot_back: {lever: foot, rate: 1 N*mm/deg, preload: 200 N*mm}
  foot_too: {lever: foot, rate: 1 N*mm/deg, preload: 200 N*mm}
`;

export interface Reading {
  readonly columns: readonly string[];
  /** Of the first column: % for the pedal's travel, mm for a pull. */
  readonly at: readonly number[];
  /** Of the car, by path, SI. */
  readonly car?: Readonly<Record<string, number>>;
  readonly fit?: readonly string[];
  /** Of each column but the first, with its unit; scatters the readings by as much. */
  readonly noise?: readonly string[];
  /** Added to a reading, in the unit of the table, by `row:column`, both from 0. */
  readonly off?: Readonly<Record<string, number>>;
  readonly seed?: number;
  readonly linkage?: string;
}

/** The linkage with readings of the car. */
export function benchText({ columns, at, car = {}, fit, noise, off = {}, seed = 1, linkage = BENCH }: Reading): string {
  const built = carText(linkage, car);
  const answers = solve(built);
  const unit = (name: string): string =>
    answers.columns
      .find((each) => each.name === name)
      ?.unit.replace('·', '*')
      .replace('²', '^2') ?? '';
  const [position = '', ...read] = columns;
  const travels = at.map((each) => (position === 'pedal.travel' ? each / 100 : travelOf(built, position, each)));
  const table = answers.table(travels, read);
  const random = randomOf(seed, 3);
  const rows = at.map((where, i) => {
    const cells = read.map((name, c) => {
      const value = table.columns.find((each) => each.name === name)?.values[i];
      if (value === null || value === undefined) return '~';
      const scatter = noise === undefined ? 0 : Number.parseFloat(noise[c]!) * random.normal(i, c);
      return `${(value + scatter + (off[`${i}:${c}`] ?? 0)).toFixed(9)} ${unit(name)}`;
    });
    return `        - [${where} ${position === 'pedal.travel' ? '%' : 'mm'}, ${cells.join(', ')}]`;
  });
  const noises = noise === undefined ? '' : `\n      noise: {${read.map((name, c) => `${name}: ${noise[c]}`).join(', ')}}`;
  return `${linkage}measured:
${fit === undefined ? '' : `  fit: [${fit.join(', ')}]\n`}  runs:
    bench:
      columns: [${columns.join(', ')}]
      rows:
${rows.join('\n')}${noises}
`;
}

/** With other figures. @param car by path, SI */
export function carText(linkage: string, car: Readonly<Record<string, number>>): string {
  const { definition } = readDefinition(linkage);
  const values = linkageValues(definition!);
  return applyEdits(
    linkage,
    Object.entries(car).map(([path, value]) => setFigure(linkage, values.get(path)!, value, 12)!),
  );
}

/** Pedal travel at which a cable has been pulled so far, mm: by bisection of the table. */
function travelOf(text: string, column: string, pull: number): number {
  const { study } = solve(text);
  const found = study!.columns.get(column)!;
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (found.read(study!.travel.build, study!.travel.poseAt(middle)) * 1e3 < pull) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Of a text that can be fitted. */
export function fitted(text: string, beside: ReadBeside = NOTHING_BESIDE): Fit {
  const outcome = finished(fitText(text, beside));
  if (outcome.kind === 'not-fitted') throw new Error(outcome.why);
  return outcome;
}

export function whyNot(text: string, beside: ReadBeside = NOTHING_BESIDE): string {
  const outcome = finished(fitText(text, beside));
  if (outcome.kind === 'fitted') throw new Error('It was fitted');
  return outcome.why;
}

export const TEN = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90];
