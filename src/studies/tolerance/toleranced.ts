/**
 * The dimensions that the file gives a tolerance, centred: one that may be `plus` greater or `minus` less stands at its middle,
 * nominal + (plus − minus) / 2, and may be (plus + minus) / 2 off it either way.
 */
import type { Dimension } from '../../definition/dimensions.ts';
import type { Span } from '../../definition/span.ts';
import type { Mechanism, MechanismDimension } from '../../kinematics/model.ts';

export interface Toleranced {
  /** Index into `mechanism.dimensions`. */
  readonly index: number;
  /** Where it stands in the file, e.g. `let.reach`. */
  readonly path: string;
  readonly span: Span;
  readonly dimension: Dimension;
  /** SI. */
  readonly middle: number;
  /** SI, above 0. */
  readonly half: number;
}

/** In the order of the mechanism's dimensions; empty where the linkage has no tolerance. One that is ± 0 is left out. */
export function tolerancedDimensions({ dimensions }: Mechanism): readonly Toleranced[] {
  return dimensions.flatMap((each): Toleranced[] => {
    const half = each.tolerance === undefined ? 0 : (each.tolerance.plus + each.tolerance.minus) / 2;
    return half > 0 ? [{ ...common(each), middle: middleOf(each), half }] : [];
  });
}

/** Every dimension in its middle, SI, as many as the mechanism has. */
export function middleValues({ dimensions }: Mechanism): Float64Array {
  return Float64Array.from(dimensions, middleOf);
}

function middleOf({ nominal, tolerance }: MechanismDimension): number {
  return tolerance === undefined ? nominal : nominal + (tolerance.plus - tolerance.minus) / 2;
}

function common({ index, path, span, dimension }: MechanismDimension): Omit<Toleranced, 'middle' | 'half'> {
  return { index, path, span, dimension };
}
