/** Columns of the table by the names that readings give them. */
import { COLUMNS } from '../../definition/columns.ts';
import type { Definition } from '../../definition/definition.ts';
import type { ReadColumn } from './readings.ts';

/** A column of the table by its name; undefined where the linkage has none of that name. */
export function columnIn(definition: Definition, name: string): ReadColumn | undefined {
  const dot = name.indexOf('.');
  const owner = name.slice(0, Math.max(0, dot));
  const key = name.slice(dot + 1);
  const found = tablesOf(definition, owner).find((columns) => Object.hasOwn(columns, key))?.[key];
  if (found === undefined) return undefined;
  const perLength = key === 'ratio' && definition.pedal?.kind === 'cable';
  return { owner, column: key, dimension: perLength ? 'angle-per-length' : found.dimension };
}

/** Names that follow the dot, of all columns that a part or the pedal has; empty where there is none of the name. */
export function columnsOf(definition: Definition, owner: string): readonly string[] {
  return tablesOf(definition, owner).flatMap((columns) => Object.keys(columns));
}

function tablesOf(definition: Definition, owner: string): readonly (typeof COLUMNS)[keyof typeof COLUMNS][] {
  const kinds = [
    ['lever', definition.levers],
    ['rod', definition.rods],
    ['slot', definition.slots],
    ['cable', definition.cables],
    ['plates', definition.plates],
    ['sensor', definition.sensors],
    ['spring', definition.springs],
  ] as const;
  const own = kinds.filter(([, parts]) => parts.some(({ name }) => name === owner)).map(([kind]) => COLUMNS[kind]);
  return owner === 'pedal' ? [COLUMNS.pedal, ...own] : own;
}
