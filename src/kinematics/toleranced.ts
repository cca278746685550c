/**
 * What varies from one build of a file to the next: the dimensions that it gives a tolerance, and the play of rod ends and slots.
 *
 * A dimension with a tolerance is centred: one that may be `plus` greater or `minus` less stands at its middle,
 * nominal + (plus − minus) / 2, and may be (plus + minus) / 2 off it either way.
 */
import type { Dimension } from '../definition/dimensions.ts';
import type { Span } from '../definition/span.ts';
import type { Mechanism, MechanismDimension, RodJoint, SlotJoint } from './model.ts';

export interface Toleranced {
  /** Index into `mechanism.dimensions`; −1 for play, which is none. */
  readonly index: number;
  /** Undefined for a tolerance. */
  readonly play?: Play;
  /** Where it stands in the file, e.g. `let.reach`. */
  readonly path: string;
  readonly span: Span;
  readonly dimension: Dimension;
  /** SI. */
  readonly middle: number;
  /** SI, above 0. */
  readonly half: number;
  /** In which the file has it; absent where that is not known. */
  readonly unit?: string;
}

/** In the order of the mechanism's dimensions; empty where the linkage has no tolerance. One that is ± 0 is left out. */
export function tolerancedDimensions({ dimensions }: Mechanism): readonly Toleranced[] {
  return dimensions.flatMap((each): Toleranced[] => {
    const half = each.tolerance === undefined ? 0 : (each.tolerance.plus + each.tolerance.minus) / 2;
    return half > 0 ? [{ ...common(each), middle: middleOf(each), half }] : [];
  });
}

/** Every dimension in its middle, SI, as many as the mechanism has. */
export function middleValues({ dimensions }: Mechanism): Float64Array {
  return Float64Array.from(dimensions, middleOf);
}

function middleOf({ nominal, tolerance }: MechanismDimension): number {
  return tolerance === undefined ? nominal : nominal + (tolerance.plus - tolerance.minus) / 2;
}

function common({ index, path, span, dimension }: MechanismDimension): Omit<Toleranced, 'middle' | 'half'> {
  return { index, path, span, dimension };
}

/** Play of one pin: it may stand half of it to either side, and so makes the rod longer or shorter, or stands off the middle of its slot. */
export interface Play {
  readonly joint: RodJoint | SlotJoint;
  /** E.g. `bellcrank.out`. */
  readonly pin: string;
}

/** All that varies from build to build: tolerances, then play. */
export function variedFigures(mechanism: Mechanism): readonly Toleranced[] {
  const plays = playsOf(mechanism);
  // Play counts whole, its own tolerance with it.
  const counted = new Set(plays.map(({ path }) => path));
  return [...tolerancedDimensions(mechanism).filter(({ path }) => !counted.has(path)), ...plays];
}

/**
 * In the order of the load path, of a rod that at its driving end first; each as much as its tolerance lets it be. `lost` of a rod is meant to
 * be there, and is no play.
 */
function playsOf({ joints }: Mechanism): readonly Toleranced[] {
  return joints.flatMap((joint): readonly Toleranced[] => {
    if (joint.kind !== 'rod' && joint.kind !== 'slot') return [];
    const value = joint.kind === 'rod' ? joint.source.ends?.play : joint.source.play;
    const most = value === undefined ? 0 : value.nominal + (value.tolerance?.plus ?? 0);
    if (value === undefined || !(most > 0)) return [];
    const pins = joint.kind === 'rod' ? [joint.source.from, joint.source.to] : [joint.source.pin];
    const of = { index: -1, path: value.path, span: value.span, dimension: 'length', middle: 0, half: most / 2 } as const;
    return pins.map(({ lever, part }) => ({ ...of, play: { joint, pin: `${lever}.${part}` } }));
  });
}
