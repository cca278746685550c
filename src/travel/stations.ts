/** Places along the pedal by their number, so that what is known at each stands in an array. */

/** @returns the number of a place among `stations`, which rise; −1 for one that is not among them */
export function stationFinder(stations: readonly number[]): (travel: number) => number {
  let hint = 0;
  return (travel) => {
    if (stations[hint] === travel) return hint;
    // They are mostly asked for one after the other.
    if (stations[hint + 1] === travel) return ++hint;
    let low = 0;
    let high = stations.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (stations[middle]! < travel) low = middle + 1;
      else high = middle;
    }
    if (stations[low] !== travel) return -1;
    hint = low;
    return low;
  };
}
