/** Columns that a person asks for, by name or by the part that they belong to. */
import { nearestWord } from '../src/definition/names.ts';
import type { Column } from '../src/table/column.ts';

/** The names in `--columns`, undefined where it is not given; or a sentence on what is wrong with it, without a full stop. */
export function readColumns(text: string | undefined): { readonly columns: readonly string[] | undefined } | string {
  const columns = text?.split(',').map((name) => name.trim());
  if (columns?.includes('') === true)
    return '`--columns` has an empty place; write names with a comma between them, e.g. `pedal.travel,shaft.opening`';
  return { columns };
}

/** Full names of the wanted columns in the order asked, or a sentence on the one that there is not. */
export function chooseColumns(wanted: readonly string[], columns: readonly Column[]): string[] | string {
  const chosen: string[] = [];
  for (const word of wanted) {
    const exact = columns.filter(({ name }) => name === word);
    const found = exact.length > 0 ? exact : columns.filter(({ owner }) => owner === word);
    if (found.length === 0) return unknownColumn(word, columns);
    // Two files that are compared have most columns both.
    chosen.push(...new Set(found.map(({ name }) => name)));
  }
  return chosen;
}

function unknownColumn(word: string, columns: readonly Column[]): string {
  const near = nearestWord(word, [...columns.map(({ name }) => name), ...columns.map(({ owner }) => owner)]);
  if (near !== undefined) return `There is no column \`${word}\`; did you mean \`${near}\`?`;
  const [owner = '', key = ''] = word.split('.');
  const related = columns.filter((column) => column.owner === owner || column.key === key).map(({ name }) => name);
  const names = [...new Set(related.length > 0 ? related : columns.map(({ name }) => name))];
  const more = names.length > SHOWN_NAMES ? `, and ${names.length - SHOWN_NAMES} more` : '';
  return `There is no column \`${word}\`; there are ${names.slice(0, SHOWN_NAMES).join(', ')}${more}`;
}

const SHOWN_NAMES = 12;
