/**
 * Every place that refers to a name of the file: references of parts, places by name, and the words of formulas.
 */
import { lex, type Token } from '../../definition/formula/lex.ts';
import type { About } from '../../definition/schema/shape.ts';
import { child, textOf, type SourceEntry, type SourceNode, type SourceScalar } from '../../definition/source/tree.ts';
import type { Span } from '../../definition/span.ts';
import type { DeclaredName, NamePlace } from '../names.ts';
import { placesIn, type ScalarPlaces } from '../scalarPlaces.ts';
import { walkSource } from '../walkSource.ts';
import { ownerOf, partNamed, withoutQuotes, type DeclaredNames } from './declare.ts';
import { inColumn, inFit, inKept, keyRepeats, type Use } from './studyUses.ts';

/** Characters beyond which a text is no formula that could be read; taking it apart token by token could take long. */
export const LONGEST_TEXT = 1_000;

/** Uses of the declared names, in no certain order; the same place may be told twice where an alias repeats it. */
export function findUses(root: SourceNode | undefined, text: string, declared: DeclaredNames): readonly NamePlace[] {
  const uses: NamePlace[] = [];
  const formulas = new Set<SourceScalar>();
  const pedalLever = textOf(child(child(root, 'pedal'), 'lever'));
  const keys = new Set<number>();
  walkSource(root, {
    entry(entry, path) {
      const repeats = keyRepeats(path);
      if (repeats === undefined || keys.has(entry.keySpan.start)) return;
      keys.add(entry.keySpan.start);
      const found =
        repeats === 'let' ? use({ start: 0, end: entry.key.length }, declared.byKind.let.get(entry.key)) : inColumn(entry.key, declared);
      for (const { stretch, name } of found) uses.push(placeInKey(entry, text, stretch, name));
    },
    scalar(node, path, forms) {
      const isFormula = holdsFormula(path, forms);
      if (isFormula && formulas.has(node)) return;
      if (isFormula) formulas.add(node);
      const found = isFormula ? inFormula(node.text, declared) : inReference(node.text, path, forms, declared, pedalLever);
      if (found.length === 0) return;
      const places = placesIn(node, text);
      for (const { stretch, name } of found) uses.push(placeOf(node, places, stretch, name));
    },
  });
  return uses;
}

function placeInKey({ key, keySpan }: SourceEntry, text: string, stretch: Span, name: DeclaredName): NamePlace {
  const inner = withoutQuotes(keySpan, text);
  const exact = text.slice(inner.start, inner.end) === key;
  const span = exact ? { start: inner.start + stretch.start, end: inner.start + stretch.end } : keySpan;
  return { span, declared: name, isDeclaration: false, exact };
}

/** Whether a place holds a quantity or a formula. */
export function holdsFormula(path: readonly string[], forms: readonly About[]): boolean {
  if (forms.some((form) => form.kind === 'quantity' || form.kind === 'figure')) return true;
  return path.length === 2 && (path[0] === 'let' || path[0] === 'require');
}

function placeOf(node: SourceScalar, places: ScalarPlaces | undefined, stretch: Span, name: DeclaredName): NamePlace {
  const span = places?.(stretch) ?? node.span;
  const written = name.kind === 'requirement' ? { written: node.span } : {};
  return { span, declared: name, isDeclaration: false, exact: places !== undefined, ...written };
}

function inFormula(text: string, declared: DeclaredNames): readonly Use[] {
  const tokens = text.length > LONGEST_TEXT ? wordsOf(text) : lex(text, declared.lets).tokens;
  return tokens.flatMap((token): readonly Use[] => {
    if (token.type === 'column') {
      const stretch = { start: token.start, end: token.start + token.owner.length };
      return use(stretch, ownerOf(token, declared));
    }
    if (token.type !== 'name' || !declared.lets.has(token.text)) return [];
    return use({ start: token.start, end: token.end }, declared.byKind.let.get(token.text));
  });
}

/** Names and columns of a text that is too long to be a formula, so that they are still found and renamed. */
function wordsOf(text: string): readonly Token[] {
  return [...text.matchAll(/(?<![\w$.])([A-Za-z_]\w*)(?:\.([A-Za-z_]\w*))?/g)].map(
    ({ index: start, 0: written, 1: word = '', 2: column }) => {
      const end = start + written.length;
      return column === undefined ? { type: 'name', text: word, start, end } : { type: 'column', owner: word, column, start, end };
    },
  );
}

function inReference(
  text: string,
  path: readonly string[],
  forms: readonly About[],
  declared: DeclaredNames,
  pedalLever: string | undefined,
): readonly Use[] {
  if (path[0] === 'pedal' && path.length === 2 && path[1] === 'pad') return inPad(text, declared, pedalLever);
  if (path[0] === 'movements' && path.length === 4 && path[2] === 'moves') return inMoves(text, declared);
  const whole = { start: 0, end: text.length };
  if (forms.some(({ kind }) => kind === 'column')) return inColumn(text, declared);
  if (forms.some(({ kind }) => kind === 'kept')) return inKept(text, declared);
  if (forms.some(({ kind }) => kind === 'fit')) return inFit(text, declared);
  if (forms.some((form) => form.kind === 'part') && (text.includes('.') || !forms.some((form) => form.kind === 'place'))) {
    return inPart(text, declared);
  }
  if (forms.some((form) => form.kind === 'place' && form.named)) return use(whole, declared.byKind.point.get(text));
  const reference = forms.find((form) => form.kind === 'reference');
  return reference === undefined ? [] : use(whole, declared.byKind[reference.to].get(text));
}

/** `lever.part`; a lever alone while the rest is being typed. */
function inPart(text: string, declared: DeclaredNames): readonly Use[] {
  const dot = text.indexOf('.');
  const lever = dot < 0 ? text : text.slice(0, dot);
  const found = use({ start: 0, end: lever.length }, declared.byKind.lever.get(lever));
  if (dot < 0) return found;
  const part = text.slice(dot + 1);
  const parts = declared.parts.get(lever);
  return [...found, ...use({ start: dot + 1, end: text.length }, parts?.arms.get(part) ?? parts?.drums.get(part))];
}

/** An arm of the pedal's lever, with or without the lever's name before it. */
function inPad(text: string, declared: DeclaredNames, lever: string | undefined): readonly Use[] {
  if (lever === undefined) return [];
  if (text.startsWith(`${lever}.`)) return inPart(text, declared);
  return use({ start: 0, end: text.length }, declared.parts.get(lever)?.arms.get(text));
}

/** `lever`, `cable.leaves`, `cable.enters` or `spring.from`. */
function inMoves(text: string, declared: DeclaredNames): readonly Use[] {
  const dot = text.indexOf('.');
  if (dot < 0) return use({ start: 0, end: text.length }, declared.byKind.lever.get(text));
  const owner = text.slice(0, dot);
  const named = partNamed(declared, owner, (kind) => kind === 'cable' || kind === 'spring') ?? partNamed(declared, owner);
  return use({ start: 0, end: dot }, named);
}

function use(stretch: Span, name: DeclaredName | undefined): readonly Use[] {
  return name === undefined || stretch.start === stretch.end ? [] : [{ stretch, name }];
}
