/** A long list, of which the first items stand at once and the rest on request. */
import type { ComponentChildren } from 'preact';
import { openLists } from '../state.ts';
import { WORDS } from '../words.ts';

interface Props<Item> {
  readonly items: readonly Item[];
  /** What they are, in the plural, for the button. */
  readonly name: string;
  readonly children: (item: Item, index: number) => ComponentChildren;
  readonly class?: string;
  /** An item that stands at once, wherever it is in the list. */
  readonly includes?: (item: Item) => boolean;
}

/** So many stand at once; a list that is a little longer stands whole. */
const FIRST = 12;
const LITTLE = 4;

export function SomeOf<Item>({ items, name, children, class: className, includes }: Props<Item>) {
  const { first, more } = useFirst(items, name, includes);
  return (
    <>
      <ol class={className}>{first.map(children)}</ol>
      {more}
    </>
  );
}

/** Those that stand at once, and the button for the rest: null where all stand. */
export function useFirst<Item>(items: readonly Item[], name: string, includes?: (item: Item) => boolean) {
  const isWhole = openLists.value.includes(name);
  const turn = () => (openLists.value = isWhole ? openLists.value.filter((each) => each !== name) : [...openLists.value, name]);
  const isShort = items.length <= FIRST + LITTLE;
  const needed = includes === undefined ? -1 : items.findIndex(includes);
  const count = isShort || isWhole ? items.length : Math.max(FIRST, needed + 1);
  const more = isShort ? null : (
    <button type="button" class="quiet" aria-expanded={isWhole} onClick={turn}>
      {isWhole ? WORDS.showFirst(FIRST) : WORDS.showAll(items.length, name)}
    </button>
  );
  return { first: items.slice(0, count), more };
}
