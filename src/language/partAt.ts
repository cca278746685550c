/** The part of the load path, or the keep-out, that an offset of the text lies in. */
import type { PartKey } from '../protocol/report.ts';
import type { NameIndex } from './names.ts';
import { partKindOf } from './partKinds.ts';

/** Undefined between the parts, and in what is none: points, `let` values, requirements. */
export function partAt({ names }: NameIndex, offset: number): PartKey | undefined {
  for (const { kind, name, entrySpan } of names) {
    const part = partKindOf(kind);
    if (part === undefined || offset < entrySpan.start || offset > entrySpan.end) continue;
    return { kind: part, name: part === 'pedal' ? 'pedal' : name };
  }
  return undefined;
}
