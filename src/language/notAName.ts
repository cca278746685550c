/** Why there is nothing to rename at a place: what stands there instead of a name of the file. */
import { CONSTANTS, FUNCTIONS } from '../definition/formula/functions.ts';
import { parseSource } from '../definition/source/parse.ts';
import type { SourceEntry } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import type { NameIndex } from './names.ts';
import { semanticTokens, tokenAt } from './tokens.ts';
import { walkSource } from './walkSource.ts';

/** A sentence without a full stop. */
export function notAName(index: NameIndex, offset: number): string {
  const key = keyAt(index, offset);
  if (key !== undefined) {
    const written = `\`${key.entry.key}\``;
    return key.known
      ? `${written} is a key of the format, not a name of this file`
      : `The format has no key ${written}, and nothing is named so`;
  }
  const twice = repeatedKeyAt(index, offset);
  if (twice !== undefined) return `${twice}, and this is the other: remove or rename one of the two by hand first`;
  const token = tokenAt(semanticTokens(index), offset);
  const word = token === undefined ? undefined : index.text.slice(token.span.start, token.span.end);
  if (token === undefined || word === undefined) return 'Here stands no name that the file declares';
  const written = `\`${word}\``;
  switch (token.type) {
    case 'number':
      return `${written} is a figure, not a name`;
    case 'type':
      return `${written} is a unit, not a name of this file`;
    case 'enumMember':
      return `${written} is a word of the format, not a name of this file`;
    case 'property':
      if (!token.modifiers.includes('readonly'))
        return `${written} is a key of the format: only what stands before it is a name of this file`;
      return `${written} is a column of the table: only what stands before its dot is a name of this file`;
    default:
      if (FUNCTIONS.has(word)) return `${written} is a function of formulas, not a name of this file`;
      return CONSTANTS.has(word)
        ? `${written} is a constant of formulas, not a name of this file`
        : `${written} is an operator, not a name`;
  }
}

/** What is told of a key that stands twice in its block, at the one that is not read. */
function repeatedKeyAt({ text }: NameIndex, offset: number): string | undefined {
  const covers = ({ start, end }: Span): boolean => start <= offset && offset <= end;
  return parseSource(text).problems.find(({ code, span }) => code === 'duplicate-key' && covers(span))?.message;
}

function keyAt(index: NameIndex, offset: number): { readonly entry: SourceEntry; readonly known: boolean } | undefined {
  let found: { readonly entry: SourceEntry; readonly known: boolean } | undefined;
  walkSource(index.root, {
    entry(entry, _path, forms) {
      if (entry.keySpan.start <= offset && offset <= entry.keySpan.end) found ??= { entry, known: forms.length > 0 };
    },
  });
  return found;
}
