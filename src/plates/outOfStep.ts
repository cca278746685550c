/**
 * How far two shafts with plates are out of step: in opening, and in open area, which is what idles unevenly.
 *
 * Differences are those of the first shaft less the second: of opening in rad, of area relative to the mean of both, so that 0.1 is
 * 10 % and 2 means that one is shut. Below and above 5° is told by the mean of both openings: near idle a tenth of a degree is worth
 * more air than half a degree further up.
 *
 * Plates of the same bore and shaft with another seat or idle pass other air at the same opening. Their difference in area is also told as
 * the opening that would make it, (A₁ − A₂) / (dA₂/dφ), so that it can be held against the same limit as a difference in opening.
 *
 * The greatest difference is taken at the travel's samples, where both areas have corners, and refined between; a peak that lies
 * wholly between two of 201 stations and no turning place of a lever may be missed.
 */
import type { PlatesModel } from '../kinematics/attached.ts';
import type { Cause } from '../travel/causes.ts';
import { greatestOf, type Along, type Extreme } from '../travel/extremes.ts';
import { merge } from '../travel/places.ts';
import { stationFinder } from '../travel/stations.ts';
import type { Travel } from '../travel/travel.ts';
import { greatestOpenArea } from './openArea.ts';
import { areaAt, areaSamples, areaSlopeAt, openingAt, plateShape, platesCause } from './platesAt.ts';

/** rad: below this mean opening shafts have to keep in step more closely. Common practice, no source. */
export const NEAR_IDLE = 5 * (Math.PI / 180);

/**
 * Of the greatest possible area: where both plates together open less than this in the mean, a difference in area means nothing, since
 * as much leaks past a shut plate. Common practice, no source.
 */
export const SHUT = 1e-3;

export interface StepDifference {
  /** First less second, rad, of the greatest size; undefined where the stretch of the pedal holds no place with a value. */
  readonly opening: Extreme | undefined;
  /** First less second, over the mean of both; undefined likewise, and where both are as good as shut. */
  readonly area: Extreme | undefined;
  /** The opening of the second that would make the difference in area, rad; undefined likewise, and where an opening would make none. */
  readonly air: Extreme | undefined;
}

export interface OutOfStep {
  readonly atRest: StepDifference;
  readonly nearIdle: StepDifference;
  readonly above: StepDifference;
}

/** @param first, second plates on two levers that the pedal moves */
export function outOfStep(travel: Travel, first: PlatesModel, second: PlatesModel): OutOfStep {
  const search = (): OutOfStep => searchSteps(travel, first, second, (figure, what) => stepFigure(travel, first, second, what, figure));
  const cause = pairCause(travel, first, second);
  return cause === undefined ? search() : travel.memory!.kept(keyOf(first, second), cause, search);
}

/** A figure of both shafts of which what is found is kept. @param what it is, unlike any other of both */
export function stepFigure(travel: Travel, first: PlatesModel, second: PlatesModel, what: string, figure: Along): Along {
  const cause = pairCause(travel, first, second);
  return cause === undefined ? figure : travel.memory!.remember(figure, `${keyOf(first, second)} ${what}`, cause);
}

/** Where the two are compared. */
export function stepSamples(travel: Travel, first: PlatesModel, second: PlatesModel): readonly number[] {
  const make = (): readonly number[] => merge(areaSamples(travel, first), areaSamples(travel, second));
  const cause = pairCause(travel, first, second);
  return cause === undefined ? make() : travel.memory!.kept(`samples of ${keyOf(first, second)}`, cause, make);
}

function keyOf(first: PlatesModel, second: PlatesModel): string {
  return `step ${first.name} ${second.name}`;
}

/** Undefined where nothing is remembered. */
function pairCause(travel: Travel, first: PlatesModel, second: PlatesModel): Cause | undefined {
  const [one, other] = [platesCause(travel, first), platesCause(travel, second)];
  if (one === undefined || other === undefined) return undefined;
  return travel.memory?.cause(keyOf(first, second), { after: [one, other], words: '', figures: [] });
}

/** Keeps what is found of a figure of both shafts, by what it is. */
type Remember = (figure: Along, what: string) => Along;

function searchSteps(travel: Travel, first: PlatesModel, second: PlatesModel, remember: Remember): OutOfStep {
  const samples = stepSamples(travel, first, second);
  const step = stepAlong(travel, first, second, samples);
  const within = (where: keyof OutOfStep, at: readonly number[], isWithin: (step: Step) => boolean): StepDifference => {
    const greatest = (what: keyof StepDifference, same: number): Extreme | undefined => {
      const figure = (travelled: number): number => (isWithin(step(travelled)) ? step(travelled)[what] : NaN);
      return greatestSize(figure, at, same, (size) => remember(size, `${where} ${what}`));
    };
    return { opening: greatest('opening', SAME_OPENING), area: greatest('area', SAME_AREA), air: greatest('air', SAME_OPENING) };
  };
  return {
    atRest: within('atRest', [0], () => true),
    nearIdle: within('nearIdle', samples, ({ mean }) => mean < NEAR_IDLE),
    above: within('above', samples, ({ mean }) => mean >= NEAR_IDLE),
  };
}

/** rad, and a fraction; less is rounding, which is not to be searched for its greatest. */
const SAME_OPENING = 1e-12;
const SAME_AREA = 1e-10;

/** Both shafts at one place of the pedal. */
interface Step {
  /** Of both openings, rad. */
  readonly mean: number;
  readonly opening: number;
  /** NaN where both are as good as shut. */
  readonly area: number;
  /** rad; NaN likewise, and where opening the second changes nothing. */
  readonly air: number;
}

/** Each sample is worked out once: all figures are searched over the same ones. */
function stepAlong(
  { build, poseAt }: Travel,
  first: PlatesModel,
  second: PlatesModel,
  samples: readonly number[],
): (travel: number) => Step {
  const numberOf = stationFinder(samples);
  const known: (Step | undefined)[] = [];
  /** Where the mean opening comes to its limit, each figure is searched for the same place. */
  const between = new Map<number, Step>();
  const shut = (SHUT * (greatestOpenArea(plateShape(build, first)) + greatestOpenArea(plateShape(build, second)))) / 2;
  return (travel) => {
    const number = numberOf(travel);
    const found = number < 0 ? between.get(travel) : known[number];
    if (found !== undefined) return found;
    const atFirst = poseAt(travel, first.lever);
    const one = openingAt(build, atFirst, first.lever);
    const areaOne = areaAt(build, atFirst, first);
    const atSecond = poseAt(travel, second.lever);
    const other = openingAt(build, atSecond, second.lever);
    const areaOther = areaAt(build, atSecond, second);
    const area = (areaOne + areaOther) / 2;
    const slope = areaSlopeAt(build, atSecond, second);
    const isOpen = area > shut;
    const step = {
      mean: (one + other) / 2,
      opening: one - other,
      area: isOpen ? (areaOne - areaOther) / area : NaN,
      air: isOpen && slope > 0 ? (areaOne - areaOther) / slope : NaN,
    };
    if (number < 0) between.set(travel, step);
    else known[number] = step;
    return step;
  };
}

/** The figure where its size is greatest, with its sign. */
function greatestSize(figure: Along, samples: readonly number[], same: number, remember: (size: Along) => Along): Extreme | undefined {
  const size = remember((at) => {
    const value = Math.abs(figure(at));
    return value < same ? 0 : value;
  });
  const found = greatestOf(size, samples);
  return found && { value: figure(found.travel), travel: found.travel };
}
