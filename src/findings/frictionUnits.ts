/**
 * What has to come back by itself against friction: levers that rods, slots and couplings join turn together, and are held by friction
 * together. A lever between the pedal and a shaft that stays where it is holds the shaft by its cable, so each counts.
 */
import { isGiven } from '../forces/friction/missing.ts';
import { springsReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { bodiesOf } from '../kinematics/rest.ts';
import { leastOf, valuesOver, type Along } from '../travel/extremes.ts';
import { once } from '../travel/once.ts';
import { merge } from '../travel/places.ts';
import { closingAlong, marginAlong, rememberedClosing } from './forcesAlong.ts';
import type { LimitPair } from './limits.ts';
import { whyClosingUnknown } from './platesClosing.ts';
import { NO_TORQUE, springActions } from './springActions.ts';
import type { Study } from './study.ts';
import { drivenLevers, goesOtherwise } from './wayOfOpening.ts';

export interface FrictionUnit {
  /** The one that is named: the first with plates, else the first from the pedal. */
  readonly lever: LeverModel;
  /** Those with plates; empty where none has. */
  readonly shafts: readonly LeverModel[];
  /** The springs whose closing torque comes to it. */
  readonly springs: readonly SpringModel[];
  /** The travel's samples, and those between which none of these springs begins, ends or passes its dead centre. */
  readonly samples: readonly number[];
}

/** Those that the pedal opens the way it should, whose springs are all known. */
export const frictionUnits = once((study: Study): readonly FrictionUnit[] => {
  const { mechanism, build } = study.travel;
  if (!isGiven(mechanism.friction)) return [];
  const driven = drivenLevers(study).filter((lever) => !goesOtherwise(study, lever));
  return mechanism.groups
    .flatMap((group) => bodiesOf(build, group))
    .flatMap((body): FrictionUnit[] => {
      const levers = driven.filter(({ index }) => body.levers.includes(index));
      const shafts = levers.filter(({ plates }) => plates.length > 0);
      const lever = shafts[0] ?? levers.find(({ index }) => index === body.root);
      const springs = lever === undefined ? [] : springsReaching(mechanism, lever.index);
      if (lever === undefined || springs.length === 0 || whyClosingUnknown(study, springs) !== undefined) return [];
      return [{ lever, shafts, springs, samples: samplesOf(study, springs) }];
    });
});

function samplesOf(study: Study, springs: readonly SpringModel[]): readonly number[] {
  const { samples } = study.travel;
  const names = new Set(springs.map(({ name }) => name));
  const more = springActions(study).filter((action) => names.has(action.spring.name) && action.samples !== samples);
  return more.length === 0 ? samples : merge(samples, ...more.map((action) => action.samples));
}

/**
 * Closing torque over friction, at most `PLENTY`. NaN where the springs bring nothing to it: whether they should is asked by other rules.
 * @param without name of a spring that is taken off
 */
export function unitMargin(study: Study, { lever: { index } }: FrictionUnit, without?: string): Along {
  const margin = marginAlong(study, index, without);
  const closing = closingAlong(study, index, without);
  const figure: Along = (travel) => (closing(travel) > NO_TORQUE ? Math.min(margin(travel), PLENTY) : NaN);
  return rememberedClosing(study, index, figure, `unit margin without ${without}`);
}

/**
 * Whether a margin comes near a limit at any sample. One that stays `FAR` times above its limit at all of them is taken not to come below it
 * between them, which saves the search. Not proved: every turning place of the joints is a sample, but where friction turns is not known in
 * closed form. Where a spring begins, ends or passes its dead centre it may come down steeply between two samples: that is always searched.
 */
export function comesNear({ travel }: Study, { samples }: FrictionUnit, margin: Along, limit: number): boolean {
  if (samples !== travel.samples) return true;
  return valuesOver(margin, samples).some((value) => value <= FAR * limit);
}

const FAR = 2;

/** Whether friction holds it anywhere with all springs on. */
export function isLocked(study: Study, unit: FrictionUnit): boolean {
  const { samples } = unit;
  const margin = unitMargin(study, unit);
  const least = comesNear(study, unit, margin, LOCKS_AT) ? leastOf(margin, samples) : undefined;
  return least !== undefined && least.value < LOCKS_AT;
}

/** Closing torque over friction: where they are alike, it stays where it is. */
export const LOCKS_AT = 1;
export const LOCKS: LimitPair = {
  warning: LOCKS_AT,
  error: LOCKS_AT,
  from: 'where friction is as great as what closes it, it stays where it is',
};

/** Where nothing rubs the margin has no bound. */
const PLENTY = 1e6;
