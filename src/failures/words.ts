/** Words for what is left when a part fails. */

/** Names in a row, e.g. `front and rear`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
