/** References: every place that speaks of the name under the cursor. */
import type { Span } from '../definition/span.ts';
import { nameAt, placesOf, type NameIndex } from './names.ts';

/** In the order of the text; empty where no name stands at the offset. @param withDeclaration whether its declaration is among them */
export function findReferences(index: NameIndex, offset: number, withDeclaration: boolean): readonly Span[] {
  const place = nameAt(index, offset);
  if (place === undefined) return [];
  return placesOf(index, place.declared)
    .filter(({ isDeclaration }) => withDeclaration || !isDeclaration)
    .map(({ span }) => span);
}
