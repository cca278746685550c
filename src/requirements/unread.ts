/**
 * Which columns rest on a value that stands in the file and could not be read: the part is then solved without it, and a requirement
 * must not be passed on the strength of that.
 */
import type { Definition, Unread } from '../definition/definition.ts';

/** The first unread value on which a column rests; undefined where there is none. */
export function unreadBelow(column: string, { unread = [] }: Definition): Unread | undefined {
  const [owner = '', key = ''] = column.split('.');
  return unread.find(({ path }) => restsOn(owner, key, path.split('.')));
}

function restsOn(owner: string, key: string, [block = '', part, ...words]: readonly string[]): boolean {
  if (block === 'springs' && FORCES.has(key)) return true;
  if (!MOVING_BLOCKS.has(block)) return part === owner;
  if (FORCES.has(key) || FITTINGS.has(key)) return true;
  // What a lost cable would pull has no columns; what pulls it moves as if it were not there.
  if (block === 'cables' && words.length === 0) return false;
  return ![part ?? '', ...words].some((word) => UNMOVING.has(word));
}

const MOVING_BLOCKS: ReadonlySet<string> = new Set(['let', 'points', 'levers', 'pedal', 'cables', 'rods', 'slots', 'couplings']);

/** Columns that speak of forces, for which more of the file matters. */
export const FORCES: ReadonlySet<string> = new Set([
  'closing', 'torque', 'effort', 'release', 'tension', 'margin', 'margin_off', 'effort_off', 'release_off',
]); // prettier-ignore

/** Columns that depend on how a part is fitted, besides where it stands. */
const FITTINGS: ReadonlySet<string> = new Set(['misalignment', 'twist', 'lead']);

/** Keys that change nothing of where a lever, rod or cable stands. */
const UNMOVING: ReadonlySet<string> = new Set([
  'friction', 'bearing', 'inertia', 'width', 'outline', 'layer', 'groove', 'bolt', 'pad', 'lever_ratio', 'bend', 'stiffness', 'diameter',
  'leaves_along', 'enters_along', 'adjust', 'ends', 'reach', 'play',
]); // prettier-ignore
