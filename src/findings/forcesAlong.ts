/**
 * Closing torques, their margin over friction and the pedal's effort and release as functions of pedal travel, worked out once at each
 * place for all levers together: several rules and facts speak of them.
 */
import { isGiven } from '../forces/friction/missing.ts';
import type { SpringOff } from '../forces/friction/springsOff.ts';
import { createFriction, type FrictionSolver } from '../forces/friction/statics.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Along } from '../travel/extremes.ts';
import { once } from '../travel/once.ts';
import { stationFinder } from '../travel/stations.ts';
import { closingCause, forcesCause } from './forcesCause.ts';
import type { Study } from './study.ts';

/** Closing torque at a lever, N·m; the column `<lever>.closing`. @param without name of a spring that is taken off */
export function closingAlong(study: Study, lever: number, without?: string): Along {
  const { closingAt } = forcesOf(study);
  const figure = offAlong(study, lever, 'closing', without) ?? ((travel) => closingAt(travel, lever) + 0);
  return rememberedClosing(study, lever, figure, `closing without ${without}`);
}

/** N; the column `pedal.effort`. */
export const effortAlong = once((study: Study): Along => {
  const { rowAt, effort } = forcesOf(study);
  return rememberedForce(study, (travel) => effort[rowAt(travel)]!, 'effort');
});

/** N; the column `pedal.release`. */
export const releaseAlong = once((study: Study): Along => {
  const { rowAt, release } = forcesOf(study);
  return rememberedForce(study, (travel) => release[rowAt(travel)]!, 'release');
});

/** Closing torque over friction at a lever, as `FrictionStatics.margin`. @param without name of a spring that is taken off */
export function marginAlong(study: Study, lever: number, without?: string): Along {
  const { rowAt, margin, levers } = forcesOf(study);
  const figure = offAlong(study, lever, 'margin', without) ?? ((travel) => margin[rowAt(travel) * levers + lever]!);
  return rememberedClosing(study, lever, figure, `margin without ${without}`);
}

/** @param key of what follows from the forces alone, unlike that of any other */
export function rememberedForce(study: Study, figure: Along, key: string): Along {
  return study.travel.memory?.remember(figure, `force ${key}`, forcesCause(study)) ?? figure;
}

/** @param key of what follows from what closes a lever and from its friction, unlike that of any other at this lever */
export function rememberedClosing(study: Study, lever: number, figure: Along, key: string): Along {
  const { memory, mechanism } = study.travel;
  return memory?.remember(figure, `${key} at ${mechanism.levers[lever]!.name}`, closingCause(study, lever)) ?? figure;
}

/** Tension in a cable's pedal end while the pedal is pressed, N. */
export function tensionAlong(study: Study, cable: number): Along {
  const { rowAt, tension, cables } = forcesOf(study);
  return rememberedForce(study, (travel) => tension[rowAt(travel) * cables + cable]! + 0, `tension ${cable}`);
}

/** Rows of figures: one for each of the travel's samples, and a last one for whatever place between them was asked for last. */
interface ForcesAlong {
  readonly solver: FrictionSolver;
  /** Solves a place where that was not done. */
  rowAt(travel: number): number;
  /** Closing torque at a lever, of its row or, between the samples, without what rubs. */
  closingAt(travel: number, lever: number): number;
  readonly levers: number;
  readonly cables: number;
  readonly closing: Float64Array;
  readonly margin: Float64Array;
  readonly tension: Float64Array;
  readonly effort: Float64Array;
  readonly release: Float64Array;
}

const forcesOf = once((study: Study): ForcesAlong => {
  const cause = forcesCause(study);
  const make = (): ForcesAlong => solveForces(study);
  return cause === undefined ? make() : study.travel.memory!.kept('forces', cause, make);
});

function solveForces(study: Study): ForcesAlong {
  const { build, samples, poseAt, mechanism } = study.travel;
  const solver = createFriction(build);
  const numberOf = stationFinder(samples);
  const rows = samples.length + 1;
  const levers = mechanism.levers.length;
  const cables = mechanism.cables.length;
  const isKnown = new Uint8Array(rows);
  // Where there is friction its margin is asked for with each spring off, too.
  const rubs = isGiven(mechanism.friction);
  let between = NaN;
  const found: ForcesAlong = {
    solver,
    levers,
    cables,
    closing: new Float64Array(rows * levers),
    margin: new Float64Array(rows * levers),
    tension: new Float64Array(rows * cables),
    effort: new Float64Array(rows),
    release: new Float64Array(rows),
    closingAt(travel, lever) {
      if (numberOf(travel) >= 0 || travel === between) return found.closing[found.rowAt(travel) * levers + lever]!;
      return solver.frictionless(poseAt(travel)).closing[lever]!;
    },
    rowAt(travel) {
      const number = numberOf(travel);
      const row = number < 0 ? samples.length : number;
      if (number < 0 ? travel === between : isKnown[row] === 1) return row;
      const pose = poseAt(travel);
      const { frictionless, pressing, margin, effort, release } = solver.at(pose);
      found.closing.set(frictionless.closing, row * levers);
      found.margin.set(margin, row * levers);
      found.tension.set(pressing.tension, row * cables);
      found.effort[row] = effort;
      found.release[row] = release;
      if (number < 0) {
        between = travel;
        return row;
      }
      isKnown[row] = 1;
      if (rubs) offOf(study).fill(row, pose);
      return row;
    },
  };
  return found;
}

