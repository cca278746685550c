/** Text by which items come in their order. @param group from 0, the likelier ones first; @param index within it */
export function rank(group: number, index: number): string {
  return `${group}${String(Math.max(0, index)).padStart(4, '0')}`;
}
