/** What a fit found, in words that text and JSON share. Sentences without a full stop. */
import { FIGURE_UNIT, FIGURE_UNIT_SI, type Dimension } from '../definition/dimensions.ts';
import type { AsFoundCheck } from '../studies/fit/asFound.ts';
import type { Fit } from '../studies/fit/fit.ts';
import type { CannotBe } from '../studies/fit/cannotBe.ts';
import type { FittedDimension } from '../studies/fit/fittedDimensions.ts';
import { tooSmallBy, type FitColumn } from '../studies/fit/judgedReadings.ts';
import type { Correlated, Untold } from '../studies/fit/untold.ts';
import { countText, decimal, figureAsWritten, figureText, listWords, otherUnit, percentText } from './figure.ts';

/** A figure with as many digits as its standard error gives sense to, e.g. `38.035 mm ± 0.031 mm`. SI. */
export function withError(value: number, error: number, dimension: Dimension, written?: string): string {
  if (!Number.isFinite(error)) return figureText({ value, dimension });
  const other = otherUnit(dimension, written);
  const scale = other?.size ?? FIGURE_UNIT_SI[dimension];
  const digits = error > 0 ? Math.min(MOST_DIGITS, Math.max(0, 1 - Math.floor(Math.log10(error / scale)))) : MOST_DIGITS;
  const name = other?.name ?? FIGURE_UNIT[dimension];
  const unit = name === 'deg' ? '°' : name === '' ? '' : ` ${name}`;
  return `${decimal(value / scale, digits)}${unit} ± ${decimal(error / scale, digits)}${unit}`;
}

const MOST_DIGITS = 9;

export function dimensionWords(of: FittedDimension): string {
  const { name, dimension, nominal, value, error, left, beyond, asDrawn, length = NaN, unit } = of;
  const file = figureAsWritten({ value: nominal, dimension }, unit);
  const half = toleranceWords(of);
  const has = asDrawn ? 'as drawn' : `${file} as the file has it`;
  if (!Number.isFinite(error)) return `${name}: not told by the readings, and without a tolerance: ${has}`;
  const least = of.isAtBound ? '; the readings would have less within their error, which cannot be' : '';
  const odd = of.cannotBe === undefined ? '' : `; ${cannotBeWords(of.cannotBe)}`;
  const alone = of.isContradicted ? ', and what the readings alone want: they contradict it' : '';
  const outside = beyond === true ? `; that is beyond its tolerance${alone}` : '';
  const known =
    left === undefined
      ? ''
      : `${isHardlyNarrower(of) ? '; the readings hardly narrow that' : '; the readings narrow that'} to ${knownTo(of)}, three standard errors`;
  const found = withError(asDrawn ? Math.abs(value) : value, error, dimension, unit);
  const drawn = asDrawn
    ? ` ${value < 0 ? 'shorter' : 'longer'} than drawn, ${figureText({ value: length, dimension }, 1)} long; the file gives no length`
    : `; the file has ${file}${half}`;
  return `${name}: ${found}${drawn}${outside}${least}${odd}${known}`;
}

/** As the file gives it, e.g. ` ± 0.1 mm` or ` +0.6/−0.1 mm`; empty without one. */
export function toleranceWords({ prior, nominal, dimension, unit }: FittedDimension): string {
  if (prior === undefined) return '';
  const [plus, minus] = [prior.middle + prior.half - nominal, nominal - prior.middle + prior.half];
  if (Math.abs(plus - minus) <= UNEVEN * prior.half) return ` ± ${figureAsWritten({ value: prior.half, dimension }, unit)}`;
  const [up = ''] = figureAsWritten({ value: plus, dimension }, unit).split(' ');
  return ` +${up}/−${figureAsWritten({ value: minus, dimension }, unit)}`;
}

/** Relative: less is rounding. */
const UNEVEN = 1e-6;

function cannotBeWords({ of, from, to, dimension }: CannotBe): string {
  if (of === 'slack') return 'no cable has less slack than none';
  const ends = [from, to].map((value) => (value === undefined ? '…' : figureText({ value, dimension }, 1)));
  return `its \`adjust\` allows ${ends.join(' to ')}`;
}

/** Between what it is known to lie, three standard errors, as a tolerance counts: e.g. `± 0.09 mm`. */
export function knownTo({ error, dimension, unit }: FittedDimension): string {
  return `± ${figureAsWritten({ value: 3 * error, dimension }, unit)}`;
}

/** Whether the readings tell of a dimension little more than its tolerance does. */
export function isHardlyNarrower({ left }: FittedDimension): boolean {
  return left !== undefined && left > HARDLY_NARROWER;
}

/** Of the tolerance. Common practice, no source. */
const HARDLY_NARROWER = 0.8;

