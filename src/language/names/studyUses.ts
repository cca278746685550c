/** Names in the blocks `tune` and `measured`: columns, what is kept, dimensions to be found, and keys that repeat names. */
import { KEPT_WORDS } from '../../definition/schema/tune.ts';
import { LIMIT_KEYS } from '../../definition/schema/surroundings.ts';
import type { Span } from '../../definition/span.ts';
import type { DeclaredName } from '../names.ts';
import { ownerOf, partNamed, type DeclaredNames } from './declare.ts';

/** A name that stands in a text. */
export interface Use {
  /** In the text, without its quotes. */
  readonly stretch: Span;
  readonly name: DeclaredName;
}

/** What the keys of a block repeat; undefined where they are keys or names of their own. @param path ends with the key */
export function keyRepeats(path: readonly string[]): 'let' | 'column' | undefined {
  if (path.length === 3 && path[0] === 'tune' && path[1] === 'free') return 'let';
  return path.length === 5 && path[0] === 'measured' && path[1] === 'runs' && path[3] === 'noise' ? 'column' : undefined;
}

/** The part before the dot of `owner.column`; also while the rest is being typed. */
export function inColumn(text: string, declared: DeclaredNames): readonly Use[] {
  const dot = text.indexOf('.');
  const owner = dot < 0 ? text : text.slice(0, dot);
  return use(0, owner.length, ownerOf({ owner, column: dot < 0 ? '' : text.slice(dot + 1) }, declared));
}

/** The name of a requirement; a limit or a word of the format is none. */
export function inKept(text: string, declared: DeclaredNames): readonly Use[] {
  return isKeptWord(text) ? [] : use(0, text.length, declared.byKind.requirement.get(text));
}

/** Whether a word of `keep` is one of the format's. */
export function isKeptWord(text: string): boolean {
  return Object.hasOwn(KEPT_WORDS, text) || (LIMIT_KEYS as readonly string[]).includes(text);
}

/** A name of `let`, or `part.key`: the part, and the arm or drum of a lever. */
export function inFit(text: string, declared: DeclaredNames): readonly Use[] {
  const [owner = '', second, ...rest] = text.split('.');
  if (second === undefined) return use(0, owner.length, declared.byKind.let.get(owner) ?? partNamed(declared, owner));
  if (owner === 'pedal' && DRIVE_KEYS.has(second) && rest.length === 0) return use(0, owner.length, declared.drive);
  const named = partNamed(declared, owner, (kind) => kind !== 'let') ?? declared.byKind.point.get(owner);
  const start = owner.length + 1;
  const parts = named?.kind === 'lever' && rest.length > 0 ? declared.parts.get(owner) : undefined;
  return [...use(0, owner.length, named), ...use(start, start + second.length, parts?.arms.get(second) ?? parts?.drums.get(second))];
}

/** Figures of the block `pedal`. */
const DRIVE_KEYS: ReadonlySet<string> = new Set(['travel', 'pull', 'lever_ratio']);

function use(start: number, end: number, name: DeclaredName | undefined): readonly Use[] {
  return name === undefined || start === end ? [] : [{ stretch: { start, end }, name }];
}
