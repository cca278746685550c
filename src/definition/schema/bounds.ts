/** Bounds of a figure, and what its tolerance, or that of a `let` that it uses, makes of them. */
import type { Tolerance, Value } from '../definition.ts';
import { PLACE_UNIT, PLACE_UNIT_SI } from '../dimensions.ts';
import type { Problem } from '../problem.ts';
import { problem, type Bounds, type Reading, type Site } from './shape.ts';

/** The bound that a value breaks, as words after "must be"; undefined where it breaks none. */
export function brokenBound(value: Value, bounds: Bounds): string | undefined {
  const si = PLACE_UNIT_SI[value.dimension];
  const unit = PLACE_UNIT[value.dimension];
  const figure = (bound: number): string => `${bound}${unit === '' || bound === 0 ? '' : ` ${unit}`}`;
  const slack = ROUNDING * Math.abs(value.nominal);
  if (bounds.above !== undefined && !(value.nominal > bounds.above * si)) return `greater than ${figure(bounds.above)}`;
  if (bounds.least !== undefined && value.nominal < bounds.least * si - slack) return `${figure(bounds.least)} or more`;
  if (bounds.below !== undefined && !(value.nominal < bounds.below * si)) return `less than ${figure(bounds.below)}`;
  if (bounds.most !== undefined && value.nominal > bounds.most * si + slack) return `${figure(bounds.most)} or less`;
  if (bounds.whole === true && Math.abs(value.nominal - Math.round(value.nominal)) > slack) return 'a whole number';
  if (bounds.notZero === true && value.nominal === 0) return 'other than 0';
  return undefined;
}

/** Relative; a bound that was reached by unit conversion or a formula is not broken by its rounding. */
const ROUNDING = 1e-12;

/** The figure in the unit of its place. */
export function written(value: Value): string {
  const figure = Number((value.nominal / PLACE_UNIT_SI[value.dimension]).toPrecision(6));
  const unit = PLACE_UNIT[value.dimension];
  return unit === '' ? String(figure) : `${figure} ${unit}`;
}

/**
 * Warnings of tolerances one end of which is out of the bounds of a figure that itself is within them: its own, and those of the `let`
 * values that its formula uses directly, each alone. One tolerance is told of once, however many figures use it.
 */
export function strainedTolerances(value: Value, bounds: Bounds, site: Site, reading: Reading): readonly Problem[] {
  return value.tolerance === undefined && value.formula === undefined ? [] : strainedBy(value, bounds, site, reading);
}

function strainedBy(value: Value, bounds: Bounds, site: Site, { scope, strained }: Reading): readonly Problem[] {
  const problems: Problem[] = [];
  const tell = (tolerance: Tolerance, ends: readonly number[]): void => {
    if (strained.has(tolerance)) return;
    for (const nominal of ends) {
      const end = { ...value, nominal };
      const broken = Number.isFinite(nominal) ? brokenBound(end, bounds) : undefined;
      if (broken === undefined) continue;
      strained.add(tolerance);
      problems.push(strainedProblem(tolerance, value, site, `${written(end)} at one end of this tolerance, and must be ${broken}`, broken));
      return;
    }
  };
  const { tolerance, formula, nominal } = value;
  if (tolerance !== undefined) tell(tolerance, [nominal - tolerance.minus, nominal + tolerance.plus]);
  for (const index of formula?.uses ?? []) {
    const used = scope.lets[index];
    if (formula === undefined || used?.tolerance === undefined) continue;
    const lets = Float64Array.from(scope.lets, (each) => each.nominal);
    const at = (deviation: number): number => {
      lets[index] = used.nominal + deviation;
      return formula.evaluate(lets);
    };
    tell(used.tolerance, [at(-used.tolerance.minus), at(used.tolerance.plus)]);
  }
  return problems;
}

function strainedProblem(tolerance: Tolerance, { span, formula }: Value, { name }: Site, what: string, broken: string): Problem {
  const related = formula && [{ span, message: `\`${name}\` is worked out from it here` }];
  const cure = `Write deviations that leave it ${broken}`;
  return { ...problem('bad-tolerance', tolerance.span, `\`${name}\` comes out at ${what}`, { cure, related }), severity: 'warning' };
}
