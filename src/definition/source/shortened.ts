/** What is quoted of the file in a message. */

/** On one line, cut where it is long. */
export function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 3)}…` : line;
}

/** A longer quotation hides the sentence around it. */
const LONGEST = 60;
