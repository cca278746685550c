/** The loose outline while it is read: as `looseTree.ts` describes it, still to be changed. */
import type { Span } from '../../definition/span.ts';
import type { LooseScalar } from './looseTree.ts';

export interface EntryInMaking {
  readonly key: string;
  readonly keySpan: Span;
  readonly colon: number | undefined;
  readonly isItem: boolean;
  value: ValueInMaking;
  region: Span;
}

export interface BlockInMaking {
  readonly kind: 'block';
  list: boolean;
  readonly flow: boolean;
  span: Span;
  readonly closed: boolean;
  indent: number;
  readonly entries: EntryInMaking[];
}

export type ValueInMaking = { readonly kind: 'nothing' } | LooseScalar | BlockInMaking;

export interface PlacedInMaking {
  readonly entry: EntryInMaking;
  readonly block: BlockInMaking;
  readonly path: readonly string[];
  readonly above: PlacedInMaking | undefined;
  readonly start: number;
  end: number;
}
