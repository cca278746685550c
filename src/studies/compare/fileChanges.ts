/** What differs in two texts, understood: parts that came, went or have another name, and what changed of those in both. */
import type { Definition, Value } from '../../definition/definition.ts';
import type { FileChanges, PartName, ValueChange, ValueSide, WordChange } from './comparison.ts';
import { fieldChange } from './fieldChange.ts';
import { createRenames, type Renames } from './names.ts';
import { pairUp } from './pairUp.ts';
import { partsOf, type ComparedPart } from './partsOf.ts';
import { standsIn } from './paths.ts';

export interface TextSide {
  readonly text: string;
  readonly definition: Definition;
}

/** Nothing at all: of texts that cannot be compared. */
export const NO_FILE_CHANGES: FileChanges = { values: [], words: [], added: [], gone: [], renamed: [], unread: [], rewritten: [] };

/** Changes, and the first file's names in the words of the second. */
export function fileChanges(was: TextSide, is: TextSide): { readonly file: FileChanges; readonly renames: Renames } {
  const { pedal } = was.definition;
  const renames = createRenames(pedal?.kind === 'lever' ? pedal.lever.name : undefined);
  const tools = { renames, was, is };
  const { pairs, added, gone, renamed } = pairUp(partsOf(was.definition), partsOf(is.definition), renames);
  const values: ValueChange[] = [];
  const words: WordChange[] = [];
  const rewritten: { path: string; was: ValueSide; is: ValueSide }[] = [];
  const following: { readonly change: ValueChange; readonly value: Value }[] = [];
  for (const [before, after] of pairs) {
    for (const key of new Set([...after.fields.keys(), ...before.fields.keys()])) {
      const change = fieldChange(before, after, key, tools);
      switch (change?.kind) {
        case 'value':
          values.push(change.change);
          break;
        case 'word':
          words.push(change.change);
          break;
        case 'rewritten':
          rewritten.push(change.change);
          break;
        case 'follows':
          following.push(change);
          break;
        case undefined:
      }
    }
  }
  const followed = (value: Value): readonly string[] => changedLets(value, is.definition, values);
  const leaders = new Map(following.map(({ change, value }) => [change.path, followed(value)]));
  return {
    renames,
    file: {
      // A figure of a formula that changed though no `let` behind it did stands by itself, so that it is not lost.
      values: [...values, ...following.filter(({ change }) => leaders.get(change.path)?.length === 0).map(({ change }) => change)].map(
        (change) =>
          change.block !== 'let'
            ? change
            : { ...change, follows: [...leaders].filter(([, names]) => names.includes(change.name)).map(([path]) => path) },
      ),
      words,
      ...understood(was, is, added, gone),
      renamed: renamed.map(([before, after]) => ({ block: after.block, was: before.name, is: after.name })),
      rewritten,
    },
  };
}

/** Names of the changed `let` values that a formula rests on, through others too. */
function changedLets(value: Value, { lets }: Definition, values: readonly ValueChange[]): readonly string[] {
  const behind = new Set<number>();
  const visit = ({ formula }: Value): void => {
    for (const index of formula?.uses ?? []) {
      const next = lets[index];
      if (next === undefined || behind.has(index)) continue;
      behind.add(index);
      visit(next.value);
    }
  };
  visit(value);
  const changed = new Set(values.filter(({ block }) => block === 'let').map(({ name }) => name));
  return [...behind].flatMap((index) => lets[index]?.name ?? []).filter((name) => changed.has(name));
}

/** A part that stands in the text of both and is understood in one has neither come nor gone. */
function understood(
  was: TextSide,
  is: TextSide,
  added: readonly ComparedPart[],
  gone: readonly ComparedPart[],
): Pick<FileChanges, 'added' | 'gone' | 'unread'> {
  const name = ({ block, name: own }: ComparedPart): PartName => ({ block, name: own });
  const inOld = standsIn(was.text);
  const inNew = standsIn(is.text);
  return {
    added: added.filter(({ path }) => !inOld(path)).map(name),
    gone: gone.filter(({ path }) => !inNew(path)).map(name),
    unread: [
      ...added.filter(({ path }) => inOld(path)).map((part) => ({ ...name(part), side: 'was' as const })),
      ...gone.filter(({ path }) => inNew(path)).map((part) => ({ ...name(part), side: 'is' as const })),
    ],
  };
}
