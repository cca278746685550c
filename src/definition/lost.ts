/**
 * Parts that stand in the file and not in its definition: they could not be read, or hang on something that could not.
 */
import type { Definition, Unread } from './definition.ts';
import { child, entryOf, textOf, type SourceMap } from './source/tree.ts';

/** Each lost part by its path, such as `rods.link`; of the pedal the key whose word is lost, where it is that. Levers are seen by their joints. */
export function lostParts(root: SourceMap, definition: Definition): readonly Unread[] {
  const lost = BLOCKS.flatMap((key): readonly Unread[] => {
    const block = child(root, key);
    if (block?.kind !== 'map') return [];
    const read = new Set<string>(definition[key].map(({ name }) => name));
    return block.entries
      .filter((entry) => !read.has(entry.key))
      .map((entry): Unread => ({ path: `${key}.${entry.key}`, span: entry.span }));
  });
  return [...lost, ...lostPedal(root, definition, lost)];
}

/** The first cable, rod, slot or coupling that is lost: what it would carry, and to where, is not known. */
export function lostJoint({ unread = [] }: Definition): Unread | undefined {
  return unread.find(({ path }) => {
    const [block = '', ...words] = path.split('.');
    return words.length === 1 && JOINTS.has(block);
  });
}

/** The first spring that could not be read, or all of them: what closes the plates is then not known. */
export function lostSpring({ unread = [] }: Definition): Unread | undefined {
  return unread.find(({ path }) => path === 'springs' || path.startsWith('springs.'));
}

function lostPedal(root: SourceMap, { pedal, levers }: Definition, lost: readonly Unread[]): readonly Unread[] {
  const entry = entryOf(root, 'pedal');
  if (pedal !== undefined || entry === undefined) return [];
  const cable = textOf(child(entry.value, 'cable'));
  if (lost.some(({ path }) => path === `cables.${cable}`)) return [{ path: 'pedal.cable', span: entry.span }];
  const lever = textOf(child(entry.value, 'lever'));
  const isLost = lever !== undefined && !levers.some(({ name }) => name === lever);
  return [{ path: isLost ? 'pedal.lever' : 'pedal', span: entry.span }];
}

const BLOCKS = ['cables', 'rods', 'slots', 'couplings', 'plates', 'sensors', 'springs'] as const;
const JOINTS: ReadonlySet<string> = new Set(['cables', 'rods', 'slots', 'couplings']);
