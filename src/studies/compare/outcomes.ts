/** Figures of two solved linkages that differ noticeably: facts, the parts of the load path, and columns over the travel. */
import type { Dimension } from '../../definition/dimensions.ts';
import type { Fact } from '../../findings/finding.ts';
import type { PartFigure, PathPart } from '../../findings/part.ts';
import type { Column } from '../../table/column.ts';
import { greatestOf, leastOf, type Extreme } from '../../travel/extremes.ts';
import { ABOUT, type OutcomeChange, type OutcomeSide } from './comparison.ts';
import type { Renames } from './names.ts';
import { differs } from './noticeable.ts';
import type { SolvedSide } from './solved.ts';

/** Yields as it goes. @param required columns of which a requirement speaks, by the names of the second file */
export function* outcomeChanges(
  was: SolvedSide,
  is: SolvedSide,
  renames: Renames,
  required: ReadonlySet<string>,
): Generator<undefined, readonly OutcomeChange[]> {
  const about = subjects(was, is, renames, required);
  const changes = [
    ...partChanges(was.parts, is.parts, renames),
    ...factChanges(was.facts, is.facts, renames),
    ...(yield* columnChanges(was, is, renames)),
  ].map((each): OutcomeChange => ({ about: about(each), ...each }));
  return changes.sort((a, b) => ABOUT.indexOf(a.about) - ABOUT.indexOf(b.about));
}

type Change = Omit<OutcomeChange, 'about'>;
type What = Pick<OutcomeChange, 'from' | 'part' | 'key' | 'label' | 'percent'>;

/** Says of a figure what it is about. */
function subjects(
  was: SolvedSide,
  is: SolvedSide,
  renames: Renames,
  required: ReadonlySet<string>,
): (change: Change) => OutcomeChange['about'] {
  const named = (kind: PathPart['kind']): ReadonlySet<string> =>
    new Set([
      ...was.parts.filter((part) => part.kind === kind).map(({ name }) => renames.about(name)),
      ...is.parts.filter((part) => part.kind === kind).map(({ name }) => name),
    ]);
  const [plates, sensors] = [named('plates'), named('sensor')];
  const carrying = ({ travel }: SolvedSide): readonly string[] =>
    travel.mechanism.levers.filter((lever) => lever.plates.length > 0).map(({ name }) => name);
  const shafts = new Set([...carrying(was).map(renames.about), ...carrying(is)]);
  return ({ from, part, key, was: before, is: after }) => {
    const [first = ''] = key.split('.');
    const isColumn = from === 'column';
    if (plates.has(part)) return 'opening';
    if (shafts.has(part) && (isColumn ? first === 'opening' : first === 'opens' || first.startsWith('travel-at-'))) return 'opening';
    if (shafts.has(part) && (isColumn ? first === 'closing' : first.startsWith('closing-'))) return 'closing';
    if (part === 'pedal' && (isColumn ? first === 'effort' : first.startsWith('effort-'))) return 'effort';
    if (sensors.has(part)) return 'signal';
    if (isColumn && required.has(`${part}.${first}`)) return 'required';
    return (after?.figure ?? before?.figure)?.dimension === 'angle' ? 'angle' : 'rest';
  };
}

/** Undefined where both sides say the same; where it holds along the pedal is no difference by itself. */
function change(what: What, was: OutcomeSide | undefined, is: OutcomeSide | undefined): Change | undefined {
  const sides = { ...(was && { was }), ...(is && { is }) };
  const [before, after] = [was?.figure, is?.figure];
  if (before !== undefined && before.dimension === after?.dimension) {
    const difference = after.value - before.value;
    const isOther = differs(before.value, after.value, after.dimension) || was?.text !== is?.text;
    return isOther ? { ...what, ...sides, ...(Number.isFinite(difference) && { difference }) } : undefined;
  }
  if (before === undefined && after === undefined && was?.text === is?.text) return undefined;
  return { ...what, ...sides };
}

function partChanges(was: readonly PathPart[], is: readonly PathPart[], renames: Renames): readonly Change[] {
  const before = new Map(was.map((part) => [`${part.kind} ${renames.about(part.name)}`, part]));
  return is.flatMap(({ kind, name, figures }) => {
    const other = before.get(`${kind} ${name}`);
    // The figures of a part that is new are told with the part.
    if (other === undefined) return [];
    const what = { from: 'part', part: name, percent: false } as const;
    const now = figures.flatMap((figure) => {
      const old = other.figures.find(({ label }) => label === figure.label);
      return change({ ...what, key: figure.label, label: figure.label }, old && partSide(old), partSide(figure)) ?? [];
    });
    const gone = other.figures.filter(({ label }) => !figures.some((figure) => figure.label === label));
    return [...now, ...gone.flatMap((old) => change({ ...what, key: old.label, label: old.label }, partSide(old), undefined) ?? [])];
  });
}

function partSide({ figure, text, travel }: PartFigure): OutcomeSide {
  return { ...(figure && { figure }), ...(text !== undefined && { text }), ...(travel !== undefined && { travel }) };
}