/** With the combination that shows, where it is one of two. */
export function untoldWords(fit: Fit, { unknowns, shown, times }: Untold): string {
  const all = unknowns.map((i) => fit.dimensions[i]!);
  const names = listWords(all.map(({ name }) => name));
  if (shown === 0) {
    const [only] = all;
    return `these readings tell nothing of ${names}${only?.prior === undefined ? '' : ' beyond its tolerance'}`;
  }
  const [one, other] = all;
  if (times === undefined || one === undefined || other === undefined) {
    return `these readings cannot tell ${names} from each other: only ${shown === 1 ? 'one' : shown} of their ${all.length} combinations ${shown === 1 ? 'shows' : 'show'}`;
  }
  const kind = times > 0 ? 'sum' : 'difference';
  return `these readings cannot tell ${one.name} from ${other.name}: only their ${kind} shows (${combinationWords(fit, unknowns, times)})`;
}

/** About the file's figures, so that the factor may be rounded: e.g. `(crank_reach − 38 mm) − 0.484 × (link.length − 110 mm) = -0.14 mm ± 0.03 mm`. */
function combinationWords(fit: Fit, [i, j]: readonly number[], times: number): string {
  const [one, other] = [fit.dimensions[i!]!, fit.dimensions[j!]!];
  const factor = (times * one.scale) / other.scale;
  const n = fit.dimensions.length;
  const of = (a: number, b: number): number => fit.covariance[a * n + b]!;
  const variance = of(i!, i!) + 2 * factor * of(i!, j!) + factor * factor * of(j!, j!);
  // Between two of a kind it has no unit, whatever they are written in.
  const shown = one.dimension === other.dimension ? Math.abs(factor) : (Math.abs(factor) * shownSize(other)) / shownSize(one);
  const error = Math.sqrt(Math.max(0, variance));
  // Rounded, it must not move the sum by what is seen, wherever the second may be.
  const far = Math.abs(other.value - other.nominal) + 3 * other.scale;
  const digits = error > 0 ? Math.ceil(Math.log10((10 * Math.abs(factor) * far) / error)) : 0;
  const rounded = Number(shown.toPrecision(Math.min(MOST_DIGITS, Math.max(3, digits))));
  const left = `${fromFile(one)} ${factor > 0 ? '+' : '−'} ${rounded} × ${fromFile(other)}`;
  const value = one.value - one.nominal + factor * (other.value - other.nominal);
  // Square to what is not told, so that it is known where neither of the two is.
  return error > 0 ? `${left} = ${withError(value, error, one.dimension, one.unit)}` : left;
}

/** SI size of the unit in which a dimension is told. */
function shownSize({ dimension, unit }: FittedDimension): number {
  return otherUnit(dimension, unit)?.size ?? FIGURE_UNIT_SI[dimension];
}

/** A dimension as it is counted from what the file has. */
function fromFile({ name, nominal, dimension, unit }: FittedDimension): string {
  if (nominal === 0) return name;
  return `(${name} ${nominal > 0 ? '−' : '+'} ${figureAsWritten({ value: Math.abs(nominal), dimension }, unit)})`;
}

export function correlatedWords({ dimensions }: Fit, { first, second, correlation }: Correlated): string {
  const [one, other] = [dimensions[first]!.name, dimensions[second]!.name];
  const kind = correlation < 0 ? 'sum' : 'difference';
  return `these readings hardly tell ${one} from ${other}: their ${kind} is known far more closely than either (correlation ${decimal(correlation, 3)})`;
}

/** What was read with what noise, and whether it scatters as that says. */
export function columnWords({
  run,
  column,
  noise,
  noiseGiven,
  common,
  count,
  scatter,
  isNoisy,
  lean,
  likeNext,
  closedForm,
}: FitColumn): string {
  const figured = (value: number): string =>
    column.unit === '%' ? percentText(value, 2) : figureText({ value, dimension: column.dimension }, 1);
  const figure = figured(noise);
  const from = noiseGiven
    ? 'as the file says'
    : noise > common
      ? `as they scatter, more than the ${figured(common)} of common practice: write \`noise\` where you know better`
      : 'common practice, no source: write `noise` where you know better';
  const scattered = Number.isFinite(scatter) ? `; they scatter by ${decimal(scatter, 2)} of it` : '';
  const noisy = isNoisy
    ? ', more than it explains: the standard errors are too small by as much, or the linkage is not as the file has it'
    : '';
  const side =
    lean === undefined ? '' : `; on average they read ${figured(Math.abs(lean))} ${lean > 0 ? 'less' : 'more'} than what is found`;
  const along =
    likeNext > 0 ? '; what is off at one is off likewise at the next along the pedal, as a drift or a wrong dimension makes it' : '';
  const by = closedForm ? '' : '; derivatives by differences';
  return `${column.name} of ${run}: ${countText(count, 'reading')}, noise ${figure}, ${from}${scattered}${noisy}${side}${along}${by}`;
}

