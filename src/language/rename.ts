/**
 * Rename: a name and every place that refers to it, or why it cannot be renamed.
 *
 * Nothing is renamed unless the text says the same afterwards: the new text is read again, and where any name would refer
 * to something else, or a mistake would come in, the rename is refused with that reason.
 */
import { NAME_PATTERN, reservedAs } from '../definition/names.ts';
import type { Replacement } from '../definition/problem.ts';
import { readDefinition } from '../definition/read.ts';
import { KIND_WORDS } from '../definition/schema/declared.ts';
import type { Span } from '../definition/span.ts';
import { indexNames, nameAt, placesOf, type DeclaredName, type NameIndex, type NameKind, type NamePlace } from './names.ts';
import { isPartKind } from './names/declare.ts';
import { notAName } from './notAName.ts';

export type RenamePreparation =
  /** `span` is the name under the cursor, `placeholder` its text. */
  { readonly kind: 'ready'; readonly span: Span; readonly placeholder: string } | Refusal;

/** The text edits of a rename, in the order of the text, none overlapping. */
export type RenameAnswer = { readonly kind: 'edits'; readonly edits: readonly Replacement[] } | Refusal;

/** Why nothing is renamed; a sentence without a full stop. */
export interface Refusal {
  readonly kind: 'refused';
  readonly reason: string;
}

/** Whether something can be renamed at an offset. */
export function prepareRename(index: NameIndex, offset: number): RenamePreparation {
  const place = nameAt(index, offset);
  if (place === undefined) return refuse(notAName(index, offset));
  const reason = cannotBeRenamed(index, place.declared);
  return reason === undefined ? { kind: 'ready', span: place.span, placeholder: place.declared.name } : refuse(reason);
}

/** The edits that give the name at an offset another name, everywhere. */
export function renameAt(index: NameIndex, offset: number, newName: string): RenameAnswer {
  const place = nameAt(index, offset);
  if (place === undefined) return refuse(notAName(index, offset));
  const { declared } = place;
  if (newName === declared.name) return { kind: 'edits', edits: [] };
  const reason = cannotBeRenamed(index, declared) ?? cannotBeNamed(index, declared, newName);
  if (reason !== undefined) return refuse(reason);
  const edits = editsOf(index, declared, newName);
  const changed = whatWouldChange(index, declared, newName, edits);
  return changed === undefined ? { kind: 'edits', edits } : refuse(changed);
}

function refuse(reason: string): Refusal {
  return { kind: 'refused', reason };
}

function cannotBeRenamed(index: NameIndex, declared: DeclaredName): string | undefined {
  if (declared.kind === 'drive') {
    return '`pedal` is the drive here, which is always called so; a lever of that name is renamed where it is declared';
  }
  const unclear = placesOf(index, declared).find(({ exact }) => !exact);
  if (unclear === undefined) return undefined;
  return `\`${declared.name}\` is also used in a text over several lines with escapes, which cannot be edited: write that on one line first`;
}

function cannotBeNamed(index: NameIndex, declared: DeclaredName, newName: string): string | undefined {
  const { kind } = declared;
  const taken = (other: DeclaredName): boolean => other !== declared && other.name === newName && sharesNames(declared, other);
  if (kind === 'requirement') {
    if (newName.trim() !== newName || newName === '' || /[\p{Cc}\u2028\u2029]/u.test(newName))
      return 'A requirement is named on one line, without blanks around it';
    if (newName === '<<') return '`<<` is a merge key to YAML and names no requirement';
    return index.names.some(taken) ? `There is a requirement \`${newName}\` already` : undefined;
  }
  if (!NAME_PATTERN.test(newName)) return `\`${newName}\` is not a name: use small letters, figures and \`_\`, beginning with a letter`;
  const reserved = reservedAs(newName);
  if (reserved !== undefined && (isPartKind(kind) || reserved === 'a value of YAML')) {
    return `\`${newName}\` is ${reserved}${isPartKind(kind) ? ' in formulas' : ''} and cannot be a name`;
  }
  if (newName === 'pedal' && isPartKind(kind) && kind !== 'lever')
    return 'Only a lever may be called `pedal`: in requirements the word speaks of the drive';
  const other = index.names.find(taken);
  return other === undefined ? undefined : `\`${nameInFull(other)}\` is the name of ${kindWords(other.kind)} already`;
}

/** Whether two names may not be the same. */
function sharesNames(a: DeclaredName, b: DeclaredName): boolean {
  if (isPartKind(a.kind)) return isPartKind(b.kind);
  const [ofLever, ofOther] = [a.lever, b.lever];
  if (ofLever !== undefined || ofOther !== undefined) return ofLever === ofOther;
  return a.kind === b.kind;
}

