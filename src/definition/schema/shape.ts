/**
 * What the format is made of: shapes.
 *
 * A shape reads one kind of value from the source tree and describes itself as plain data. The reader, the JSON
 * Schema, the reference page, completion and hover all come from the same shapes, so none can lag behind another.
 */
import type { Place, Tolerance } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import type { NamedPlaces } from '../movedParts.ts';
import type { Problem, Replacement } from '../problem.ts';
import type { ProblemCode } from '../codes.ts';
import type { Span } from '../span.ts';
import type { Value } from '../definition.ts';
import { shortened } from '../source/shortened.ts';
import type { SourceNode, SourceScalar } from '../source/tree.ts';
import type { Declared, PartKind } from './declared.ts';
import type { FileNames } from './sameNames.ts';
import type { LetScope } from './scopes.ts';

/** One kind of value: how it is read, and what it is as data. */
export interface Shape<T> {
  readonly about: About;
  /** Undefined where it cannot be read; a problem then says why. */
  read(node: SourceNode, site: Site, reading: Reading): T | undefined;
}

/** Where in the file a value stands. */
export interface Site {
  /** Keys joined by dots, list places by number. */
  readonly path: string;
  /** The last key of the path; of an item of a list, that of the list. */
  readonly name: string;
  readonly nameSpan: Span;
  /** From the key to the end of the value. */
  readonly span: Span;
}

/** What is known while one file is read. */
export interface Reading {
  report(problem: Problem): void;
  readonly declared: Declared;
  /** Names in `let` that formulas can use, read or not. */
  readonly letNames: ReadonlySet<string>;
  readonly scope: LetScope;
  readonly points: NamedPlaces;
  addPoint(name: string, place: Place): void;
  /** Name of the cable that stands for the pedal. */
  readonly pedalCable: string | undefined;
  /** Figures read so far, by the node they came from: an alias stands for the same figure, not for a copy. */
  readonly figures: Map<SourceScalar, Value>;
  /** Tolerances of which it is told that they take a figure out of its bounds. */
  readonly strained: Set<Tolerance>;
  /** One object for as long as all names of the file are the same, those of requirements left out. */
  readonly names: FileNames;
  /** The same of the `let` values; to be asked once they are read. */
  lets(): object;
  /** Notes that a value was given and could not be read, and that its part stands without it. */
  unread(path: string, span: Span): void;
}

/** Bounds of a figure, in the unit of its place. */
export interface Bounds {
  /** Not below. */
  readonly least?: number;
  /** Not above. */
  readonly most?: number;
  /** Greater than. */
  readonly above?: number;
  /** Less than. */
  readonly below?: number;
  readonly whole?: boolean;
  readonly notZero?: boolean;
}

/** A shape as data. */
export type About =
  | { readonly kind: 'quantity'; readonly dimension: Dimension; readonly bounds: Bounds }
  | { readonly kind: 'text'; readonly what: string }
  | { readonly kind: 'choice'; readonly choices: Readonly<Record<string, string>> }
  | { readonly kind: 'flag' }
  | { readonly kind: 'reference'; readonly to: PartKind }
  | { readonly kind: 'part'; readonly parts: readonly ('arm' | 'drum')[] }
  | { readonly kind: 'place'; readonly named: boolean }
  | { readonly kind: 'direction' }
  | { readonly kind: 'pair'; readonly first: About; readonly second: About }
  | { readonly kind: 'list'; readonly of: About; readonly least: number }
  | { readonly kind: 'record'; readonly keys: Readonly<Record<string, KeyAbout>>; readonly choices: readonly FormChoice[] }
  | {
      readonly kind: 'map';
      readonly of: About;
      readonly what: string;
      readonly freeNames: boolean;
      /** What its keys repeat, where they are no names of their own: names of `let`, or columns. */
      readonly repeats?: 'let' | 'column';
    }
  /** A figure of a dimension that another place of the file says. `empty`: may be left out by `~`. */
  | { readonly kind: 'figure'; readonly what: string; readonly empty: boolean }
  /** `owner.column` of the table. */
  | { readonly kind: 'column'; readonly use: ColumnUse }
  /** A limit, one of three words, or the name of a requirement. */
  | { readonly kind: 'kept' }
  /** A dimension that can be found from readings: a name of `let` or `part.key`. */
  | { readonly kind: 'fit' }
  | { readonly kind: 'either'; readonly forms: readonly About[] }
  | { readonly kind: 'constant'; readonly value: number };

/** Which columns a place takes: those that `tune` can shape, those that say where the pedal is, or all. */
export type ColumnUse = 'curve' | 'position' | 'any';

/** A key as data. */
export interface KeyAbout {
  readonly shape: About;
  readonly required: boolean;
  /** What it means; sentences with a full stop. */
  readonly doc: string;
  /** What holds where it is left out; absent where nothing does. */
  readonly fallback?: string;
  /** As it may be written. */
  readonly example?: string;
}

/** Ways of giving one thing, of which a part uses exactly one. */
export interface FormChoice {
  /** What is chosen, for messages: `the drum's radius`. */
  readonly what: string;
  readonly forms: readonly { readonly name: string; readonly needs: readonly string[]; readonly allows: readonly string[] }[];
}

/** What a problem may have besides its message; undefined is the same as left out. */
export interface ProblemExtras {
  readonly cure?: string | undefined;
  readonly replacements?: readonly Replacement[] | undefined;
  readonly related?: Problem['related'] | undefined;
}

/** An error. */
export function problem(code: ProblemCode, span: Span, message: string, extras: ProblemExtras = {}): Problem {
  const { cure, replacements, related } = extras;
  return { code, severity: 'error', span, message, ...defined({ cure, replacements, related }) };
}

type Defined<T> = { readonly [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  readonly [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The same fields without those that are undefined. */
export function defined<T extends object>(fields: T): Defined<T> {
  const kept: Record<string, unknown> = {};
  for (const key in fields) if (fields[key] !== undefined) kept[key] = fields[key];
  return kept as Defined<T>;
}

/** Name, its place and the entry's place, as every named part begins. */
export function named(site: Site): { readonly name: string; readonly nameSpan: Span; readonly span: Span } {
  return { name: site.name, nameSpan: site.nameSpan, span: site.span };
}

/** The site of an item of a list. */
export function itemSite(site: Site, index: number, node: SourceNode): Site {
  return { path: `${site.path}.${index}`, name: site.name, nameSpan: node.span, span: node.span };
}

/** What a node is, with its article, for messages. */
export function describeNode(node: SourceNode): string {
  switch (node.kind) {
    case 'scalar':
      return `\`${shortened(node.text)}\``;
    case 'list':
      return 'a list';
    case 'map':
      return 'a block of keys';
    case 'empty':
      return 'nothing';
  }
}

/** Reports that a node is not what the place needs; nothing where a mistake has been told there already. */
export function reportShape(node: SourceNode, site: Site, reading: Reading, wanted: string, cure: string): undefined {
  if (node.kind === 'empty') {
    if (!node.damaged) reading.report(problem('wrong-shape', site.nameSpan, `\`${site.name}\` has no value`, { cure }));
    return undefined;
  }
  reading.report(problem('wrong-shape', node.span, `\`${site.name}\` must be ${wanted}, not ${describeNode(node)}`, { cure }));
  return undefined;
}
