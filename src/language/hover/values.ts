/** A figure: its value in the unit of its place and as written, its tolerance, its formula with the values put in, what follows from it. */
import type { Definition, Tolerance, Value } from '../../definition/definition.ts';
import { lex } from '../../definition/formula/lex.ts';
import { figureText } from '../../outputs/figure.ts';
import type { Answers } from '../../solve.ts';
import type { Cursor } from '../cursor.ts';
import { figureOfValue, kindText, valueText, writtenText } from '../figures.ts';
import type { HoverLines } from '../hover.ts';
import { code, message, plain } from '../markdown.ts';
import { meaningsAt } from '../places.ts';
import { letOf, usersOf, valueAt } from '../values.ts';

export function valueHover(answers: Answers, cursor: Cursor): HoverLines | undefined {
  const lines = figureLines(answers, cursor.path.join('.'));
  if (lines.length === 0) return undefined;
  const docs = meaningsAt(cursor.tree, cursor.path).flatMap(({ key }) => (key === undefined ? [] : [message(key.doc)]));
  return { span: cursor.span, lines: [...lines, ...new Set(docs)] };
}

/** None where no figure was read at the path. */
export function figureLines({ definition }: Answers, path: string): readonly string[] {
  const value = definition && valueAt(definition, path);
  if (definition === undefined || value === undefined) return [];
  const entry = letOf(definition, value);
  const kind = entry?.kind;
  const written = writtenText(value);
  const figure = `**${plain(figureOfValue(value, kind))}**`;
  return [
    [figure, ...(written === undefined ? [] : [`written ${plain(written)}`])].join(', '),
    ...(value.tolerance === undefined ? [] : [toleranceLine(value, value.tolerance, kind)]),
    ...(value.formula === undefined ? [] : [`${code(value.formula.text)} = ${code(putIn(definition, value.formula.text))}`]),
    ...(entry === undefined ? [] : usersLine(definition, usersOf(definition, entry))),
  ];
}

function toleranceLine(value: Value, { plus, minus }: Tolerance, kind: Parameters<typeof figureOfValue>[1]): string {
  const text = (size: number): string =>
    kind === undefined ? figureText({ value: size, dimension: value.dimension }) : kindText(size, kind);
  const size = plus === minus ? `±${text(plus)}` : `+${text(plus)} −${text(minus)}`;
  return plain(`Tolerance ${size}: from ${text(value.nominal - minus)} to ${text(value.nominal + plus)}`);
}

/** The formula with the figures of its `let` values in their places. */
export function putIn({ lets }: Definition, formula: string): string {
  const known = new Map(lets.map((each) => [each.name, each]));
  let text = '';
  let at = 0;
  for (const token of lex(formula, known).tokens) {
    const found = token.type === 'name' ? known.get(token.text) : undefined;
    if (found === undefined) continue;
    const figure = valueText(found);
    text += formula.slice(at, token.start) + (figure.startsWith('-') ? `(${figure})` : figure);
    at = token.end;
  }
  return text + formula.slice(at);
}

function usersLine(definition: Definition, users: readonly Value[]): readonly string[] {
  if (users.length === 0) return [];
  const shown = users
    .slice(0, MOST_USERS)
    .map((user) => `- ${code(user.path)} = ${plain(figureOfValue(user, letOf(definition, user)?.kind))}`);
  const more = users.length > MOST_USERS ? [`- and ${users.length - MOST_USERS} more`] : [];
  return [['From it follow:', '', ...shown, ...more].join('\n')];
}

/** More are counted instead of told. */
const MOST_USERS = 6;
