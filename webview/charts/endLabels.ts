/** Places for the labels at the ends of curves: beside their curves, yet never one over another. */

/**
 * @param wanted heights at which the labels would stand, px
 * @param gap least distance of two labels, px
 * @returns a height for each, in the same order, all within `top` and `bottom` as long as they fit there
 */
export function nudge(wanted: readonly number[], gap: number, top: number, bottom: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const room = Math.max(0, bottom - top);
  const step = order.length > 1 ? Math.min(gap, room / (order.length - 1)) : gap;
  const places = wanted.slice();
  let lowest = top;
  for (const index of order) {
    places[index] = Math.max(wanted[index]!, lowest);
    lowest = places[index] + step;
  }
  let highest = bottom;
  for (const index of order.toReversed()) {
    places[index] = Math.min(places[index]!, highest);
    highest = places[index] - step;
  }
  return places;
}
