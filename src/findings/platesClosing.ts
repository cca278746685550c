/**
 * What closes the plates, by bodies: shafts that rods and couplings join without free play close together, and what is wrong with
 * their closing is said once of all of them.
 */
import { lostJoint, lostSpring } from '../definition/lost.ts';
import { springsReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { bodiesOf } from '../kinematics/rest.ts';
import type { Along } from '../travel/extremes.ts';
import { once } from '../travel/once.ts';
import { merge } from '../travel/places.ts';
import { closingAlong } from './forcesAlong.ts';
import { missingOf, springActions } from './springActions.ts';
import type { Study } from './study.ts';
import { listed } from './words.ts';
import { openingLevers } from './wayOfOpening.ts';

export interface PlatesBody {
  /** Levers with plates that close together, in the order of the file; one at least. */
  readonly levers: readonly LeverModel[];
  /** The springs whose closing torque comes to them. */
  readonly springs: readonly SpringModel[];
}

/** Every body with plates that the pedal opens the way it should. */
export const platesBodies = once((study: Study): readonly PlatesBody[] => {
  const { mechanism, build } = study.travel;
  const bodies = mechanism.groups.flatMap((group) => bodiesOf(build, group));
  const shafts = openingLevers(study).filter(({ plates }) => plates.length > 0);
  return bodies.flatMap((body): PlatesBody[] => {
    const levers = shafts.filter(({ index }) => body.levers.includes(index));
    const [first] = levers;
    return first === undefined ? [] : [{ levers, springs: springsReaching(mechanism, first.index) }];
  });
});

/** Whether a spring of the file could not be read: what closes the plates is then not known. */
export function hasUnreadSprings({ definition }: Study): boolean {
  return lostSpring(definition) !== undefined;
}

/** What in the file could not be read that may bring closing torque, in words; undefined where nothing is. */
export function unreadOfClosing(study: Study): string | undefined {
  if (hasUnreadSprings(study)) return 'a spring of the file';
  const joint = lostJoint(study.definition);
  return joint && `\`${joint.path}\``;
}

/** Closing torque at a lever over the travel. */
export interface Closing {
  /** N·m. */
  readonly torque: Along;
  /** Travels between which no spring begins, ends or passes its dead centre. */
  readonly samples: readonly number[];
}

/** Undefined where no spring comes to it, or the torque of one that does is not known. */
export function closingOf(study: Study, lever: LeverModel, springs: readonly SpringModel[]): Closing | undefined {
  if (springs.length === 0 || unreadOfClosing(study) !== undefined || springs.some((spring) => missingOf(spring) !== undefined))
    return undefined;
  const reaching = new Set(springs.map(({ name }) => name));
  const places = springActions(study).filter(({ spring }) => reaching.has(spring.name));
  return { torque: closingAlong(study, lever.index), samples: merge(study.travel.samples, ...places.map(({ samples }) => samples)) };
}

/** Why the torque of some of these springs, and with it what they close, is not known; undefined where it is. */
export function whyClosingUnknown(study: Study, springs: readonly SpringModel[]): string | undefined {
  const unread = unreadOfClosing(study);
  if (unread !== undefined) return `${unread} is not understood`;
  const unknown = springs.filter((spring) => missingOf(spring) !== undefined).map(({ name }) => name);
  return unknown.length === 0 ? undefined : `the torque of ${listed(unknown)} is not known`;
}
