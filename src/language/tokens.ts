/**
 * Semantic tokens: what the grammar cannot know of the text, such as which word of a formula is a name of the file.
 *
 * Keys of the format, quotes and comments are left to the grammar.
 */
import { lex, type Token } from '../definition/formula/lex.ts';
import { CONSTANTS, FUNCTIONS } from '../definition/formula/functions.ts';
import { toleranceForm } from '../definition/quantity/tolerance.ts';
import type { SourceScalar } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import type { NameIndex, NameKind, NamePlace } from './names.ts';
import { withoutQuotes } from './names/declare.ts';
import { LONGEST_TEXT, holdsFormula } from './names/uses.ts';
import { isKeptWord, keyRepeats } from './names/studyUses.ts';
import type { About } from '../definition/schema/shape.ts';
import { placesIn } from './scalarPlaces.ts';
import { walkSource } from './walkSource.ts';

/** Standard token types of editors, in the order of the legend. */
export const TOKEN_TYPES = ['number', 'type', 'operator', 'function', 'variable', 'class', 'property', 'enumMember', 'label'] as const;

/** Standard modifiers but for `tolerance`, which marks every token of a `± 0.1 mm`. */
export const TOKEN_MODIFIERS = ['declaration', 'readonly', 'defaultLibrary', 'tolerance'] as const;

export type TokenType = (typeof TOKEN_TYPES)[number];
export type TokenModifier = (typeof TOKEN_MODIFIERS)[number];

