/**
 * The value of one dimension at which an outcome of the solved linkage has a wanted value: all of them within bounds, as `crossings.ts` looks
 * for them.
 */
import type { ColumnOutcome, Outcome } from '../findings/finding.ts';
import { createFriction } from '../forces/friction/statics.ts';
import { createBuild, putDimensions } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import type { Column } from '../table/column.ts';
import { columnsOf } from '../table/columns.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import { travelOf, type Travel } from '../travel/travel.ts';
import { crossings, evenPlaces } from './crossings.ts';

export interface Question {
  /** Path of a dimension, e.g. `rods.link_a.length`; with the outcome `itself`, of any plain figure of the file. */
  readonly unknown: string;
  readonly outcome: Outcome;
  /** SI; `number` columns in percent are fractions. */
  readonly target: number;
  /** Least and greatest value of the unknown, SI: a length as a whole length, also where the file leaves it as drawn. */
  readonly from: number;
  readonly to: number;
  /** Values between the bounds at which the outcome is first taken, 2 at least; 129 where absent. */
  readonly starts?: number;
}

export type Solutions =
  | {
      readonly kind: 'solved';
      /** Values of the unknown, SI, rising; each with the outcome that it gives. Empty where there is none within the bounds. */
      readonly roots: readonly { readonly value: number; readonly outcome: number }[];
      /** Outcome nearest to the target that was met on the way, for saying how near it comes; undefined where none was solved. */
      readonly nearest: { readonly value: number; readonly outcome: number } | undefined;
    }
  | { readonly kind: 'unknown-dimension' | 'unknown-column' | 'empty-bounds' }
  /** Only where {@link Pieces} say so. */
  | { readonly kind: 'stopped' };

/** A search that is done piece by piece. Each piece is begun anew, with what is known answered from memory. */
export interface Pieces {
  /** Outcomes by the value of the unknown, SI; the search adds to them. */
  readonly known: Map<number, number>;
  /** Asked before each outcome that is not known yet: whether the piece ends there. */
  shouldStop(): boolean;
}

/** @param pieces where absent, it is searched to the end */
export function solveFor(mechanism: Mechanism, question: Question, pieces?: Pieces): Solutions {
  const { outcome, target, from, to, starts = STARTS } = question;
  if (outcome.kind === 'itself') return from < to ? writtenAs(question) : { kind: 'empty-bounds' };
  const dimension = mechanism.dimensions.find(({ path }) => path === question.unknown);
  if (dimension === undefined) return { kind: 'unknown-dimension' };
  if (!(from < to)) return { kind: 'empty-bounds' };
  const build = createBuild(mechanism);
  const columns = columnsOf(travelOf(build));
  if (!columns.some(({ name }) => name === outcome.column)) return { kind: 'unknown-column' };
  const offset = dimension.kind === 'as-drawn' ? drawnLength(mechanism, dimension.index) : 0;
  const values = Float64Array.from(mechanism.nominal);

  const outcomeAt = (value: number): number => {
    const known = pieces?.known.get(value);
    if (known !== undefined) return known;
    if (pieces?.shouldStop() === true) throw STOPPED;
    values[dimension.index] = value - offset;
    putDimensions(build, values);
    const travel = travelOf(build);
    const found = outcomeOf(travel, columnsOf(travel), outcome);
    pieces?.known.set(value, found);
    return found;
  };
  try {
    return { kind: 'solved', ...crossings(outcomeAt, { target, places: evenPlaces(from, to, starts) }) };
  } catch (error) {
    if (error === STOPPED) return { kind: 'stopped' };
    throw error;
  }
}

/** Leaves a search from within; it goes no further than `solveFor`. */
const STOPPED = new Error('The piece ends');

/** An outcome of a solved travel, SI; NaN where it has none. */
export function outcomeOf(travel: Travel, columns: readonly Column[], outcome: ColumnOutcome): number {
  const column = columns.find(({ name }) => name === outcome.column);
  if (column === undefined) return NaN;
  const read = outcome.kind !== 'at' && outcome.without !== undefined ? marginWithout(travel, column, outcome.without) : column.read;
  const figure = (at: number): number => read(travel.build, travel.poseAt(at));
  switch (outcome.kind) {
    case 'at':
      return figure(outcome.travel);
    case 'least':
      return leastOf(figure, travel.samples)?.value ?? NaN;
    case 'greatest':
      return greatestOf(figure, travel.samples)?.value ?? NaN;
  }
}

/** A lever's closing torque over friction with a spring off; what nothing rubs has a margin without bound. */
function marginWithout({ build, mechanism }: Travel, { owner }: Column, without: string): Column['read'] {
  const lever = mechanism.leverIndex.get(owner) ?? -1;
  const spring = mechanism.attached.springs.findIndex(({ name }) => name === without);
  if (spring < 0) return () => NaN;
  const solver = createFriction(build);
  const at = solver.changedBy(spring).indexOf(lever);
  return (_, pose) => {
    const { margin } = solver.comingBack(pose);
    return Math.min((at < 0 ? margin[lever] : solver.springOff(pose, spring).margin[at]) ?? NaN, NOTHING_RUBS);
  };
}

/** A figure that is its own outcome: the target, as far as the bounds let it. */
function writtenAs({ target, from, to }: Question): Solutions {
  const value = Math.min(to, Math.max(from, target));
  const nearest = { value, outcome: value };
  return { kind: 'solved', roots: value === target ? [nearest] : [], nearest };
}

/** More than any margin over friction. */
const NOTHING_RUBS = 1e6;
/** Enough for what a person gives as bounds. */
const STARTS = 129;

/** Drawn length of the rod whose length the file leaves out. */
function drawnLength(mechanism: Mechanism, dimension: number): number {
  const joint = mechanism.joints.find((each) => each.kind === 'rod' && each.lengthDimension === dimension);
  return joint?.kind === 'rod' ? createBuild(mechanism).parameters[joint.length]! : 0;
}
