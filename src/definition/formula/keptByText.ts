/**
 * What was made of a text is kept: from one version of a file to the next nearly all its figures and formulas stay as they are.
 *
 * It hangs on the letters and on which of its words are names of the file. Which words were asked for is kept beside it, and where all of
 * them are what they were, so is the answer: nothing but the time that reading takes tells of it.
 */
import type { Vocabulary } from './scope.ts';

/** Of a text and the names of its file; the answer is nobody's to change. */
export type TextReader<Answer> = (text: string, names: Vocabulary) => Answer;

/** The same, with what it answered last of each text. @param read gives the same for the same text and names, wherever the text stands */
export function keptByText<Answer>(read: TextReader<Answer>): TextReader<Answer> {
  const kept = new Map<string, Kept<Answer>>();
  return (text, names) => {
    if (text.length > LONGEST_KEPT) return read(text, names);
    const known = kept.get(text);
    if (known !== undefined && isAsBefore(known.asked, names)) return known.answer;
    // A slice of the whole file would hold all of it.
    const own = ` ${text}`.slice(1);
    const asked = new Map<string, boolean>();
    const has = (word: string): boolean => {
      const isName = names.has(word);
      asked.set(word, isName);
      return isName;
    };
    const answer = read(own, { has });
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(own, { asked, answer });
    return answer;
  };
}

interface Kept<Answer> {
  /** By word: whether it was a name of the file. */
  readonly asked: ReadonlyMap<string, boolean>;
  readonly answer: Answer;
}

function isAsBefore(asked: ReadonlyMap<string, boolean>, names: Vocabulary): boolean {
  for (const [word, isName] of asked) if (names.has(word) !== isName) return false;
  return true;
}

/** Texts of each reader; twice those of a large file. */
const MOST_KEPT = 1000;
/** Characters; what is longer is rare. */
const LONGEST_KEPT = 200;
