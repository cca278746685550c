/** From part to part along the load path. */
import type { PartKey } from '../../src/protocol/report.ts';

/**
 * The part after or before one, the first or last itself at the ends. From a part that is not among them, or from none, the first one, or
 * going back the last. Undefined where there are none.
 */
export function partBeside(parts: readonly PartKey[], from: PartKey | undefined, way: 1 | -1): PartKey | undefined {
  const at = from === undefined ? -1 : parts.findIndex(({ kind, name }) => kind === from.kind && name === from.name);
  const next = at < 0 ? (way === 1 ? 0 : parts.length - 1) : Math.min(Math.max(0, at + way), parts.length - 1);
  const part = parts[next];
  return part && { kind: part.kind, name: part.name };
}
