/** A unit, a function or a column within a figure, a formula or a requirement. */
import { CONSTANTS, FUNCTIONS } from '../../definition/formula/functions.ts';
import { lex, type Token } from '../../definition/formula/lex.ts';
import { comparisonText } from '../../outputs/requirementText.ts';
import type { Answers } from '../../solve.ts';
import type { Cursor } from '../cursor.ts';
import { looseNames } from '../cursor/looseNames.ts';
import { formulaPlace } from '../completion/formulas.ts';
import type { HoverLines } from '../hover.ts';
import { code, message, plain } from '../markdown.ts';
import { meaningsAt } from '../places.ts';
import { unitMeaning } from '../unitMeaning.ts';
import { columnLines } from './columns.ts';

/** Undefined where the place takes no formula, and over a figure or a name of the file. */
export function formulaHover(answers: Answers, cursor: Cursor): HoverLines | undefined {
  const { tree, text, span, offset } = cursor;
  if (text.length > LONGEST_FORMULA || formulaPlace(cursor, meaningsAt(tree, cursor.path)) === undefined) return undefined;
  const at = offset - span.start;
  const token = lex(text, new Set(looseNames(tree, 'let'))).tokens.find(({ start, end }) => start <= at && at < end);
  const found = token && tokenLines(answers, cursor, token, at);
  return found && { span: { start: span.start + found.start, end: span.start + found.end }, lines: found.lines };
}

/** A longer text is no formula that is read. */
const LONGEST_FORMULA = 1_000;

interface TokenLines {
  readonly start: number;
  readonly end: number;
  readonly lines: readonly string[];
}

function tokenLines(answers: Answers, cursor: Cursor, token: Token, at: number): TokenLines | undefined {
  switch (token.type) {
    case 'figure': {
      const { unit } = token;
      if (unit === undefined || at < unit.start) return undefined;
      const meaning = unitMeaning(unit.text);
      return meaning === undefined ? undefined : { start: unit.start, end: unit.end, lines: [plain(meaning)] };
    }
    case 'column': {
      const start = token.end - token.column.length;
      if (at < start) return undefined;
      const lines = columnLines(answers, cursor.tree, token.owner, token.column);
      return lines.length === 0 ? undefined : { start, end: token.end, lines };
    }
    case 'name': {
      const about = FUNCTIONS.get(token.text);
      const constant = CONSTANTS.get(token.text);
      if (about !== undefined)
        return {
          start: token.start,
          end: token.end,
          lines: [`${code(token.text)}: ${message(about.summary)}`, ...comparisonLines(answers, cursor, token)],
        };
      return constant === undefined ? undefined : { start: token.start, end: token.end, lines: [`${code(token.text)} = ${constant}`] };
    }
    case 'sign':
      return undefined;
  }
}

/** How the comparison in which the word stands comes out. */
function comparisonLines({ requirements }: Answers, { path, span }: Cursor, { start }: { readonly start: number }): readonly string[] {
  if (path[0] !== 'require') return [];
  const at = span.start + start;
  return requirements
    .filter(({ requirement }) => requirement.name === path[1])
    .flatMap(({ comparisons }) => comparisons.filter((each) => each.span.start <= at && at < each.span.end))
    .map((comparison) => plain(comparisonText(comparison)))
    .filter((line) => line !== '');
}
