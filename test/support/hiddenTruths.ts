/**
 * Linkages whose dimensions are drawn at random and then forgotten: their curve is what a tune is asked for. One four-bar in the plane, from
 * a pedal to a shaft, that is never under 40° of transmission angle and opens 30° or more without turning back.
 */
import { randomOf, type Random } from '../../src/numeric/random.ts';
import { solve } from '../../src/solve.ts';
import { leastOf } from '../../src/travel/extremes.ts';

export interface HiddenTruth {
  /** The file with a `tune` block; its values are not the true ones. */
  readonly text: string;
  /** How many values are free, 4 to 6. */
  readonly free: number;
  /** Opening of the true linkage at so many hundredths of the travel, deg. */
  readonly opening: readonly number[];
}

interface Bounds {
  readonly name: string;
  readonly unit: string;
  /** What the truth is drawn from, and what the file allows. */
  readonly drawn: readonly [number, number];
  readonly allowed: readonly [number, number];
}

const BOUNDS: readonly Bounds[] = [
  { name: 'crank_reach', unit: 'mm', drawn: [25, 50], allowed: [20, 60] },
  { name: 'crank_clock', unit: 'deg', drawn: [20, 160], allowed: [0, 180] },
  { name: 'shaft_reach', unit: 'mm', drawn: [25, 50], allowed: [20, 60] },
  { name: 'shaft_clock', unit: 'deg', drawn: [20, 160], allowed: [0, 180] },
  { name: 'across', unit: 'mm', drawn: [60, 140], allowed: [50, 150] },
  { name: 'up', unit: 'mm', drawn: [-30, 30], allowed: [-40, 40] },
];

/** Always the same for the same seed. */
export function hiddenTruths(count: number, seed = 99): readonly HiddenTruth[] {
  const truths: HiddenTruth[] = [];
  for (let draw = 0; truths.length < count; draw++) {
    const free = 4 + (truths.length % 3);
    const truth = truthOf(randomOf(seed, draw), free);
    if (truth !== undefined) truths.push(truth);
  }
  return truths;
}

function truthOf(random: Random, free: number): HiddenTruth | undefined {
  const drawnAt = (first: number): readonly number[] =>
    BOUNDS.map(({ drawn: [from, to] }, i) => from + (to - from) * random.uniform(0, first + i));
  const values = drawnAt(0);
  const { study } = solve(fileOf(values, ''));
  const opening = study?.columns.get('shaft.opening');
  const transmission = study?.columns.get('link.transmission');
  if (study === undefined || opening === undefined || transmission === undefined) return undefined;
  const { build, poseAt, samples } = study.travel;
  const curve = Array.from({ length: 101 }, (_, i) => (opening.read(build, poseAt(i / 100)) * 180) / Math.PI);
  const least = leastOf((at) => transmission.read(build, poseAt(at)), samples);
  const rises = curve.every((value, i) => Number.isFinite(value) && (i === 0 || value > curve[i - 1]!));
  if (!rises || curve[100]! < 30 || !(least!.value > (40 * Math.PI) / 180)) return undefined;
  const others = drawnAt(10);
  const start = values.map((value, i) => (i < free ? others[i]! : value));
  const points = curve.flatMap((value, i) => (i % 5 === 0 ? [`[${i} %, ${value} deg]`] : []));
  const names = BOUNDS.slice(0, free).map(
    ({ name, unit, allowed: [from, to] }) => `    ${name}: {from: ${from} ${unit}, to: ${to} ${unit}}\n`,
  );
  const tune = `tune:
  free:
${names.join('')}  curve:
    of: shaft.opening
    through: [${points.join(', ')}]
  keep: [transmission]
`;
  return { text: fileOf(start, tune), free, opening: curve };
}

function fileOf(values: readonly number[], tune: string): string {
  return `format: 1
let:
${BOUNDS.map(({ name, unit }, i) => `  ${name}: ${values[i]!} ${unit}\n`).join('')}levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: crank_reach, angle: crank_clock}}}
  shaft: {pivot: [across, up], arms: {arm: {radius: shaft_reach, angle: shaft_clock}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
rods:
  link: {from: pedal.out, to: shaft.arm}
${tune}`;
}
