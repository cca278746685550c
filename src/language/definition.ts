/** Go to definition: from a name to where it is declared. */
import type { Span } from '../definition/span.ts';
import { nameAt, type NameIndex } from './names.ts';

export interface DefinitionAnswer {
  /** The name that was asked about. */
  readonly origin: Span;
  /** The name where it is declared. */
  readonly target: Span;
  /** The whole entry there. */
  readonly targetEntry: Span;
}

/** @returns undefined where no name stands at the offset, or one that the file does not declare */
export function findDefinition(index: NameIndex, offset: number): DefinitionAnswer | undefined {
  const place = nameAt(index, offset);
  if (place === undefined) return undefined;
  const { span, entrySpan } = place.declared;
  return { origin: place.span, target: span, targetEntry: entrySpan };
}
