/** Which kind of part a name is of, and the other way round. */
import type { PartKind } from '../protocol/report.ts';
import type { NameKind } from './names.ts';

/** The kind of name that each kind of part is declared as. */
export const NAME_KINDS: Readonly<Record<PartKind, NameKind>> = {
  pedal: 'drive',
  cable: 'cable',
  rod: 'rod',
  slot: 'slot',
  coupling: 'coupling',
  lever: 'lever',
  plates: 'plates',
  sensor: 'sensor',
  spring: 'spring',
  'keep-out': 'obstacle',
};

const PART_KINDS: ReadonlyMap<NameKind, PartKind> = new Map(
  Object.entries(NAME_KINDS).map(([part, name]): [NameKind, PartKind] => [name, part as PartKind]),
);

/** Undefined for what is no part: points, `let` values, requirements. */
export function partKindOf(name: NameKind): PartKind | undefined {
  return PART_KINDS.get(name);
}