/** Several facts of one part may share a key, as an adjuster that moves two shafts; then their words tell them apart. */
function factChanges(was: readonly Fact[], is: readonly Fact[], renames: Renames): readonly Change[] {
  const owners = new Set(is.map(({ part }) => part));
  const oldOwners = new Set(was.map(({ part }) => renames.about(part)));
  const left = new Set(was);
  const partners = new Map<Fact, Fact>();
  // A word of a key or label may be a part's name and mean none: both as they stand go first.
  type Words = (words: string) => string;
  const passes: readonly (readonly [keyWas: Words, labelWas: Words, labelIs: Words])[] = [
    [same, same, same],
    [same, renames.prose, same],
    [renames.prose, renames.prose, same],
    [same, none, none],
    [renames.prose, none, none],
  ];
  for (const [keyWas, labelWas, labelIs] of passes) {
    const known = new Map<string, Fact[]>();
    for (const fact of left) {
      const key = `${renames.about(fact.part)} ${keyWas(fact.key)} ${labelWas(fact.label)}`;
      known.set(key, [...(known.get(key) ?? []), fact]);
    }
    for (const fact of is) {
      if (partners.has(fact)) continue;
      const other = known.get(`${fact.part} ${fact.key} ${labelIs(fact.label)}`)?.shift();
      if (other === undefined) continue;
      partners.set(fact, other);
      left.delete(other);
    }
  }
  const what = (fact: Fact, part: string, percent: boolean): What => ({ from: 'fact', part, key: fact.key, label: fact.label, percent });
  return [
    ...is.flatMap((fact) => {
      const other = partners.get(fact);
      if (other === undefined && !oldOwners.has(fact.part)) return [];
      const percent = isTravel(fact) || (other !== undefined && isTravel(other));
      return change(what(fact, fact.part, percent), other && factSide(other), factSide(fact)) ?? [];
    }),
    ...[...left].flatMap((fact) => {
      const part = renames.about(fact.part);
      const gone = { ...what(fact, part, isTravel(fact)), label: renames.prose(fact.label) };
      return owners.has(part) ? (change(gone, factSide(fact), undefined) ?? []) : [];
    }),
  ];
}

const same = (label: string): string => label;
const none = (): string => '';

/** Whether the fact is a pedal travel itself. */
function isTravel({ figure, travel }: Fact): boolean {
  return figure?.dimension === 'number' && figure.value === travel;
}

function factSide({ figure, travel, why }: Fact): OutcomeSide {
  return { ...(figure && { figure }), ...(why !== undefined && { text: why }), ...(travel !== undefined && { travel }) };
}

function* columnChanges(was: SolvedSide, is: SolvedSide, renames: Renames): Generator<undefined, readonly Change[]> {
  const before = new Map(was.columns.map((column) => [renames.part(column.name), column]));
  const both = is.columns.flatMap((column) => {
    const other = before.get(column.name);
    return other === undefined || column.name === 'pedal.travel' ? [] : [{ other, column }];
  });
  const olds = yield* summaries(
    was,
    both.map(({ other }) => other),
  );
  const nows = yield* summaries(
    is,
    both.map(({ column }) => column),
  );
  return both.flatMap(({ other, column }, index) => {
    const percent = column.unit === '%';
    return WHICH.flatMap(([which, label]) => {
      const what = { from: 'column', part: column.owner, key: `${column.key}.${which}`, label: `${column.key} ${label}`, percent } as const;
      return change(what, columnSide(olds[index]![which], other.dimension), columnSide(nows[index]![which], column.dimension)) ?? [];
    });
  });
}

const WHICH = [
  ['least', 'least'],
  ['greatest', 'greatest'],
  ['rest', 'at rest'],
  ['full', 'at full pedal'],
] as const;

type Summary = Readonly<Record<(typeof WHICH)[number][0], Extreme | undefined>>;

function* summaries({ travel }: SolvedSide, columns: readonly Column[]): Generator<undefined, readonly Summary[]> {
  const { build, samples, poseAt } = travel;
  // All columns are read at one pose before the next is solved: of a large linkage the poses are what takes time.
  const taken = columns.map(() => new Map<number, number>());
  for (const at of new Set([0, 1, ...samples])) {
    const pose = poseAt(at);
    columns.forEach(({ read }, index) => taken[index]!.set(at, finite(read(build, pose))));
    yield undefined;
  }
  const found: Summary[] = [];
  for (const [index, { read }] of columns.entries()) {
    const known = taken[index]!;
    const along = (at: number): number => known.get(at) ?? finite(read(build, poseAt(at)));
    const at = (place: number): Extreme | undefined => (Number.isNaN(along(place)) ? undefined : { value: along(place), travel: place });
    found.push({ least: leastOf(along, samples), greatest: greatestOf(along, samples), rest: at(0), full: at(1) });
    yield undefined;
  }
  return found;
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : NaN;
}

function columnSide(extreme: Extreme | undefined, dimension: Dimension): OutcomeSide | undefined {
  return extreme && { figure: { value: extreme.value, dimension }, travel: extreme.travel };
}
