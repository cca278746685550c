/**
 * What is known of an object, kept on the object itself: it is seen by nobody else, copied with nothing, and gone with the object.
 *
 * A WeakMap means the same, but is no place for what hangs on a single text. V8's quick collections, of young objects alone, take all that a
 * WeakMap holds for alive, whether or not its keys are: what was known of every text since the last collection of all memory would be carried
 * along (from memory; `--trace-gc-nvp` shows it by what survives).
 */
export interface KeptOn<Whole extends object, Known> {
  get(whole: Whole): Known | undefined;
  set(whole: Whole, known: Known): void;
}

export function keptOn<Whole extends object, Known>(): KeptOn<Whole, Known> {
  const key: unique symbol = Symbol();
  return {
    get: (whole) => (whole as { [key]?: Known })[key],
    set(whole, known) {
      if (Object.hasOwn(whole, key)) (whole as { [key]?: Known })[key] = known;
      // Not enumerable: a copy by `...` knows nothing.
      else Object.defineProperty(whole, key, { value: known, writable: true });
    },
  };
}
