/**
 * Where along the pedal what a spring brings changes its way, or begins and ends: roots known in closed form of a spring from a fixed
 * place to a pin. Its line meets the lever's axis where the squared distance of its ends, K₀ + K₁ cos φ + K₂ sin φ, is extreme in the
 * lever's rotation φ; it begins or ends where that distance is the free length.
 */
import type { LinearSpringModel, SpringModel } from '../kinematics/attached.ts';
import { trigRoots, type TrigPolynomial } from '../numeric/trigPolynomial.ts';
import { cableForms } from '../travel/jointForms.ts';
import { createFinder, merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';

/** Pedal travels, each list rising. */
export interface SpringPlaces {
  /** Where its line meets the axis of its lever. */
  readonly axis: readonly number[];
  /** Where it is as long as without load. */
  readonly free: readonly number[];
}

/** Undefined of a spring about an axis, and of one between two pins. */
export function springPlaces(travel: Travel, spring: SpringModel): SpringPlaces | undefined {
  return spring.kind !== 'torsion' && spring.from.kind === 'place' ? lineMeets(travel, spring, spring.from.place) : undefined;
}

function lineMeets({ build, places }: Travel, spring: LinearSpringModel, place: number): SpringPlaces {
  const p = build.parameters;
  const finder = createFinder(build);
  const { square, along: slope } = cableForms(p, spring.to, place);
  const at = (form: TrigPolynomial): readonly number[] =>
    merge(finder.rotationAt(spring.lever, places.levers[spring.lever]!, trigRoots(form)));
  const free = spring.freeLength === undefined ? NaN : p[spring.freeLength]!;
  const [mean, ...waves] = square;
  return { axis: at(slope), free: Number.isNaN(free) ? [] : at([mean - free * free, ...waves]) };
}

/** Samples with the places of a spring and the middles to their neighbours: what lies wholly between two places is then seen. */
export function withPlaces(samples: readonly number[], { axis, free }: SpringPlaces): readonly number[] {
  const places = merge(axis, free);
  if (places.length === 0) return samples;
  const all = merge(samples, places);
  const known = new Set(places);
  return merge(
    all,
    all.slice(1).flatMap((at, i) => (known.has(at) || known.has(all[i]!) ? [(at + all[i]!) / 2] : [])),
  );
}
