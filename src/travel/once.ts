/** What several ask for is worked out once, and kept as long as what it was worked out of. */

import { keptOn } from '../numeric/keptOn.ts';

/** Worked out when first asked for, if ever; what it was worked out of is let go then. */
export function later<Answer>(make: () => Answer): () => Answer {
  let known: { readonly answer: Answer } | undefined;
  let open: (() => Answer) | undefined = make;
  return () => {
    known ??= { answer: open!() };
    open = undefined;
    return known.answer;
  };
}

/** Remembers what `make` answers for each whole, such as a solved travel. */
export function once<Whole extends object, Answer extends object>(make: (whole: Whole) => Answer): (whole: Whole) => Answer {
  const known = keptOn<Whole, Answer>();
  return (whole) => {
    const before = known.get(whole);
    if (before !== undefined) return before;
    const answer = make(whole);
    known.set(whole, answer);
    return answer;
  };
}

/** The same for each part of a whole, such as a spring of it or the number of a lever. */
export function oncePer<Whole extends object, Part, Answer extends object>(
  make: (whole: Whole, part: Part) => Answer,
): (whole: Whole, part: Part) => Answer {
  const partsOf = once((_: Whole) => new Map<Part, Answer>());
  return (whole, part) => {
    const known = partsOf(whole);
    const answer = known.get(part) ?? make(whole, part);
    known.set(part, answer);
    return answer;
  };
}
