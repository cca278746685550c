/**
 * Dimensional algebra of formulas: what a product, quotient or power of quantities is.
 *
 * A kind is a set of exponents of length, mass, time, angle and voltage. Angle counts as a base of its own,
 * so that degrees are never taken for a plain number. Three rules follow from that choice:
 * force × length is a torque (kg·m²·s⁻²), torque × angle is an energy (kg·m²·s⁻²·rad), so the two stay apart;
 * torsional rate × angle is a torque, linear rate × length a force; and length × angle is a length, the arc:
 * the angle moves into `arc`, where a later division by an angle, or by the radius, finds it again.
 */
import type { Dimension } from '../dimensions.ts';

/** Exponents of the base quantities; whole or half numbers. */
export interface Kind {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly angle: number;
  readonly voltage: number;
  /** Angles that went into lengths (arc = radius × angle). They may be left out or counted as `angle`, whichever fits. */
  readonly arc: number;
}

/** A number without a unit. */
export const PLAIN: Kind = { length: 0, mass: 0, time: 0, angle: 0, voltage: 0, arc: 0 };

/** Torque × angle. No place of the file expects one, but a `let` may be one. */
export const ENERGY: Kind = { ...PLAIN, mass: 1, length: 2, time: -2, angle: 1 };

/** Of an inertia or a unit of weight. No place of the file expects one. */
export const MASS: Kind = { ...PLAIN, mass: 1 };

const KINDS: Readonly<Record<Dimension, Kind>> = {
  number: PLAIN,
  length: { ...PLAIN, length: 1 },
  area: { ...PLAIN, length: 2 },
  angle: { ...PLAIN, angle: 1 },
  force: { ...PLAIN, mass: 1, length: 1, time: -2 },
  torque: { ...PLAIN, mass: 1, length: 2, time: -2 },
  'linear-rate': { ...PLAIN, mass: 1, time: -2 },
  'torsional-rate': { ...PLAIN, mass: 1, length: 2, time: -2, angle: -1 },
  inertia: { ...PLAIN, mass: 1, length: 2 },
  voltage: { ...PLAIN, voltage: 1 },
  pressure: { ...PLAIN, mass: 1, length: -1, time: -2 },
  'angle-per-length': { ...PLAIN, angle: 1, length: -1 },
};

const DIMENSION_NAMES: Readonly<Record<Dimension, string>> = {
  number: 'a plain number',
  length: 'a length',
  area: 'an area',
  angle: 'an angle',
  force: 'a force',
  torque: 'a torque',
  'linear-rate': 'a linear rate (force per length)',
  'torsional-rate': 'a torsional rate (torque per angle)',
  inertia: 'a moment of inertia',
  voltage: 'a voltage',
  pressure: 'a pressure',
  'angle-per-length': 'an angle per length',
};

/** The kind of a dimension. */
export function kindOf(dimension: Dimension): Kind {
  return KINDS[dimension];
}

/** With its article, e.g. `a length`. */
export function describeDimension(dimension: Dimension): string {
  return DIMENSION_NAMES[dimension];
}

/** The kind of a product. */
export function multiplyKinds(a: Kind, b: Kind): Kind {
  return settle({
    length: a.length + b.length,
    mass: a.mass + b.mass,
    time: a.time + b.time,
    angle: a.angle + b.angle,
    voltage: a.voltage + b.voltage,
    arc: a.arc + b.arc,
  });
}

/** The kind of a quotient. */
export function divideKinds(a: Kind, b: Kind): Kind {
  return multiplyKinds(a, powerOfKind(b, -1));
}

/** The kind of a power. @param exponent whole or half */
export function powerOfKind(kind: Kind, exponent: number): Kind {
  // `+ 0` turns −0 into 0, so that equal kinds are equal as data.
  const raise = (base: number): number => base * exponent + 0;
  return {
    length: raise(kind.length),
    mass: raise(kind.mass),
    time: raise(kind.time),
    angle: raise(kind.angle),
    voltage: raise(kind.voltage),
    arc: raise(kind.arc),
  };
}

/** The kind of a sum of the two, or undefined where they cannot be added or compared. */
export function commonKind(a: Kind, b: Kind): Kind | undefined {
  if (a.length !== b.length || a.mass !== b.mass || a.time !== b.time || a.voltage !== b.voltage) return undefined;
  const gap = b.angle - a.angle;
  const most = Math.max(0, a.arc) - Math.min(0, b.arc);
  const least = Math.min(0, a.arc) - Math.max(0, b.arc);
  if (gap > most || gap < least) return undefined;
  return Math.abs(a.arc) < Math.abs(b.arc) ? a : b;
}

/** Whether a place of the dimension takes a quantity of the kind. */
export function kindFits(kind: Kind, dimension: Dimension): boolean {
  return commonKind(kind, KINDS[dimension]) !== undefined;
}

/** Whether the kind is that of a number without a unit. */
export function isPlain(kind: Kind): boolean {
  return kindFits(kind, 'number');
}

/** The dimension that a kind is, or undefined where no place of the file knows it (an energy, a volume …). */
export function dimensionOfKind(kind: Kind): Dimension | undefined {
  return DIMENSIONS.find((dimension) => kindFits(kind, dimension));
}

/** With its article, e.g. `a torque`, `an energy`, `a quantity in m³/rad`. */
export function describeKind(kind: Kind): string {
  const dimension = dimensionOfKind(kind);
  if (dimension !== undefined) return DIMENSION_NAMES[dimension];
  if (commonKind(kind, ENERGY) !== undefined) return 'an energy (torque × angle)';
  if (commonKind(kind, MASS) !== undefined) return 'a mass';
  return `a quantity in ${baseUnits(kind)}`;
}

/** SI base units of a kind, e.g. `kg·m/s²`; empty for a plain number. */
export function baseUnits(kind: Kind): string {
  const bases: readonly (readonly [string, number])[] = [
    ['kg', kind.mass],
    ['m', kind.length],
    ['rad', kind.angle],
    ['V', kind.voltage],
    ['s', kind.time],
  ];
  const over = bases.filter(([, exponent]) => exponent > 0).map(([unit, exponent]) => unit + superscript(exponent));
  const under = bases.filter(([, exponent]) => exponent < 0).map(([unit, exponent]) => unit + superscript(-exponent));
  if (over.length === 0 && under.length === 0) return '';
  return [over.length === 0 ? '1' : over.join('·'), ...under].join('/');
}

// In the order of likelihood: only kinds with an arc fit more than one.
const DIMENSIONS = Object.keys(KINDS).filter((key): key is Dimension => key in KINDS);

function settle(kind: Kind): Kind {
  let { angle, arc } = kind;
  const pureLength = kind.mass === 0 && kind.time === 0 && kind.voltage === 0 && kind.length > 0;
  if (pureLength && angle > 0) {
    arc += angle;
    angle = 0;
  }
  if (angle * arc < 0) {
    const cancelled = Math.min(Math.abs(angle), Math.abs(arc));
    angle -= Math.sign(angle) * cancelled;
    arc -= Math.sign(arc) * cancelled;
  }
  return { ...kind, angle, arc };
}

function superscript(exponent: number): string {
  if (exponent === 1) return '';
  return exponent === 2 ? '²' : exponent === 3 ? '³' : `^${exponent}`;
}
