/**
 * Whether the plates of a linkage come back from everywhere in its travel against friction, and where the least is left to bring them:
 * closing torque over all that rubs, as `friction/statics.ts` has both, at the shaft and at each lever that would hold it open.
 */
import { isGiven, missingFriction } from '../forces/friction/missing.ts';
import { createFriction } from '../forces/friction/statics.ts';
import { createMotion } from '../forces/motion.ts';
import { missingOf, NO_TORQUE } from '../forces/springLack.ts';
import { springPlaces, withPlaces } from '../forces/springPlaces.ts';
import { springsReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Pose } from '../kinematics/pose.ts';
import { leastOf, type Along } from '../travel/extremes.ts';
import { merge } from '../travel/places.ts';
import { stationFinder } from '../travel/stations.ts';
import { fixed } from '../travel/words.ts';
import type { Travel } from '../travel/travel.ts';
import { chainsOf, holds, type Chain } from './chains.ts';
import type { Outcome, PlatesClosing, Weakest } from './failure.ts';
import { listed } from './words.ts';

/** Of every body with plates, a place of the travel from one step to the next. @param without name of a spring that is taken off */
export function* platesReturning(travel: Travel, without?: string): Generator<void, readonly PlatesClosing[]> {
  const { mechanism, build } = travel;
  const motion = createMotion(build);
  const samples = samplesOf(travel, without);
  const returnsAt = alongTravel(travel, samples, without);
  const chains = chainsOf(mechanism, motion).map((chain) => ({ chain, blind: whyBlind(travel, chain, samples, without) }));
  yield;
  if (chains.some(({ blind }) => blind === undefined)) {
    for (const at of samples) {
      returnsAt(at);
      yield;
    }
  }
  const plates: PlatesClosing[] = [];
  for (const { chain, blind } of chains) {
    const judged =
      blind === undefined
        ? judge(travel, chain, samples, returnsAt)
        : ({ outcome: 'not-checked', why: blind, weakest: undefined } as const);
    plates.push({ levers: chain.shafts.map(({ name }) => name), ...judged, heldAt: undefined });
    yield;
  }
  return plates;
}

interface Judged {
  readonly outcome: Outcome;
  readonly why: string | undefined;
  readonly weakest: Weakest | undefined;
  readonly butPedal?: true;
}

/** Of a chain of which something can be said. */
function judge(travel: Travel, chain: Chain, samples: readonly number[], returnsAt: ReturnsAt): Judged {
  const { mechanism } = travel;
  const given = isGiven(mechanism.friction);
  const held = heldAlong(travel, chain);
  const weakest = weakestOf(travel, chain, samples, returnsAt, held);
  if (weakest === undefined) return { outcome: 'not-checked', why: 'its closing torque is not known', weakest };
  const { lever, torque, margin } = weakest;
  const [shaft] = chain.shafts;
  const names = listed(chain.shafts.map(({ name }) => name));
  const holding = lever === shaft?.name ? '' : `, which holds ${names} open`;
  if (!(torque > NO_TORQUE)) return { outcome: 'stays-open', why: `nothing brings ${lever} back${holding}`, weakest };
  if (margin !== undefined && !(margin > 1)) return { outcome: 'stays-open', why: `friction holds ${lever}${holding}`, weakest };
  if (isUntold(travel, chain, samples, returnsAt, held))
    return { outcome: 'not-checked', why: 'at a dead centre its closing torque has no figure', weakest };
  if (!given) return { outcome: 'not-checked', why: 'the file gives no friction; without any, it closes', weakest };
  const left = frictionLeftOut(travel);
  if (left === undefined) {
    // What the pedal holds open until it has come back itself is not in the file.
    if (mechanism.drive.kind === 'cable') return { outcome: 'not-checked', why: BUT_PEDAL, weakest, butPedal: true };
    return { outcome: 'closes', why: undefined, weakest };
  }
  return { outcome: 'not-checked', why: `some friction at ${left} is not given; with what is, it closes`, weakest };
}

/** Why nothing can be said of what closes a chain; undefined where something can. */
function whyBlind(
  { mechanism, poseAt }: Travel,
  { shafts, links }: Chain,
  samples: readonly number[],
  without: string | undefined,
): string | undefined {
  const all = mechanism.attached.springs;
  if (all.length === 0) return 'the file describes no springs';
  const reaching = new Set(links.flatMap(({ lever }) => springsReaching(mechanism, lever.index)));
  const unknown = [...reaching].filter((spring) => spring.name !== without && missingOf(spring) !== undefined);
  if (unknown.length > 0) return `the torque of ${listed(unknown.map(({ name }) => name))} is not known`;
  const { drive, senses } = mechanism;
  const isTorn = (pose: Pose): boolean =>
    !(drive.kind === 'lever' && Number.isNaN(pose.rotation[drive.lever]!)) &&
    links.some(({ lever }) => Number.isNaN(pose.rotation[lever.index]!));
  if (samples.some((at) => isTorn(poseAt(at)))) return 'it cannot be assembled over the whole travel';
  const [shaft] = shafts;
  if (shaft === undefined) return undefined;
  let least = 0;
  let most = 0;
  for (const at of samples) {
    const opening = senses[shaft.index]! * poseAt(at).rotation[shaft.index]!;
    least = Math.min(least, opening);
    most = Math.max(most, opening);
  }
  return -least > most ? `the pedal closes ${shaft.name} instead of opening it` : undefined;
}

