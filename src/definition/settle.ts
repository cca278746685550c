/**
 * What of `tune` and `measured` can be judged only when the whole linkage is known: whether a free value does anything, which dimensions
 * `fit` names, and whether there are enough readings for them.
 */
import type { Definition, Unread, Value } from './definition.ts';
import { fitNames, type NamedDimension } from './fitNames.ts';
import { greatestSignal, tooGreatOf } from './greatestSignal.ts';
import type { FitDimension, Measured } from './measured.ts';
import { nearestWord } from './names.ts';
import type { Problem } from './problem.ts';
import { columnName } from './schema/columnName.ts';
import { KIND_WORDS, kindNamed, type Declared } from './schema/declared.ts';
import type { ReadMeasured } from './schema/measured.ts';
import { wordList } from './schema/record.ts';
import { problem } from './schema/shape.ts';
import { shortened } from './source/shortened.ts';
import type { Tune } from './tune.ts';
import { linkageValues } from './values.ts';

/** A definition whose readings are not settled yet. */
export interface ReadDefinition extends Omit<Definition, 'measured'> {
  readonly measured?: ReadMeasured & { readonly unread: readonly Unread[] };
}

/** @param isWhole whether nothing of the file was lost: what a lost part would need is not judged */
export function settle(
  { measured: read, ...rest }: ReadDefinition,
  declared: Declared,
  isWhole: boolean,
  report: (found: Problem) => void,
): Definition {
  const { tune } = rest;
  const settled: Definition = { ...rest, ...(tune !== undefined && isWhole && { tune: settleTune(tune, rest, report) }) };
  return read === undefined ? settled : { ...settled, measured: settleMeasured(read, settled, declared, isWhole, report) };
}

function settleTune(tune: Tune, definition: Definition, report: (found: Problem) => void): Tune {
  const used = usedLets(definition);
  const idle = tune.free.filter((free) => !used.has(free.let));
  for (const { name, nameSpan } of idle) {
    report(
      problem('not-free', nameSpan, `No dimension of the linkage rests on \`${name}\`, so choosing it changes nothing`, {
        cure: `Use \`${name}\` where it belongs, or take it out of \`free\``,
      }),
    );
  }
  if (idle.length === 0) return tune;
  const lost = idle.map(({ name, span }): Unread => ({ path: `tune.free.${name}`, span }));
  return { ...tune, free: tune.free.filter((free) => !idle.includes(free)), unread: [...tune.unread, ...lost] };
}

/** Indices of the `let` values on which figures of the linkage rest, through others, too. */
function usedLets(definition: Definition): ReadonlySet<number> {
  const used = new Set<number>();
  for (const { path, formula } of linkageValues(definition).values()) {
    if (!path.startsWith('let.')) for (const index of formula?.uses ?? []) used.add(index);
  }
  // A set hands out what is put in on the way, too.
  for (const index of used) for (const next of definition.lets[index]?.value.formula?.uses ?? []) used.add(next);
  return used;
}

function settleMeasured(
  { words, ...rest }: NonNullable<ReadDefinition['measured']>,
  definition: Definition,
  declared: Declared,
  isWhole: boolean,
  report: (found: Problem) => void,
): Measured {
  const names = fitNames(definition);
  const unread = [...rest.unread];
  const fit: FitDimension[] = [];
  for (const { name, span } of words ?? []) {
    const found = names.get(name);
    const wrong = found === undefined ? unknown(name, span, names, declared, definition, isWhole) : unfit(found, span, fit, definition);
    if (wrong !== undefined && wrong !== 'lost') report(wrong);
    if (found !== undefined && wrong === undefined) fit.push({ name, path: found.path, span });
    else unread.push({ path: 'measured.fit', span });
  }
  for (const { place: span, message, cure, isUnit } of beyondSensors(rest.runs, definition)) {
    report(problem('out-of-range', span, message, { cure }));
    // Single ones are left out of the fit, by their names.
    if (isUnit) unread.push({ path: 'measured.runs', span });
  }
  const settled: Measured = { ...rest, ...(words !== undefined && { fit }), unread };
  if (isWhole && unread.length === 0) {
    const few = tooFew(settled, definition);
    if (few !== undefined) report(few);
  }
  return settled;
}

/** Why a dimension cannot be found; undefined where it can. */
function unfit({ name, value }: NamedDimension, span: FitDimension['span'], before: readonly FitDimension[], definition: Definition) {
  const same = before.find((each) => each.name === name);
  if (same !== undefined) {
    return problem('wrong-value', span, `\`${name}\` stands twice in \`fit\``, {
      cure: 'Leave one of the two out',
      related: [{ span: same.span, message: 'The first is here' }],
    });
  }
  if (value?.formula === undefined) return undefined;
  const plain = plainBehind(value, definition);
  return problem('not-free', span, `\`${name}\` follows from a formula and cannot be found by itself`, {
    cure: plain.length === 0 ? 'Write a plain figure in its place' : `Write ${wordList(plain, 'or')}, from which it follows`,
    related: [{ span: value.span, message: 'The formula is here' }],
  });
}

