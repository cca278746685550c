/**
 * The value of one `let` with which a place comes to where it is asked to.
 *
 * The figures cᵢ of the place that follow from it move along a curve. Wanted is its nearest point to the targets tᵢ, seen along the curve's
 * present direction c′: the root of Σ mᵢ² cᵢ′ (cᵢ(x) − tᵢ), mᵢ being metres to a unit of each figure. Of one figure that is just c(x) = t.
 */
import type { Definition, Let } from '../definition/definition.ts';
import type { Replacement } from '../definition/problem.ts';
import { formulaAlong, letsBehind } from '../language/letBehind.ts';
import { bracketedRoot } from '../numeric/roots.ts';
import { unitOf, writeFigure, type Component } from './component.ts';

export interface SolvedLet {
  write(text: string): Replacement | undefined;
}

/**
 * @param share how far a figure alone may leave the place from where it shall be, m
 * @returns why it cannot be, or undefined where it is there already
 */
export function solveLet(
  definition: Definition,
  components: readonly Component[],
  entry: Let,
  share: number,
): SolvedLet | string | undefined {
  const { value, name } = entry;
  const curves = components
    .filter((component) => letsBehind(definition, component.value).includes(entry))
    .map(({ value: figure, target, metres }) => ({ along: formulaAlong(definition, figure, entry), target, metres }));
  const present = value.nominal;
  const size = Math.abs(present) > 0 ? Math.abs(present) : SIZES[unitOf(value) === '' ? 'number' : 'quantity'];
  const small = size * SMALL;
  const slopes = curves.map(({ along }) => (along(present + small) - along(present - small)) / (2 * small));
  const miss = (x: number): number =>
    curves.reduce((sum, { along, target, metres }, index) => sum + metres * metres * slopes[index]! * (along(x) - target), 0);
  const steepness = curves.reduce((sum, { metres }, index) => sum + (metres * slopes[index]!) ** 2, 0);
  if (!(steepness > 0)) return `\`${name}\` does not move it from where it stands`;
  const atPresent = miss(present);
  const first = Math.abs(atPresent / steepness);
  if (first * Math.sqrt(steepness) <= share) return undefined;
  const root = nearestRoot(miss, present, atPresent, first);
  if (root === undefined) return `No value of \`${name}\` brings it there`;
  // How short the figure may be: as the place moves at the root.
  const speed = Math.max(...curves.map(({ along, metres }) => metres * Math.abs(along(root + small) - along(root - small)))) / (2 * small);
  const close = share / (Number.isFinite(speed) && speed > 0 ? speed : Math.sqrt(steepness));
  return { write: (text) => writeFigure(text, value, root, close) };
}

/** Where a `let` is 0, what its size may be, SI. */
const SIZES = { number: 1, quantity: 0.01 } as const;
/** Of the size: where both the curve's bend and the computer's rounding say nothing. */
const SMALL = 1e-6;

/** Searched both ways from the present value, in steps that grow. */
function nearestRoot(miss: (x: number) => number, present: number, atPresent: number, first: number): number | undefined {
  const sides = [1, -1].map((way) => ({ way, x: present, at: atPresent }));
  for (let step = first / 4, count = 0; count < MOST_STEPS; count++, step *= GROWTH) {
    for (const side of sides) {
      if (Number.isNaN(side.at)) continue;
      const x = side.x + side.way * step;
      const at = miss(x);
      if (at === 0) return x;
      if (at > 0 !== side.at > 0 && !Number.isNaN(at)) return bracketedRoot(miss, side.x, side.at, x, at, CLOSE * Math.abs(x - side.x));
      Object.assign(side, { x, at });
    }
  }
  return undefined;
}

/** A thousand times as far as a straight curve would need. */
const MOST_STEPS = 24;
const GROWTH = 1.4;
/** Of a bracket's width. */
const CLOSE = 1e-9;
