/** Texts with `$0` where the cursor stands. */

/** The text without its `$0`, and where that stood. */
export function atCaret(marked: string): { readonly text: string; readonly offset: number } {
  const offset = marked.indexOf('$0');
  if (offset < 0) throw new Error(`There is no $0 in\n${marked}`);
  return { text: marked.slice(0, offset) + marked.slice(offset + 2), offset };
}