/** With its article, for messages. */
function kindWords(kind: NameKind): string {
  if (isPartKind(kind)) return KIND_WORDS[kind];
  return kind === 'arm' || kind === 'obstacle' ? `an ${kind}` : `a ${kind}`;
}

function nameInFull({ name, lever }: DeclaredName): string {
  return lever === undefined ? name : `${lever}.${name}`;
}

function editsOf(index: NameIndex, declared: DeclaredName, newName: string): readonly Replacement[] {
  return placesOf(index, declared).map(({ span, isDeclaration, written }): Replacement => {
    // Only a requirement may be named so that quotes are needed.
    if (declared.kind !== 'requirement') return { span, text: newName };
    const whole = isDeclaration ? declared.keySpan : (written ?? span);
    return { span: whole, text: quotedText(index.text, whole, newName) };
  });
}

/** The name with the quotes that it needs, or that stood round the old one. */
function quotedText(text: string, { start }: Span, newName: string): string {
  const first = text[start];
  const quote = first === '"' || first === "'" ? first : undefined;
  if (quote === "'") return `'${newName.replaceAll("'", "''")}'`;
  const plain =
    /^[\p{L}\p{N}](?:[\p{L}\p{N}_ ().%/+*<>=°±-]*[\p{L}\p{N}_().%/+*<>=°±-])?$/u.test(newName) && !/^(?:null|Null|NULL)$/.test(newName);
  if (quote === undefined && plain) return newName;
  return `"${newName.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}

/** What the text would no longer say, or say wrongly, after the edits; undefined where it says the same. */
function whatWouldChange(index: NameIndex, declared: DeclaredName, newName: string, edits: readonly Replacement[]): string | undefined {
  const text = edited(index.text, edits);
  const moved = mover(edits);
  const after = indexNames(text);
  const stray = strayPlace(index, after, moved);
  if (stray?.gained === true && stray.isDeclaration) {
    return `\`${declared.name}\` is declared twice, and the other one would come to count: remove or rename one of the two by hand first`;
  }
  if (stray !== undefined) {
    const { name } = stray.declared;
    return `A place that now ${stray.gained ? 'refers to nothing' : `speaks of \`${name}\``} would ${stray.gained ? `speak of \`${name}\`` : 'no longer do so'} with the name \`${newName}\``;
  }
  // A name that was wrong itself has hidden what else is wrong with the places that use it.
  if (cannotBeNamed(index, declared, declared.name) !== undefined) return undefined;
  const before = new Set(readDefinition(index.text).problems.map(({ code, span }) => `${code} ${moved(span.start)}`));
  const added = readDefinition(text).problems.find(({ code, span }) => !before.has(`${code} ${span.start}`));
  return added === undefined ? undefined : `With the name \`${newName}\` the file would have a mistake: ${added.message}`;
}

/** The first place that refers to something else after the edits. */
function strayPlace(
  before: NameIndex,
  after: NameIndex,
  moved: (offset: number) => number,
): { readonly declared: DeclaredName; readonly gained: boolean; readonly isDeclaration: boolean } | undefined {
  const isSame = (old: NamePlace, now: NamePlace): boolean =>
    moved(old.declared.keySpan.start) === now.declared.keySpan.start && old.isDeclaration === now.isDeclaration;
  const nowAt = new Map(after.places.map((place) => [startOf(place), place]));
  for (const place of before.places) {
    const start = moved(startOf(place));
    const now = nowAt.get(start);
    if (now === undefined || !isSame(place, now)) return { declared: place.declared, gained: false, isDeclaration: place.isDeclaration };
    nowAt.delete(start);
  }
  const [extra] = nowAt.values();
  return extra === undefined ? undefined : { declared: extra.declared, gained: true, isDeclaration: extra.isDeclaration };
}

/** What loses or gains its quotes still begins at the same place. */
function startOf({ span, isDeclaration, declared, written = span }: NamePlace): number {
  return isDeclaration ? declared.keySpan.start : written.start;
}

/** The text after the edits, which stand in order: made in one go, since a name may stand thousands of times. */
function edited(text: string, edits: readonly Replacement[]): string {
  let from = 0;
  const pieces: string[] = [];
  for (const { span, text: written } of edits) {
    pieces.push(text.slice(from, span.start), written);
    from = span.end;
  }
  return `${pieces.join('')}${text.slice(from)}`;
}

/** From an offset before the edits, which stand in order, to the same place after them. */
function mover(edits: readonly Replacement[]): (offset: number) => number {
  const ends: number[] = [];
  const shifts: number[] = [0];
  for (const { span, text } of edits) {
    ends.push(span.end);
    shifts.push((shifts.at(-1) ?? 0) + text.length - (span.end - span.start));
  }
  return (offset) => {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ends[middle] ?? Infinity) <= offset) low = middle + 1;
      else high = middle;
    }
    return offset + (shifts[low] ?? 0);
  };
}
