/** The part of the load path, or the keep-out, that an offset of the text lies in. */
import type { PartKey, PartKind } from '../protocol/report.ts';
import type { NameIndex, NameKind } from './names.ts';

/** Undefined between the parts, and in what is none: points, `let` values, requirements. */
export function partAt({ names }: NameIndex, offset: number): PartKey | undefined {
  for (const { kind, name, entrySpan } of names) {
    const part = PART_KINDS[kind];
    if (part === undefined || offset < entrySpan.start || offset > entrySpan.end) continue;
    return { kind: part, name: part === 'pedal' ? 'pedal' : name };
  }
  return undefined;
}

const PART_KINDS: Partial<Readonly<Record<NameKind, PartKind>>> = {
  drive: 'pedal',
  lever: 'lever',
  cable: 'cable',
  rod: 'rod',
  slot: 'slot',
  coupling: 'coupling',
  plates: 'plates',
  sensor: 'sensor',
  spring: 'spring',
  obstacle: 'keep-out',
};
