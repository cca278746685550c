/** A study that goes in steps, gone through to its end at once. */
export function finished<Step, End>(steps: Generator<Step, End>): End {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}
