/**
 * Where a text is cut: at both its ends, beside every character that is no letter or figure, and behind the first of each word. Wherever
 * else a word is cut it is half a word too.
 */
export function cutPlaces(text: string): readonly number[] {
  const isInWord = (at: number): boolean => /^[A-Za-z0-9]$/.test(text.charAt(at));
  return Array.from({ length: text.length + 1 }, (_, at) => at).filter((at) => !(isInWord(at - 2) && isInWord(at - 1) && isInWord(at)));
}