/** A word of one line. */
export interface SemanticToken {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

/** In the order of the text, none overlapping, none over a line's end. */
export function semanticTokens(index: NameIndex): readonly SemanticToken[] {
  const { text, root, names } = index;
  const lets = new Set(names.filter(({ kind }) => kind === 'let').map(({ name }) => name));
  const tokens: SemanticToken[] = index.places.filter(({ exact }) => exact).map(tokenOfName);
  const seen = new Set<SourceScalar>();
  walkSource(root, {
    entry({ key, keySpan }, path) {
      const dot = key.indexOf('.');
      if (keyRepeats(path) !== 'column' || dot < 0) return;
      const inner = withoutQuotes(keySpan, text);
      if (text.slice(inner.start, inner.end) !== key) return;
      tokens.push({ span: { start: inner.start + dot + 1, end: inner.end }, type: 'property', modifiers: ['readonly'] });
    },
    scalar(node, path, forms) {
      if (node.text.length > LONGEST_TEXT || seen.has(node)) return;
      seen.add(node);
      const words = holdsFormula(path, forms)
        ? tokensOfFormula(node.text, lets)
        : forms.some(({ kind }) => STUDY_FORMS.has(kind))
          ? tokensOfStudy(node.text, forms)
          : forms.some(({ kind }) => kind === 'choice' || kind === 'flag')
            ? [{ span: { start: 0, end: node.text.length }, type: 'enumMember' as const, modifiers: [] }]
            : forms.some(({ kind }) => kind === 'constant')
              ? [{ span: { start: 0, end: node.text.length }, type: 'number' as const, modifiers: [] }]
              : [];
      const places = words.length === 0 ? undefined : placesIn(node, text);
      if (places !== undefined) for (const word of words) tokens.push({ ...word, span: places(word.span) });
    },
  });
  return inOrder(tokens, text);
}

/** The token at an offset, also where the cursor stands right behind it. */
export function tokenAt(tokens: readonly SemanticToken[], offset: number): SemanticToken | undefined {
  return tokens.findLast(({ span }) => span.start <= offset && offset <= span.end);
}

const NAME_TYPES: Readonly<Record<NameKind, TokenType>> = {
  let: 'variable',
  point: 'variable',
  lever: 'class',
  arm: 'property',
  drum: 'property',
  cable: 'class',
  rod: 'class',
  slot: 'class',
  coupling: 'class',
  plates: 'class',
  sensor: 'class',
  spring: 'class',
  obstacle: 'class',
  movement: 'class',
  requirement: 'label',
  drive: 'class',
};

function tokenOfName({ span, declared, isDeclaration }: NamePlace): SemanticToken {
  const modifiers: TokenModifier[] = isDeclaration ? ['declaration'] : [];
  if (declared.kind === 'point') modifiers.push('readonly');
  // The word of the drive is the format's, not the person's.
  if (declared.kind === 'drive') return { span, type: NAME_TYPES.drive, modifiers: ['defaultLibrary'] };
  return { span, type: NAME_TYPES[declared.kind], modifiers };
}

const STUDY_FORMS: ReadonlySet<About['kind']> = new Set(['column', 'kept', 'fit']);

/** What stands beside the names in a column, in a dimension to be found, or in their place in `keep`. */
function tokensOfStudy(text: string, forms: readonly About[]): readonly SemanticToken[] {
  if (forms.some(({ kind }) => kind === 'kept')) {
    return isKeptWord(text) ? [{ span: { start: 0, end: text.length }, type: 'enumMember', modifiers: [] }] : [];
  }
  const modifiers: readonly TokenModifier[] = forms.some(({ kind }) => kind === 'column') ? ['readonly'] : [];
  return [...text.matchAll(/(?<=\.)\w+/g)].map(({ index, 0: word }) => ({
    span: { start: index, end: index + word.length },
    type: 'property',
    modifiers,
  }));
}

function tokensOfFormula(text: string, lets: ReadonlySet<string>): readonly SemanticToken[] {
  const { tokens } = lex(text, lets);
  const first = tokens[0]?.type === 'sign' ? 1 : 0;
  const rest = tokens.slice(first + 1);
  const tolerance = tokens[first]?.type === 'figure' && toleranceForm(rest) !== undefined ? new Set(rest) : NONE;
  return tokens.flatMap((token, i) => {
    const modifiers: readonly TokenModifier[] = tolerance.has(token) ? ['tolerance'] : [];
    return tokensOf(token, tokens[i + 1]).map((word) => ({ ...word, modifiers: [...word.modifiers, ...modifiers] }));
  });
}

const NONE: ReadonlySet<Token> = new Set();

function tokensOf(token: Token, next: Token | undefined): readonly SemanticToken[] {
  const { start, end } = token;
  switch (token.type) {
    case 'figure': {
      const number: SemanticToken = { span: token.digits, type: 'number', modifiers: [] };
      const { unit } = token;
      if (unit === undefined || unit.unknown.length > 0) return [number];
      return [number, { span: { start: unit.start, end: unit.end }, type: 'type', modifiers: [] }];
    }
    case 'name':
      // A name of the file comes from the index.
      if (CONSTANTS.has(token.text)) return [{ span: { start, end }, type: 'variable', modifiers: ['readonly', 'defaultLibrary'] }];
      return FUNCTIONS.has(token.text) && next?.type === 'sign' && next.text === '('
        ? [{ span: { start, end }, type: 'function', modifiers: ['defaultLibrary'] }]
        : [];
    case 'column': {
      const column = start + token.owner.length + 1;
      return [{ span: { start: column, end: column + token.column.length }, type: 'property', modifiers: ['readonly'] }];
    }
    case 'sign':
      if (token.text === '(' || token.text === ')' || token.text === ',' || token.text === '?') return [];
      return [{ span: { start, end }, type: 'operator', modifiers: [] }];
  }
}

function inOrder(tokens: readonly SemanticToken[], text: string): readonly SemanticToken[] {
  const sorted = tokens
    .filter(({ span }) => span.end > span.start && !/[\r\n]/.test(text.slice(span.start, span.end)))
    .sort((a, b) => a.span.start - b.span.start);
  const kept: SemanticToken[] = [];
  for (const token of sorted) if (token.span.start >= (kept.at(-1)?.span.end ?? 0)) kept.push(token);
  return kept;
}
