/**
 * What a rule sees: the solved travel, its columns, and the limits that hold.
 */
import type { Definition, LimitKey, RodEnds, Value } from '../definition/definition.ts';
import type { FitDimension } from '../definition/measured.ts';
import type { Travel } from '../travel/travel.ts';
import { lookedAt, readBy } from '../travel/along.ts';
import { following, leastOf, rangesBelow, upsideDown, type Along, type Extreme } from '../travel/extremes.ts';
import type { Column } from '../table/column.ts';
import type { Finding, FindingSeverity, Mend, Outcome, TravelRange } from './finding.ts';
import { forcesCause } from './forcesCause.ts';
import { defaultLimit, type LimitPair } from './limits.ts';

export interface Study {
  readonly definition: Definition;
  readonly travel: Travel;
  readonly columns: ReadonlyMap<string, Column>;
  /** Columns already asked for, as functions of pedal travel. */
  readonly figures: Map<string, Along>;
  /** What the readings in the file cannot tell of its dimensions; absent where nobody works that out. Asked once typing rests. */
  readonly untold?: () => readonly UntoldDimensions[];
}

/** Dimensions of `fit` that the readings tell together and not, or hardly, one by one. */
export interface UntoldDimensions {
  /** Two or more, as the block names them and where. */
  readonly dimensions: readonly Pick<FitDimension, 'name' | 'span'>[];
  /** Of two that are hardly told apart: how their errors go together, −1 to 1. Undefined where nothing tells them apart. */
  readonly correlation: number | undefined;
}

/** A rule: all findings of one kind. */
export type Rule = (study: Study) => readonly Finding[];

export function createStudy(definition: Definition, travel: Travel, columns: readonly Column[]): Study {
  return { definition, travel, columns: new Map(columns.map((column) => [column.name, column])), figures: new Map() };
}

/** A column as a function of pedal travel; NaN everywhere for one that the file does not have. */
export function along(study: Study, name: string): Along {
  const known = study.figures.get(name);
  if (known !== undefined) return known;
  const column = study.columns.get(name);
  const figure = column === undefined ? () => NaN : columnAlong(study, column);
  study.figures.set(name, figure);
  return figure;
}

function columnAlong(study: Study, column: Column): Along {
  const { travel } = study;
  const { build, poseAt, poseOf, memory } = travel;
  const figure = readBy(
    (at) => column.read(build, poseAt(at, column.lever)),
    travel,
    (number) => column.read(build, poseOf(number)),
  );
  const { lever } = column;
  if (lever !== undefined && column.forces !== true) lookedAt(figure, travel, () => travel.samplesTo(lever));
  const way = column.forces ? forcesCause(study) : column.lever === undefined ? undefined : memory?.levers[column.lever];
  if (memory === undefined || way === undefined) return figure;
  const { name } = column;
  const cause = column.own ? memory.cause(`column ${name}`, { after: [way], words: '', figures: column.own(build) }) : way;
  return memory.remember(figure, name, cause);
}

/** A figure that follows from the way of a lever alone. @param what it is, unlike any other of that lever */
export function leverFigure({ travel }: Study, lever: number, what: string, figure: Along): Along {
  const { memory, mechanism } = travel;
  lookedAt(figure, travel, () => travel.samplesTo(lever));
  return memory?.remember(figure, `${what} of ${mechanism.levers[lever]!.name}`, memory.levers[lever]) ?? figure;
}

/** The limits in force: the file's where it gives them, else the default. SI. */
export function limitOf(study: Study, key: LimitKey, kind?: string): LimitPair {
  const standard = defaultLimit(key, kind);
  const given = study.definition.limits.find((limit) => limit.key === key);
  if (given === undefined) return standard;
  return { warning: given.warning.nominal, error: given.error?.nominal, from: 'limits of this file' };
}

/** How far the ends of a rod may tilt: what they are given for, else by their kind. */
export function tiltLimit(study: Study, ends: RodEnds): LimitPair {
  if (ends.misalignment === undefined) return limitOf(study, 'misalignment', ends.kind);
  const own = ends.misalignment.nominal;
  return { warning: own, error: own, from: 'misalignment given for these ends' };
}

export interface Trespass {
  readonly severity: FindingSeverity;
  readonly worst: { readonly value: number; readonly travel: number };
  readonly limit: number;
  readonly ranges: readonly TravelRange[];
}

/**
 * Whether a figure comes below (`way` = 1) or above (`way` = −1) its limits anywhere, and how far. `limit` is the one that it is
 * reported for; `ranges` are where it is beyond the warning limit, which takes in the other.
 * @param leaveOut which of these ranges are none of its business; all count where absent
 * @param samples travels at which it is looked at; those of the travel where absent
 */
export function trespass(
  study: Study,
  figure: Along,
  limit: LimitPair,
  way: 1 | -1,
  leaveOut?: (range: TravelRange) => boolean,
  samples: readonly number[] = study.travel.samples,
): Trespass | undefined {
  const directed = way > 0 ? figure : upsideDown(figure);
  const within = following(figure, (value) => way * (value - limit.warning), `${way} beyond ${limit.warning}`);
  const rangesOf = (): readonly TravelRange[] => rangesBelow(within, samples);
  const ranges = leaveOut && rangesOf().filter((range) => !leaveOut(range));
  const worst = ranges === undefined ? leastOf(directed, samples) : leastWithin(directed, samples, ranges);
  if (worst === undefined || !(worst.value < way * limit.warning - SAME)) return undefined;
  const failed = limit.error !== undefined && worst.value < way * limit.error - SAME;
  const held = failed ? limit.error : limit.warning;
  return {
    severity: failed ? 'error' : 'warning',
    worst: { value: way * worst.value, travel: worst.travel },
    limit: held,
    ranges: ranges ?? rangesOf(),
  };
}

/** Undefined where there are no ranges. */
function leastWithin(figure: Along, samples: readonly number[], ranges: readonly TravelRange[]): Extreme | undefined {
  const least = ranges.flatMap(({ from, to }) => leastOf(figure, [from, ...samples.filter((at) => at > from && at < to), to]) ?? []);
  return least.reduce<Extreme | undefined>((best, each) => (best === undefined || each.value < best.value ? each : best), undefined);
}

/** rad or m; a figure drawn exactly on its limit keeps it. */
const SAME = 1e-12;

/** What would mend a finding, where the file has such a figure; nothing where it follows from a formula or is not there. */
export function mendBy(study: Study, unknown: string, outcome: Outcome, target: number): { readonly mend?: Mend } {
  const known = study.travel.mechanism.dimensions.some(({ path }) => path === unknown);
  return known ? { mend: { unknown, outcome, target } } : {};
}

/**
 * A finding that goes when one figure is written anew, be it a dimension of the linkage or not, such as a drum's groove; nothing where
 * it follows from a formula or is not in the file.
 * @param target SI
 */
export function writeBy(value: Value | undefined, target: number): { readonly mend?: Mend } {
  return value === undefined || value.formula !== undefined ? {} : { mend: { unknown: value.path, outcome: { kind: 'itself' }, target } };
}
