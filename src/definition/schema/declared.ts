/**
 * Names that a file declares, gathered before anything is read, so that a part may be used above the place where
 * it is described and a part that cannot be read is still no unknown name.
 */
import { NAME_PATTERN, reservedAs } from '../names.ts';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { child, type SourceEntry, type SourceNode } from '../source/tree.ts';
import { problem } from './shape.ts';

/** Blocks whose names are each used once in the file. */
export const PART_BLOCKS = {
  let: 'let',
  levers: 'lever',
  cables: 'cable',
  rods: 'rod',
  slots: 'slot',
  couplings: 'coupling',
  plates: 'plates',
  sensors: 'sensor',
  springs: 'spring',
} as const;

/** Kinds of part whose names are each used once. */
export type PartKind = (typeof PART_BLOCKS)[keyof typeof PART_BLOCKS];

/** With its article, for messages. */
export const KIND_WORDS: Readonly<Record<PartKind, string>> = {
  let: 'a `let` value',
  lever: 'a lever',
  cable: 'a cable',
  rod: 'a rod',
  slot: 'a slot',
  coupling: 'a coupling',
  plates: 'a set of plates',
  sensor: 'a sensor',
  spring: 'a spring',
};

/** The parts that a lever names, each with the place of its name. */
export interface DeclaredLever {
  readonly nameSpan: Span;
  readonly arms: ReadonlyMap<string, Span>;
  readonly drums: ReadonlyMap<string, Span>;
}

/** All names of a file, each with its place. */
export interface Declared {
  readonly parts: Readonly<Record<PartKind, ReadonlyMap<string, Span>>>;
  readonly levers: ReadonlyMap<string, DeclaredLever>;
  readonly points: ReadonlyMap<string, Span>;
  /** Names of the lines of `require`. */
  readonly requirements: ReadonlyMap<string, Span>;
}

/** Names as they stand in the tree, right or wrong; of equal ones in a block the first. */
export function gatherNames(root: SourceNode | undefined): Declared {
  const names = (block: string): ReadonlyMap<string, Span> => spansOf(child(root, block));
  const levers = new Map<string, DeclaredLever>();
  for (const entry of entriesOf(child(root, 'levers'))) {
    levers.set(entry.key, {
      nameSpan: entry.keySpan,
      arms: spansOf(child(entry.value, 'arms')),
      drums: spansOf(child(entry.value, 'drums')),
    });
  }
  return {
    parts: {
      let: names('let'),
      lever: names('levers'),
      cable: names('cables'),
      rod: names('rods'),
      slot: names('slots'),
      coupling: names('couplings'),
      plates: names('plates'),
      sensor: names('sensors'),
      spring: names('springs'),
    },
    levers,
    points: names('points'),
    requirements: names('require'),
  };
}

/** Kind of the part of that name, where there is one. */
export function kindNamed(declared: Declared, name: string): PartKind | undefined {
  return Object.values(PART_BLOCKS).find((kind) => declared.parts[kind].has(name));
}

/** Names that are taken by the formula language, used twice in the file, or twice among a lever's parts. */
export function checkNames(declared: Declared, report: (found: Problem) => void): void {
  const seen = new Map<string, { readonly kind: PartKind; readonly span: Span }>();
  const all = Object.values(PART_BLOCKS).flatMap((kind) => [...declared.parts[kind]].map(([name, span]) => ({ kind, name, span })));
  all.sort((a, b) => a.span.start - b.span.start);
  for (const { kind, name, span } of all) {
    // A name that is taken must be changed anyway.
    if (isReserved(name, kind, span, report)) continue;
    const first = seen.get(name);
    if (first === undefined) {
      seen.set(name, { kind, span });
      continue;
    }
    report(
      problem('duplicate-name', span, `\`${name}\` is the name of ${KIND_WORDS[first.kind]} already`, {
        cure: 'Give one of the two another name',
        related: [{ span: first.span, message: 'The first is here' }],
      }),
    );
  }
  for (const [lever, { arms, drums }] of declared.levers) {
    for (const [part, span] of drums) {
      const arm = arms.get(part);
      if (arm === undefined) continue;
      report(
        problem('duplicate-name', span, `\`${lever}.${part}\` is both an arm and a drum`, {
          cure: 'Give one of the two another name',
          related: [{ span: arm, message: 'The arm is here' }],
        }),
      );
    }
  }
}

function isReserved(name: string, kind: PartKind, span: Span, report: (found: Problem) => void): boolean {
  const cure = `Name it otherwise, for example \`${name.replace(/[^a-z0-9_]/g, '_')}_1\``;
  if (name === 'pedal' && kind !== 'lever') {
    report(problem('reserved-name', span, 'Only a lever may be called `pedal`: in requirements the word speaks of the drive', { cure }));
    return true;
  }
  const taken = NAME_PATTERN.test(name) ? reservedAs(name) : undefined;
  if (taken !== undefined) report(problem('reserved-name', span, `\`${name}\` is ${taken} in formulas and cannot be a name`, { cure }));
  return taken !== undefined;
}

function entriesOf(node: SourceNode | undefined): readonly SourceEntry[] {
  return node?.kind === 'map' ? node.entries : [];
}

function spansOf(node: SourceNode | undefined): ReadonlyMap<string, Span> {
  return new Map(entriesOf(node).map((entry) => [entry.key, entry.keySpan]));
}
