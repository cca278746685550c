/** Work within a study that says nothing of how far it has come: after each of its steps the study says it for it. */
export function* saying<Said, End>(steps: Generator<undefined, End>, said: () => Said): Generator<Said, End> {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    yield said();
  }
}
