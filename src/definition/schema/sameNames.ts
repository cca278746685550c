/**
 * Whether the names and the `let` values of a file are what they were in one of the last few texts: one object stands for them as long as
 * they are. Where they stand does not count. Of names that are others it is told which.
 */
import type { Let, Value } from '../definition.ts';
import type { Declared } from './declared.ts';
import type { LetScope } from './scopes.ts';

/** All names of the file that a part can ask for, those of requirements left out. */
export interface FileNames {
  readonly declared: Declared;
  /** Name of the cable that stands for the pedal. */
  readonly pedalCable: string | undefined;
}

/**
 * Names that stand for something in one of two files and for nothing, or something else, in the other. Undefined where the pedal is another
 * cable, which no name in a part tells.
 */
export function namesApart(one: FileNames, other: FileNames): readonly string[] | undefined {
  if (one.pedalCable !== other.pedalCable) return undefined;
  if (lastApart?.one === one && lastApart.other === other) return lastApart.names;
  const [meant, meantNow] = [meaningsOf(one), meaningsOf(other)];
  const names = [...apart(meant, meantNow), ...apart(meantNow, meant)];
  lastApart = { one, other, names };
  return names;
}

/** Every part asks the same. */
let lastApart: { readonly one: FileNames; readonly other: FileNames; readonly names: readonly string[] } | undefined;

/** The names of a file by what they stand for. */
function meaningsOf({ declared: { parts, levers, points } }: FileNames): ReadonlyMap<string, string> {
  const meanings = new Map<string, string>();
  for (const [kind, names] of Object.entries(parts)) for (const name of names.keys()) meanings.set(`${kind} ${name}`, name);
  for (const name of points.keys()) meanings.set(`point ${name}`, name);
  for (const [lever, { arms, drums }] of levers) {
    for (const name of arms.keys()) meanings.set(`arm ${lever}.${name}`, name);
    for (const name of drums.keys()) meanings.set(`drum ${lever}.${name}`, name);
  }
  return meanings;
}

function apart(one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): readonly string[] {
  return [...one].flatMap(([meaning, name]) => (other.has(meaning) ? [] : [name]));
}

/** All `let` values, once they are read. */
export interface LetValues {
  readonly entries: readonly Let[];
  readonly broken: ReadonlySet<string>;
}

/** @returns an earlier object of the same names, where there is one */
export function namesAsBefore(names: FileNames): FileNames {
  return recentNames(names);
}

/** @returns an earlier object of the same values, where there is one */
export function letsAsBefore({ entries, broken }: LetScope): LetValues {
  return recentLets({ entries, broken: broken ?? new Set() });
}

/** The text before the last edit and the one after it, of two files that are open side by side. */
const MOST_KEPT = 4;

function recentOf<Known>(isSame: (one: Known, other: Known) => boolean): (now: Known) => Known {
  let recent: readonly Known[] = [];
  return (now) => {
    const known = recent.find((each) => isSame(each, now)) ?? now;
    if (known !== recent[0]) recent = [known, ...recent.filter((each) => each !== known)].slice(0, MOST_KEPT);
    return known;
  };
}

const recentNames = recentOf<FileNames>((one, other) => {
  if (one.pedalCable !== other.pedalCable || !haveSameKeys(one.declared.points, other.declared.points)) return false;
  const kinds = Object.keys(one.declared.parts) as (keyof Declared['parts'])[];
  if (!kinds.every((kind) => haveSameKeys(one.declared.parts[kind], other.declared.parts[kind]))) return false;
  for (const [name, { arms, drums }] of one.declared.levers) {
    const lever = other.declared.levers.get(name);
    if (lever === undefined || !haveSameKeys(arms, lever.arms) || !haveSameKeys(drums, lever.drums)) return false;
  }
  return true;
});

/** In the same order. */
function haveSameKeys(one: ReadonlyMap<string, unknown> | ReadonlySet<string>, other: typeof one): boolean {
  if (one === other) return true;
  if (one.size !== other.size) return false;
  const others = other.keys();
  for (const key of one.keys()) if (key !== others.next().value) return false;
  return true;
}

const recentLets = recentOf<LetValues>(
  (one, other) =>
    haveSameKeys(one.broken, other.broken) &&
    one.entries.length === other.entries.length &&
    one.entries.every((entry, i) => isSameLet(entry, other.entries[i]!)),
);

function isSameLet(one: Let, other: Let): boolean {
  return one.name === other.name && isSameValue(one.value, other.value) && isSameKind(one.kind, other.kind);
}

function isSameValue(one: Value, other: Value): boolean {
  const isSameTolerance = Object.is(one.tolerance?.plus, other.tolerance?.plus) && Object.is(one.tolerance?.minus, other.tolerance?.minus);
  return isSameTolerance && Object.is(one.nominal, other.nominal) && one.unit === other.unit && one.formula?.text === other.formula?.text;
}

function isSameKind(one: Let['kind'], other: Let['kind']): boolean {
  const bases = Object.keys(one) as (keyof Let['kind'])[];
  return bases.every((base) => one[base] === other[base]);
}