/** With a spring taken off; undefined for a lever at which that changes nothing, and where there is no such spring. */
function offAlong(study: Study, lever: number, what: 'closing' | 'margin', without: string | undefined): Along | undefined {
  if (without === undefined) return undefined;
  const spring = study.travel.mechanism.attached.springs.findIndex(({ name }) => name === without);
  if (spring < 0) return undefined;
  const { columns, sampleAt, betweenAt, numberOf } = offOf(study);
  const { levers, [what]: figures } = columns[spring]!;
  const at = levers.indexOf(lever);
  if (at < 0) return undefined;
  const width = levers.length;
  return (travel) => {
    const number = numberOf(travel);
    if (number < 0) return betweenAt(travel, spring)[what][at]! + 0;
    sampleAt(number);
    return figures[number * width + at]! + 0;
  };
}

/** Places between the samples; beside each dip a few are looked at. */
const MOST_BETWEEN = 256;

interface Off {
  /** By spring. Rows of figures, one for each of the travel's samples. */
  readonly columns: readonly { readonly levers: readonly number[]; readonly closing: Float64Array; readonly margin: Float64Array }[];
  readonly numberOf: (travel: number) => number;
  /** Solves a sample for all springs where that was not done. */
  sampleAt(number: number): void;
  /** Fills the row of a sample from what was solved last. */
  fill(number: number, pose: Pose): void;
  betweenAt(travel: number, spring: number): SpringOff;
}

const offOf = once((study: Study): Off => {
  const cause = forcesCause(study);
  const make = (): Off => solveOff(study);
  return cause === undefined ? make() : study.travel.memory!.kept('forces with a spring off', cause, make);
});

function solveOff(study: Study): Off {
  const { samples, poseAt, mechanism } = study.travel;
  const { solver } = forcesOf(study);
  const columns = mechanism.attached.springs.map((_, spring) => {
    const levers = solver.changedBy(spring);
    const figures = (): Float64Array => new Float64Array(samples.length * levers.length);
    return { levers, closing: figures(), margin: figures() };
  });
  const isKnown = new Uint8Array(samples.length);
  let last: { readonly travel: number; readonly spring: number; readonly off: SpringOff } | undefined;
  // What is least with one spring off is mostly least there with another off, too: a place that is asked for again is solved for all springs.
  const asked = new Map<number, number>();
  const solved = new Map<number, readonly SpringOff[]>();
  const solveAll = (travel: number, pose: Pose): readonly SpringOff[] => {
    const all = columns.map((_, spring): SpringOff => {
      const { levers, closing, margin } = solver.springOff(pose, spring);
      return { levers, closing: closing.slice(), margin: margin.slice() };
    });
    if (solved.size >= MOST_BETWEEN) solved.clear();
    solved.set(travel, all);
    return all;
  };
  const fill = (number: number, pose: Pose): void => {
    isKnown[number] = 1;
    last = undefined;
    for (let spring = 0; spring < columns.length; spring++) {
      const off = solver.springOff(pose, spring);
      const { levers, closing, margin } = columns[spring]!;
      closing.set(off.closing, number * levers.length);
      margin.set(off.margin, number * levers.length);
    }
  };
  return {
    columns,
    numberOf: stationFinder(samples),
    fill,
    sampleAt(number) {
      if (isKnown[number] === 1) return;
      const pose = poseAt(samples[number]!);
      solver.comingBack(pose);
      fill(number, pose);
    },
    betweenAt(travel, spring) {
      const known = solved.get(travel);
      if (known !== undefined) return known[spring]!;
      if (last?.travel === travel && last.spring === spring) return last.off;
      const pose = poseAt(travel);
      solver.comingBack(pose);
      const before = asked.get(travel);
      if (before !== undefined && before !== spring) return solveAll(travel, pose)[spring]!;
      if (asked.size >= MOST_BETWEEN) asked.clear();
      asked.set(travel, spring);
      last = { travel, spring, off: solver.springOff(pose, spring) };
      return last.off;
    },
  };
}
