/** Names that a file declares and never speaks of: what stands under them does nothing to the linkage. */
import type { DeclaredName, NameIndex, NameKind } from './names.ts';

/** Figures, places, and where something could hold on. A lever, a spring or a requirement does something without being named again. */
const FOR_USE: ReadonlySet<NameKind> = new Set(['let', 'point', 'arm', 'drum']);

/** In the order of the text. Right for a text that was read whole: what could not be read may speak of any of them. */
export function unusedNames({ names, places }: NameIndex): readonly DeclaredName[] {
  const used = new Set(places.filter(({ isDeclaration }) => !isDeclaration).map(({ declared }) => declared));
  return names.filter((name) => FOR_USE.has(name.kind) && !used.has(name));
}
