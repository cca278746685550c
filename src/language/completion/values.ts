/** Values that may be written at a place, by its shape. */
import type { About } from '../../definition/schema/shape.ts';
import type { Described } from '../../definition/schema/walk.ts';
import { partFigureText } from '../../outputs/factText.ts';
import type { Answers } from '../../solve.ts';
import type { CompletionItem, CompletionKind } from '../completion.ts';
import type { Cursor } from '../cursor.ts';
import { columnWords, fitWords, keptWords } from './studyWords.ts';
import { looseNames, looseParts, loosePoints, pedalLever, type LoosePart } from '../cursor/looseNames.ts';
import { entriesAt, scalarAt } from '../cursor/looseTree.ts';
import { message } from '../markdown.ts';
import { formsOf, meaningsAt } from '../places.ts';
import { valueSnippet } from '../snippets.ts';
import { formulaItems } from './formulas.ts';
import { rank } from './rank.ts';

export function valueItems(cursor: Cursor, answers: Answers | undefined): readonly CompletionItem[] {
  const { tree, path } = cursor;
  const meanings = meaningsAt(tree, path);
  if (cursor.style === 'block') return formulaItems(belowSign(cursor), meanings, answers);
  const words = [
    ...wordsByPath(cursor),
    ...meanings.flatMap(({ shape }) => formsOf(shape).flatMap((form) => wordsOf(form, cursor, answers))),
  ];
  const items = new Map<string, CompletionItem>();
  for (const [index, word] of words.entries()) if (!items.has(word.label)) items.set(word.label, wordItem(cursor, word, index));
  return [...items.values(), ...exampleItems(cursor, meanings), ...formulaItems(cursor, meanings, answers)];
}

/** A text over several lines without the line of its sign, `>-` or `|`. */
function belowSign(cursor: Cursor): Cursor {
  const sign = /^.*(?:\r\n|\r|\n|$)/.exec(cursor.text)?.[0].length ?? 0;
  return { ...cursor, text: cursor.text.slice(sign), prefix: cursor.prefix.slice(sign) };
}

export interface Word {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: string;
}

function wordItem({ span, touching }: Cursor, { label, kind, detail, documentation }: Word, index: number): CompletionItem {
  return {
    label,
    kind,
    ...(detail !== undefined && { detail }),
    ...(documentation !== undefined && { documentation }),
    insertText: `${touching ? ' ' : ''}${label}`,
    snippet: false,
    replace: span,
    sortText: rank(0, index),
    asksAgain: false,
  };
}

function wordsOf(form: About, cursor: Cursor, answers: Answers | undefined): readonly Word[] {
  const { tree } = cursor;
  switch (form.kind) {
    case 'choice':
      return Object.entries(form.choices).map(([label, means]) => ({ label, kind: 'word', detail: means, documentation: message(means) }));
    case 'flag':
      return ['true', 'false'].map((label) => ({ label, kind: 'word' }));
    case 'constant':
      return [{ label: String(form.value), kind: 'word' }];
    case 'reference':
      return looseNames(tree, form.to).map((label) => ({ label, kind: 'part-name', detail: figureOf(answers, label) ?? form.to }));
    case 'part':
      return otherLeversFirst(cursor, looseParts(tree, form.parts)).map(({ lever, part, kind }) => ({
        label: `${lever}.${part}`,
        kind: 'pin',
        detail: kind,
      }));
    case 'column':
      return columnWords(cursor, form.use, answers);
    case 'kept':
      return keptWords(cursor);
    case 'fit':
      return fitWords(cursor, answers);
    case 'place':
      return form.named ? loosePoints(tree).map((label) => ({ label, kind: 'point', detail: 'point' })) : [];
    default:
      return [];
  }
}

/** The other end of a part is on another lever. */
function otherLeversFirst({ tree, path }: Cursor, parts: readonly LoosePart[]): readonly LoosePart[] {
  const block = path.slice(0, -1);
  const others = entriesAt(tree, block).flatMap(({ key }) => (key === path.at(-1) ? [] : (scalarAt(tree, [...block, key]) ?? [])));
  const taken = new Set(others.filter((text) => text.includes('.')).map((text) => text.slice(0, text.indexOf('.'))));
  return [...parts.filter(({ lever }) => !taken.has(lever)), ...parts.filter(({ lever }) => taken.has(lever))];
}

function figureOf(answers: Answers | undefined, name: string): string | undefined {
  const [first] = answers?.parts.find((part) => part.name === name && part.kind !== 'pedal')?.figures ?? [];
  return first && partFigureText(first);
}

/** The two places whose words the format checks only against the rest of the file. */
function wordsByPath({ tree, path }: Cursor): readonly Word[] {
  if (path[0] === 'pedal' && path[1] === 'pad' && path.length === 2) {
    const lever = pedalLever(tree);
    return lever === undefined
      ? []
      : looseParts(tree, ['arm'], lever).map(({ part }) => ({ label: part, kind: 'pin', detail: `arm of ${lever}` }));
  }
  if (path[0] === 'movements' && path[2] === 'moves' && path.length === 4) {
    return [
      ...looseNames(tree, 'lever').map((label): Word => ({ label, kind: 'part-name', detail: 'lever' })),
      ...looseNames(tree, 'cable').flatMap((name) =>
        ['leaves', 'enters'].map((end): Word => ({ label: `${name}.${end}`, kind: 'pin', detail: 'housing end' })),
      ),
      ...looseNames(tree, 'spring')
        .filter((name) => scalarAt(tree, ['springs', name, 'lever']) === undefined)
        .map((name): Word => ({ label: `${name}.from`, kind: 'pin', detail: 'spring anchor' })),
    ];
  }
  return [];
}

/** How the value may be written, where nothing is yet. */
function exampleItems(cursor: Cursor, meanings: readonly Described[]): readonly CompletionItem[] {
  const { tree, text, style, span, touching, flow } = cursor;
  if (text !== '' || style !== 'plain' || cursor.role !== 'value') return [];
  return meanings.flatMap(({ key }): readonly CompletionItem[] => {
    if (key?.example === undefined || HAS_WORDS.has(key.shape.kind)) return [];
    return [
      {
        label: key.example,
        kind: 'example',
        detail: 'as it may be written',
        insertText: `${touching ? ' ' : ''}${valueSnippet(tree, key, flow)}`,
        snippet: true,
        replace: span,
        sortText: rank(8, 0),
        asksAgain: false,
      },
    ];
  });
}

/** Shapes whose words are all listed. */
const HAS_WORDS: ReadonlySet<About['kind']> = new Set(['choice', 'flag', 'constant', 'reference', 'part', 'column', 'kept', 'fit']);
