/** Highlights: the places of the name under the cursor, marked in the text. */
import type { Span } from '../definition/span.ts';
import { nameAt, placesOf, type NameIndex } from './names.ts';

export interface Highlight {
  readonly span: Span;
  /** `write` where the name is declared. */
  readonly kind: 'read' | 'write';
}

/** In the order of the text; empty where no name stands at the offset. */
export function findHighlights(index: NameIndex, offset: number): readonly Highlight[] {
  const place = nameAt(index, offset);
  if (place === undefined) return [];
  return placesOf(index, place.declared).map(({ span, isDeclaration }) => ({ span, kind: isDeclaration ? 'write' : 'read' }));
}