/** The parts whose friction is left out for want of figures; undefined where there are none. */
function frictionLeftOut({ mechanism }: Travel): string | undefined {
  const names = [...new Set(missingFriction(mechanism).map(({ source }) => source.name))];
  if (names.length === 0) return undefined;
  return names.length > MOST_NAMED
    ? `${names.slice(0, MOST_NAMED).join(', ')} and ${fixed(names.length - MOST_NAMED, 0)} more`
    : listed(names);
}

const MOST_NAMED = 4;
const BUT_PEDAL = 'plates close; the pedal’s return is not checked, since the file gives of it the cable alone';

/** Of each link, whether at a pedal travel it holds the shaft where it stands. */
function heldAlong({ build, mechanism, poseAt }: Travel, { links }: Chain): readonly ((travel: number) => boolean)[] {
  const motion = createMotion(build);
  return links.map((_, number) => {
    const nearer = links.slice(0, number + 1);
    return (travel) => {
      if (number === 0) return true;
      const pose = poseAt(travel);
      motion.at(pose);
      return nearer.every((link, i) => i === 0 || holds(mechanism, motion, pose, link, nearer[i - 1]!));
    };
  });
}

/** Whether at some place a link holds the shaft with a closing torque that has no figure, as at a dead centre. */
function isUntold(travel: Travel, { links }: Chain, samples: readonly number[], returnsAt: ReturnsAt, held: Held): boolean {
  return links.some(({ lever: { index } }, number) =>
    samples.some(
      (at) => !Number.isNaN(travel.poseAt(at).rotation[index]!) && Number.isNaN(returnsAt(at).closing[index]!) && held[number]!(at),
    ),
  );
}

type Held = ReturnType<typeof heldAlong>;

/** Of the links that hold the shaft: first where nothing closes, else where closing torque over friction is least. */
function weakestOf(
  { mechanism, poseAt }: Travel,
  chain: Chain,
  samples: readonly number[],
  returnsAt: ReturnsAt,
  held: Held,
): Weakest | undefined {
  const given = isGiven(mechanism.friction);
  const [shaft] = chain.shafts;
  if (shaft === undefined) return undefined;
  const places = chain.links.flatMap(({ lever: { index, name } }, number): readonly Place[] => {
    const isHeld = held[number]!;
    const torque: Along = (at) => (isHeld(at) ? returnsAt(at).closing[index]! : NaN);
    const least = leastOf(torque, samples);
    if (least === undefined) return [];
    if (!(least.value > NO_TORQUE) || !given) return [{ index, name, at: least.travel, rank: Math.min(least.value - NO_TORQUE, 0) }];
    const margin: Along = (at) => (isHeld(at) ? Math.min(returnsAt(at).margin[index]!, PLENTY) : NaN);
    const weak = leastOf(margin, samples);
    return [{ index, name, at: weak?.travel ?? least.travel, rank: weak?.value ?? PLENTY }];
  });
  const [first, ...more] = places;
  if (first === undefined) return undefined;
  const { index, name, at } = more.reduce((worst, each) => (each.rank < worst.rank ? each : worst), first);
  const { closing, margin } = returnsAt(at);
  const torque = closing[index]!;
  const over = !given ? undefined : margin[index]!;
  const opening = mechanism.senses[shaft.index]! * poseAt(at).rotation[shaft.index]!;
  return {
    lever: name,
    torque,
    margin: over,
    friction: over === undefined ? undefined : torque > NO_TORQUE ? torque / over : undefined,
    opening,
  };
}

interface Place {
  readonly index: number;
  readonly name: string;
  readonly at: number;
  /** What is compared: a torque below none, else the margin. */
  readonly rank: number;
}

/** Where nothing rubs the margin has no bound. */
const PLENTY = 1e6;

type ReturnsAt = (travel: number) => { readonly closing: Float64Array; readonly margin: Float64Array };

/** At the samples they are kept; elsewhere they hold until the next place is asked for. */
function alongTravel({ build, poseAt }: Travel, samples: readonly number[], without: string | undefined): ReturnsAt {
  const solver = createFriction(build);
  const numberOf = stationFinder(samples);
  const known: (ReturnType<ReturnsAt> | undefined)[] = [];
  return (travel) => {
    const number = numberOf(travel);
    const before = known[number];
    if (before !== undefined) return before;
    const { frictionless, margin } = solver.comingBack(poseAt(travel), without);
    const found = { closing: frictionless.closing, margin };
    return number < 0 ? found : (known[number] = { closing: found.closing.slice(), margin: margin.slice() });
  };
}

/** Travels between which no spring begins, ends or passes its dead centre. */
function samplesOf(travel: Travel, without: string | undefined): readonly number[] {
  const within = (spring: SpringModel): readonly number[] => {
    const places = spring.name === without ? undefined : springPlaces(travel, spring);
    return places === undefined ? [] : withPlaces(travel.samples, places);
  };
  return merge(travel.samples, ...travel.mechanism.attached.springs.map(within));
}
