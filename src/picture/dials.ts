/** `let` values as dials: what one step is, and between what ends it makes sense to turn. */
import type { Let, Value } from '../definition/definition.ts';
import { PLACE_UNIT_SI, type Dimension } from '../definition/dimensions.ts';
import { dimensionOfKind } from '../definition/formula/kind.ts';
import type { Answered } from '../findings/answered.ts';
import { fromSi, parseUnit, toSi } from '../definition/quantity/units.ts';
import type { Dial } from '../protocol/report.ts';
import { placeIn } from './place.ts';

/** Of plain values, in the order of the file; one that follows from a formula is moved by those behind it. */
export function dialsOf({ text, definition }: Pick<Answered, 'text' | 'definition'>): readonly Dial[] {
  return (definition?.lets ?? []).flatMap((entry) => dialOfLet(text, entry) ?? []);
}

/** Of one figure of the file; undefined where it follows from a formula. */
export function dialOfLet(text: string, { name, value, kind }: Let): Dial | undefined {
  return dialOf(text, name, value, dimensionOfKind(kind));
}

/** @param dimension undefined where it is a quantity of a kind that no place of the file knows */
export function dialOf(text: string, name: string, value: Value, dimension: Dimension | undefined): Dial | undefined {
  const unit = parseUnit(value.unit);
  if (value.formula !== undefined || unit === undefined) return undefined;
  const written = rounded(fromSi(value.nominal, unit));
  const one = dimension === undefined ? undefined : fromSi(PLACE_UNIT_SI[dimension], unit);
  const scale = dimension === undefined || one === undefined ? undefined : { dimension, one };
  const step = stepOf(written, scale);
  const tolerance = value.tolerance === undefined ? 0 : fromSi(Math.max(value.tolerance.plus, value.tolerance.minus), unit);
  const leastSpan = scale === undefined ? 0 : LEAST_SPAN[scale.dimension] * scale.one;
  const steps = Math.ceil(Math.max(Math.abs(written) * SHARE, tolerance * TOLERANCES, leastSpan, step * LEAST_STEPS) / step);
  const below = mayBeNegative(dimension) || written < 0 ? steps : Math.min(steps, Math.floor(written / step + ROUNDING));
  const least = rounded(written - below * step);
  const greatest = rounded(written + steps * step);
  const isUsable = [written, step, least, greatest, toSi(greatest, unit)].every(Number.isFinite) && step > 0 && least < greatest;
  return isUsable
    ? { path: value.path, label: name, value: written, unit: value.unit, step, least, greatest, place: placeIn(text, value.span) }
    : undefined;
}

/** Of the value, to either side. */
const SHARE = 0.25;
/** As many times the tolerance at least. */
const TOLERANCES = 5;
/** To either side. */
const LEAST_STEPS = 20;
/** Of a step; what rounding may take from a whole number of them. */
const ROUNDING = 1e-9;

interface Scale {
  readonly dimension: Dimension;
  /** How many of the written unit a unit of its place is. */
  readonly one: number;
}

/** What a person at the bench sets by, in the unit of the place, but not coarser than a fiftieth of the value. */
function stepOf(written: number, scale: Scale | undefined): number {
  const size = Math.abs(written);
  const usual = scale === undefined ? undefined : STEP[scale.dimension] * scale.one;
  return roundFigure(Math.min(usual ?? Infinity, size > 0 ? size / FINEST : Infinity), usual ?? 1);
}

const FINEST = 50;

/** 1, 2 or 5 times a power of ten, the nearest by ratio. */
function roundFigure(size: number, otherwise: number): number {
  const wanted = Number.isFinite(size) && size > 0 ? size : otherwise;
  const power = 10 ** Math.floor(Math.log10(wanted));
  const leading = [1, 2, 5, 10].reduce((best, each) =>
    Math.abs(Math.log(each / (wanted / power))) < Math.abs(Math.log(best / (wanted / power))) ? each : best,
  );
  return rounded(leading * power);
}

/** In the unit of the place: a caliper, a protractor, a spring scale. Common practice, no source. */
const STEP: Readonly<Record<Dimension, number>> = {
  number: 0.01,
  length: 0.1,
  area: 1,
  angle: 0.1,
  force: 0.1,
  torque: 1,
  'linear-rate': 0.01,
  'torsional-rate': 0.01,
  inertia: 1,
  voltage: 0.01,
  pressure: 0.1,
  'angle-per-length': 0.01,
};

/** To either side, in the unit of the place, so that a small figure can be turned far enough to see what it does. */
const LEAST_SPAN: Readonly<Record<Dimension, number>> = { ...STEP, length: 2, angle: 5, torque: 20, force: 2 };

/** An angle is counted from somewhere, a plain number may be a ratio; other figures keep the sign that they are written with. */
function mayBeNegative(dimension: Dimension | undefined): boolean {
  return dimension === 'angle' || dimension === 'number';
}

/** Without what the change of unit left behind the figure. */
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
