/** The least of a figure between two places, where it may have a corner and nothing is known of its derivative. */

/** A place and the figure there. */
export interface Least {
  readonly at: number;
  readonly value: number;
}

/**
 * Golden section, until the places are `close` to each other. A figure that is NaN counts for greater than any.
 *
 * @param least what is known already; given back where nothing less is found
 */
export function goldenSection(figure: (at: number) => number, low: number, high: number, least: Least, close: number): Least {
  let best = least;
  let left = low + SHORTER * (high - low);
  let right = high - SHORTER * (high - low);
  let atLeft = figure(left);
  let atRight = figure(right);
  while (high - low > close) {
    if (atLeft < best.value) best = { at: left, value: atLeft };
    if (atRight < best.value) best = { at: right, value: atRight };
    if (atLeft <= atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = low + SHORTER * (high - low);
      atLeft = figure(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = high - SHORTER * (high - low);
      atRight = figure(right);
    }
  }
  return best;
}

/** The shorter part of a length cut in the golden ratio. */
const SHORTER = (3 - Math.sqrt(5)) / 2;
