/** What a search that goes in steps returns at its end. */
export function finished<Step, End>(steps: Generator<Step, End>): End {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}
