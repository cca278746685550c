/** Readings over the pedal's travel, for the view: what was read, found and drawn, and the misses in parts of the noise. */
import { figureDigits } from '../../outputs/figure.ts';
import type { ChartCurve } from '../../protocol/charts.ts';
import type { StudyCharts } from '../../protocol/studies.ts';
import type { Fit } from '../../studies/fit/fit.ts';
import type { FitColumn, FitReading } from '../../studies/fit/judgedReadings.ts';

/** What was read, found and drawn, and the misses in parts of the noise. */
export function columnCharts({ readings }: Fit, { run, column, noise }: FitColumn, of: number): readonly StudyCharts[] {
  const own = readings.filter((each) => each.of === of && Number.isFinite(each.travel)).sort((a, b) => a.travel - b.travel);
  const stations = rising(own.map(({ travel }) => Math.min(1, Math.max(0, travel))));
  if (stations === undefined) return [];
  const digits =
    column.unit === '%'
      ? 2
      : figureDigits({ value: Math.max(...own.map(({ value }) => Math.abs(value))), dimension: column.dimension }) + 1;
  const curve = (label: string, read: (reading: FitReading) => number, after = digits): ChartCurve => ({
    column: `${column.name} ${label}`,
    label,
    part: column.owner,
    values: Float64Array.from(own, (each) => finite(read(each))),
    digits: after,
  });
  const found = curve('found', ({ fitted }) => fitted * column.scale);
  const drawnAs = curve('in the file', ({ drawn }) => drawn * column.scale);
  const passes = passesOf(readings.filter((each) => each.of === of && Number.isFinite(each.travel)));
  /** One curve a pass of the pedal: a line from one pass to the other would be a zigzag between what is read there and back. */
  const ofPasses = (label: string, value: (reading: FitReading) => number, after: number): readonly ChartCurve[] =>
    passes.map(({ name, readings: inPass }) => {
      const whole = curve(passes.length === 1 ? label : `${label}, ${name}`, value, after);
      return { ...whole, values: along(stations, whole.values, new Set(own.flatMap((each, i) => (inPass.has(each) ? [i] : [])))) };
    });
  const read = ofPasses('read', ({ value }) => value * column.scale, digits);
  const misses = ofPasses('read less found', ({ value, fitted }) => (value - fitted) / noise, 1);
  return [
    {
      kind: 'charts',
      stations,
      charts: [
        {
          id: `fit-${of}`,
          title: `${column.name} of ${run}`,
          unit: column.unit,
          curves: [...read, found, drawnAs],
          bands: [],
          straight: false,
        },
        {
          id: `fit-${of}-misses`,
          title: `Misses of ${column.name} of ${run}, in parts of its noise`,
          unit: '',
          curves: misses,
          bands: [
            { severity: 'warning', from: 2, to: undefined, label: 'more than twice the noise above' },
            { severity: 'warning', from: undefined, to: -2, label: 'more than twice the noise below' },
          ],
          straight: false,
        },
      ],
    },
  ];
}

const finite = (value: number): number => (Number.isFinite(value) ? value : NaN);

/** Two readings at one place stand next to each other. Undefined where there are fewer than two. */
function rising(travels: readonly number[]): Float64Array | undefined {
  if (travels.length < 2) return undefined;
  const stations = Float64Array.from(travels);
  for (let i = 1; i < stations.length; i++) if (!(stations[i]! > stations[i - 1]!)) stations[i] = stations[i - 1]! + BESIDE;
  const last = stations.at(-1)!;
  return last > 1 ? stations.map((at) => at / last) : stations;
}

/** Of the pedal's travel; far less than is seen. */
const BESIDE = 1e-9;

interface Pass {
  /** `there` or `back`, numbered from the second of each. */
  readonly name: string;
  readonly readings: ReadonlySet<FitReading>;
}

/** In the order of the file, a new one where the travel turns back; one alone where that is so often that the order says nothing. */
function passesOf(all: readonly FitReading[]): readonly Pass[] {
  const passes: { readonly readings: FitReading[]; way: number }[] = [];
  for (const reading of all) {
    const pass = passes.at(-1);
    const step = pass === undefined ? 0 : Math.sign(reading.travel - pass.readings.at(-1)!.travel);
    if (pass === undefined || step * pass.way < 0) passes.push({ readings: [reading], way: step });
    else {
      pass.readings.push(reading);
      pass.way ||= step;
    }
  }
  if (passes.length > MOST_PASSES || passes.some(({ readings }) => readings.length < LEAST_OF_PASS))
    return [{ name: '', readings: new Set(all) }];
  const counts = { there: 0, back: 0 };
  return passes.map(({ readings, way }): Pass => {
    const name = way < 0 ? 'back' : 'there';
    counts[name]++;
    return { name: counts[name] === 1 ? name : `${name} ${counts[name]}`, readings: new Set(readings) };
  });
}

const MOST_PASSES = 4;
/** Readings. */
const LEAST_OF_PASS = 3;

/** The straight lines between the stations of one pass, at every station; NaN before the first and past the last. @param own of the pass */
function along(stations: Float64Array, values: Float64Array, own: ReadonlySet<number>): Float64Array {
  const at = [...own].sort((a, b) => a - b);
  return values.map((value, i) => {
    if (own.has(i)) return value;
    const next = at.findIndex((each) => each > i);
    if (next <= 0) return NaN;
    const [from, to] = [at[next - 1]!, at[next]!];
    const share = (stations[i]! - stations[from]!) / (stations[to]! - stations[from]!);
    return values[from]! + share * (values[to]! - values[from]!);
  });
}
