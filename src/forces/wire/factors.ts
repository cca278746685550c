/**
 * By how much a coiled wire is stressed more than a straight one, at the inside of its bend. With the index C = D / d of mean coil to wire:
 *
 *     bent, inner side       Kᵢ = (4C² − C − 1) / (4C (C − 1))
 *     twisted                K_B = (4C + 2) / (4C − 3)            Bergsträsser; EN 13906 has the same as (C + 0.5) / (C − 0.75)
 *     twisted, in a hook     (K)_B = (4C − 1) / (4C − 4)
 *
 * Kᵢ: read in the file to Bhandari, Design of Machine Elements, example 10.21. The others: Shigley’s Mechanical Engineering Design, chapter
 * 10, from memory. A hook’s bend has the factor Kᵢ too, of its own radius.
 */

/** Of an index above 1. */
export function innerBendingFactor(index: number): number {
  return (4 * index * index - index - 1) / (4 * index * (index - 1));
}

export function coilTwistFactor(index: number): number {
  return (4 * index + 2) / (4 * index - 3);
}

export function hookTwistFactor(index: number): number {
  return (4 * index - 1) / (4 * index - 4);
}