/** Of readings that do not go with the linkage, what may be why; empty where they do. */
export function astrayWords({ columns, dimensions }: Fit): readonly string[] {
  if (!columns.some(({ isAstray }) => isAstray)) return [];
  const found = new Set(dimensions.map(({ name }) => name));
  const sensors = columns.flatMap(({ column }) =>
    ['signal', 'angle', 'percent'].includes(column.key) ? [`${column.owner}.at_closed`] : [],
  );
  const [first] = sensors.filter((name) => !found.has(name));
  const such = first === undefined ? '' : `, such as ${first}`;
  return [
    `these readings do not go with the linkage as the file has it: a dimension that \`fit\` does not name${such}, a drift or a lever that slips may be why`,
  ];
}

/** Above the dimensions. */
export function fitTitle({ settled, columns }: Fit): string {
  if (!settled) return 'Where the fit stopped, not to be relied on';
  if (columns.some(({ isAstray }) => isAstray))
    return 'As the readings would have it, not to be relied on: they do not go with the linkage';
  const by = tooSmallBy(columns);
  const small = by > 1 ? `, which is ${decimal(by, 1)} times too small: the readings are further off than their noise` : '';
  return `As the car is, ± one standard error${small}`;
}

/** What was taken as it stands, and so not checked. */
export function fitNotChecked({ dimensions, held, columns, asFound, turning }: Fit): readonly string[] {
  const open = dimensions.filter(({ error }) => !Number.isFinite(error)).map(({ name }) => name);
  return [
    'whether a reading was taken at the pedal position beside it: positions count as exact',
    ...(held.length > 0
      ? [`${listWords(held)}: of these the file gives a tolerance, and they count as exact, since \`fit\` does not name them`]
      : []),
    ...(columns.some(({ noiseGiven }) => !noiseGiven)
      ? ['the noise of readings whose noise the file does not give: the standard errors rest on it']
      : []),
    ...(asFound.kind === 'checked' && open.length > 0
      ? [`what the file demands, as far as it rests on ${listWords(open)}: not told, and taken as the file has it`]
      : []),
    ...(turning.kind === 'turn' && turning.turns.length > 0 && turning.demands === undefined
      ? ['whether what is turned leaves what else the file demands as it was: change the file, and check it']
      : []),
    ...(turning.kind === 'turn' && turning.demands?.length === 0
      ? ['what turning does beside the curve: `keep` of `tune` names nothing']
      : []),
  ];
}

/** Whether everything was told, and everything that was read could be held against the rest and goes with it. */
export function isSoundFit({ settled, untold, idle, readings, leftOut, dimensions, columns, asFound }: Fit): boolean {
  return (
    settled &&
    !isUnmet(asFound) &&
    untold.length === 0 &&
    idle.length === 0 &&
    leftOut.length === 0 &&
    readings.every(({ verdict }) => verdict === 'counts') &&
    dimensions.every(({ beyond, cannotBe }) => beyond !== true && cannotBe === undefined) &&
    columns.every(({ isNoisy, isAstray, likeNext }) => !isNoisy && !isAstray && likeNext === 0)
  );
}

/** Whether the car as found is known not to do all that its file demands. */
function isUnmet(asFound: AsFoundCheck): boolean {
  return asFound.kind === 'checked' && asFound.notMet.length > 0;
}

export function fitVerdict(fit: Fit): string {
  const { dimensions, readings, settled, untold, idle, leftOut } = fit;
  if (!settled) return 'the fit did not settle: the figures are not to be relied on';
  const counted = readings.filter(({ verdict }) => verdict !== 'off').length;
  const off = readings.length - counted;
  const unheld = readings.filter(({ verdict }) => verdict === 'unheld').length;
  const of = `${countText(dimensions.length, 'dimension')} from ${countText(counted, 'reading')}`;
  const told = [
    ...(isUnmet(fit.asFound) ? ['the car as found does not do what the file demands'] : []),
    ...(fit.columns.some(({ isAstray }) => isAstray) ? ['the readings do not go with the linkage: not to be relied on'] : []),
    ...(untold.length + idle.length > 0 ? ['not all can be told'] : []),
    ...(off > 0 ? [`${countText(off, 'reading')} off and left out`] : []),
    ...(leftOut.length > 0 ? [`${countText(leftOut.length, 'reading')} that cannot be used`] : []),
    ...(unheld > 0 ? [`nothing can be held against ${unheld === counted ? 'any reading' : countText(unheld, 'reading')}`] : []),
    ...(dimensions.some(({ beyond }) => beyond === true) ? ['a dimension is beyond its tolerance'] : []),
    ...(dimensions.some(({ cannotBe }) => cannotBe !== undefined) ? ['no car has such a dimension'] : []),
    ...(fit.columns.some(({ isNoisy, isAstray }) => isNoisy && !isAstray) ? ['readings scatter more than their noise'] : []),
    ...(fit.columns.some(({ isNoisy, isAstray, likeNext }) => !isNoisy && !isAstray && likeNext > 0)
      ? ['readings are off alike along the pedal']
      : []),
  ];
  return told.length === 0 ? `${of}, all told and all readings as their noise says` : `${of}; ${told.join('; ')}`;
}