function plainBehind({ formula }: Value, { lets }: Definition): readonly string[] {
  const seen = new Set(formula?.uses);
  for (const index of seen) for (const next of lets[index]?.value.formula?.uses ?? []) seen.add(next);
  return [...seen].flatMap((index) => {
    const entry = lets[index];
    return entry === undefined || entry.value.formula !== undefined ? [] : [entry.name];
  });
}

/** `lost` where what it names stands in the file and could not be read, which has been told there. */
function unknown(
  name: string,
  span: FitDimension['span'],
  names: ReadonlyMap<string, NamedDimension>,
  declared: Declared,
  { unread = [] }: Definition,
  isWhole: boolean,
): Problem | 'lost' {
  const owner = name.split('.', 1)[0] ?? '';
  const kind = kindNamed(declared, owner);
  if (kind !== undefined && unread.some(({ path }) => path.split('.')[1] === owner)) return 'lost';
  const own = [...names.keys()].filter((each) => each.startsWith(`${owner}.`));
  if (kind !== undefined && own.length === 0 && !isWhole) return 'lost';
  const nearest = nearestWord(name, own.length > 0 ? own : names.keys());
  const cures = nearest === undefined ? undefined : { cure: `Did you mean \`${nearest}\`?`, replacements: [{ span, text: nearest }] };
  if (own.length > 0) {
    const known = `Write ${wordList(own.slice(0, NAMES_SHOWN), 'or')}`;
    const message =
      name === owner
        ? `\`${name}\` is ${kind === undefined ? 'a place' : KIND_WORDS[kind]}; one of its dimensions is needed here`
        : `\`${owner}\` gives no dimension \`${shortened(name.slice(owner.length + 1))}\``;
    return problem(
      name === owner ? 'wrong-value' : 'unknown-name',
      span,
      message,
      name === owner ? { cure: known } : (cures ?? { cure: known }),
    );
  }
  return problem(
    'unknown-name',
    span,
    `There is no dimension \`${shortened(name)}\``,
    cures ?? { cure: 'Write a name of `let`, or `part.key`, such as `drag_link.length`' },
  );
}

const NAMES_SHOWN = 6;

/** Readings of the file's own rows that no sensor can have given. */
function beyondSensors(runs: Measured['runs'], definition: Definition) {
  return runs.flatMap(({ columns = [], readings }) => {
    if (readings.kind !== 'rows') return [];
    return columns.flatMap((column, index) => {
      const limit = greatestSignal(definition, column);
      if (limit === undefined) return [];
      const all = readings.rows.flatMap(({ values }) => values[index] ?? []);
      const beyond = all.filter(({ nominal }) => nominal > limit.most).map(({ nominal, span }) => ({ place: span, value: nominal }));
      return tooGreatOf(columnName(column), beyond, all.length, limit);
    });
  });
}

/** Fewer readings than there are dimensions to be found; undefined where that cannot be told, since a file has some of them. */
function tooFew({ fit, runs, nameSpan }: Measured, definition: Definition): Problem | undefined {
  const unknowns =
    fit?.length ??
    [...linkageValues(definition).values()].filter(({ tolerance, formula }) => tolerance !== undefined && formula === undefined).length;
  if (unknowns === 0) {
    return problem(
      'missing-key',
      nameSpan,
      '`measured` does not say what is to be found: it has no `fit`, and no dimension has a tolerance',
      {
        cure: 'Write `fit: […]` with names of `let` and `part.key`',
      },
    );
  }
  if (runs.length === 0 || runs.some(({ readings }) => readings.kind === 'file')) return undefined;
  const count = readingCount(runs);
  if (count >= unknowns) return undefined;
  return problem('too-few-readings', nameSpan, `${count} ${count === 1 ? 'reading' : 'readings'} cannot tell ${unknowns} dimensions`, {
    cure: fit === undefined ? 'Name in `fit` those that matter, or take more readings' : 'Take names out of `fit`, or take more readings',
  });
}

/** Readings of the runs whose rows stand in the file, those not taken and the pedal's positions left out. */
export function readingCount(runs: Measured['runs']): number {
  let count = 0;
  for (const { readings } of runs) {
    if (readings.kind !== 'rows') continue;
    for (const { values } of readings.rows) count += values.filter((value, index) => index > 0 && value !== undefined).length;
  }
  return count;
}
