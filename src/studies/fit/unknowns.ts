/**
 * The dimensions that are to be found, and what is known of each before anything was read.
 *
 * A tolerance is three standard deviations about its middle, as in the study of tolerances. A dimension without one may be anything; what
 * counts as not told of it is held against `scale` then: 5 mm, 10°, or half of anything else, since friction and preloads are seldom known
 * more closely. Common practice, no source.
 */
import type { Value } from '../../definition/definition.ts';
import type { Dimension } from '../../definition/dimensions.ts';
import { shortName } from '../../definition/fitNames.ts';
import type { Measured } from '../../definition/measured.ts';
import type { Span } from '../../definition/span.ts';
import type { Mechanism, MechanismDimension } from '../../kinematics/model.ts';
import { tolerancedDimensions } from '../../kinematics/toleranced.ts';

export interface Unknown {
  /** As the file names it, or would. */
  readonly name: string;
  /** Index into `mechanism.dimensions`. */
  readonly index: number;
  readonly dimension: Dimension;
  /** Where the file gives it; of one that it leaves out the place of its part's name. */
  readonly span: Span;
  /** As the file has it, SI. Of a rod's length as drawn: 0, what is added to it. */
  readonly nominal: number;
  /** Whether it is counted from the drawn length of its rod. */
  readonly asDrawn: boolean;
  /** Undefined where the file gives no tolerance. SI. */
  readonly prior: { readonly middle: number; readonly deviation: number; readonly half: number } | undefined;
  /** In which it is counted, SI, above 0: the standard deviation of its tolerance, else what counts as not told. */
  readonly scale: number;
  /** In which the file has it; absent where that is not known. */
  readonly unit?: string;
}

export interface Unknowns {
  readonly all: readonly Unknown[];
  /** Names of `fit` that nothing in the table rests on, so that no reading can tell them. */
  readonly idle: readonly string[];
  /** Names of toleranced dimensions that are not among them, and so count as the file has them. */
  readonly held: readonly string[];
}

/** @param units of figures by their paths, as written */
export function unknownsOf(mechanism: Mechanism, { fit }: Measured, units?: ReadonlyMap<string, Pick<Value, 'unit'>>): Unknowns {
  const toleranced = new Map(tolerancedDimensions(mechanism).map((each) => [each.index, each]));
  const unknown = (of: MechanismDimension, name: string): Unknown => {
    const tolerance = toleranced.get(of.index);
    const deviation = tolerance === undefined ? undefined : tolerance.half / 3;
    return {
      name,
      index: of.index,
      dimension: of.dimension,
      span: of.span,
      nominal: of.nominal,
      asDrawn: of.kind === 'as-drawn',
      prior: tolerance && { middle: tolerance.middle, deviation: tolerance.half / 3, half: tolerance.half },
      scale: deviation ?? openScale(of),
      unit: units?.get(of.path)?.unit ?? '',
    };
  };
  const byPath = new Map(mechanism.dimensions.map((each) => [each.path, each]));
  const named = fit?.map(({ name, path }) => ({ name, of: byPath.get(path) }));
  const all =
    named?.flatMap(({ name, of }) => (of === undefined ? [] : [unknown(of, name)])) ??
    [...toleranced.keys()].map((index) => unknown(mechanism.dimensions[index]!, nameOf(mechanism.dimensions[index]!)));
  const chosen = new Set(all.map(({ index }) => index));
  return {
    all,
    idle: named?.flatMap(({ name, of }) => (of === undefined ? [name] : [])) ?? [],
    held: [...toleranced.keys()].filter((index) => !chosen.has(index)).map((index) => nameOf(mechanism.dimensions[index]!)),
  };
}

function nameOf({ path }: MechanismDimension): string {
  return shortName(path);
}

/** Of a dimension without a tolerance. A length is not held against itself: that of a coordinate would hang on where the drawing begins. */
export function openScale({ dimension, nominal }: Pick<MechanismDimension, 'dimension' | 'nominal'>): number {
  if (dimension === 'length') return OPEN_LENGTH;
  if (dimension === 'angle') return OPEN_ANGLE;
  return nominal === 0 ? 1 : Math.abs(nominal) / 2;
}

/** m */
const OPEN_LENGTH = 5e-3;
/** rad */
const OPEN_ANGLE = Math.PI / 18;
