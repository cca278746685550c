/**
 * How closely a turn is known, from how closely the dimensions are.
 *
 * Turned is to where the sum of squares of the weighted distances r from the wanted curve is least. With A = ∂r/∂turn and B = ∂r/∂dimension
 * there, a dimension that is off by δ moves that place by −(AᵀA)⁻¹AᵀB δ. All of it linear.
 */
import { solveLinear } from '../../numeric/linearSystem.ts';
import { leastOf } from './estimate.ts';
import type { AsFound } from './turn.ts';

/**
 * One standard error of each turn, SI, rows and columns of the slopes in the order of the turns and the unknowns.
 * @param byTurn d r / d turn, SI, one row a distance @param byUnknown d r / d unknown, each in its scale
 */
export function turnErrors(
  byTurn: Float64Array,
  byUnknown: Float64Array,
  turns: number,
  { unknowns, posterior: { values, directions }, tooSmallBy, posterior }: AsFound,
): readonly number[] {
  const n = unknowns.length;
  const rows = byTurn.length / turns;
  const squares = new Float64Array(turns * turns);
  for (let row = 0; row < rows; row++) {
    for (let a = 0; a < turns; a++) {
      for (let b = 0; b < turns; b++) squares[a * turns + b]! += byTurn[row * turns + a]! * byTurn[row * turns + b]!;
    }
  }
  const least = leastOf(posterior);
  const variance = new Float64Array(turns);
  directions.forEach((direction, k) => {
    if (!(values[k]! > least)) return;
    const moved = new Float64Array(turns);
    for (let row = 0; row < rows; row++) {
      let along = 0;
      for (let j = 0; j < n; j++) along += byUnknown[row * n + j]! * direction[j]!;
      for (let a = 0; a < turns; a++) moved[a]! += byTurn[row * turns + a]! * along;
    }
    solveLinear(Float64Array.from(squares), moved, turns);
    for (let a = 0; a < turns; a++) variance[a]! += (moved[a]! / values[k]!) ** 2;
  });
  return Array.from(variance, (each) => tooSmallBy * Math.sqrt(each));
}
