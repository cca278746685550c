/** Quantiles of a sample. */

/**
 * Straight between the values that stand at (n − 1) × share, the first of them at 0: definition 7 of R. J. Hyndman, Y. Fan, The American
 * Statistician 50 (1996) 361, from memory.
 * @param sorted rising, without NaN @param share from 0 to 1 @returns NaN for an empty sample
 */
export function quantile(sorted: Float64Array, share: number): number {
  if (sorted.length === 0) return NaN;
  const at = (sorted.length - 1) * share;
  const below = Math.floor(at);
  const [low, high] = [sorted[below]!, sorted[Math.min(below + 1, sorted.length - 1)]!];
  return low + (high - low) * (at - below);
}
