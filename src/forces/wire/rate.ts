/** The rate of a spring: as the file gives it, or as it follows from what the spring is wound from. */
import type { StripMaterial } from '../../definition/definition.ts';
import type { SpringModel, StripModel, WireModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import { helicalRate } from './helical.ts';
import { moduliOf } from './materials.ts';
import { spiralRate, type FlatStrip } from './spiral.ts';
import { torsionRate, type Coil } from './torsion.ts';

/** N·m/rad of a torsion spring, N/m of others; NaN where the file gives nothing to tell it by. */
export function rateOf(build: Build, spring: SpringModel): number {
  if (spring.rate !== undefined) return build.parameters[spring.rate]!;
  if (spring.wire !== undefined) {
    const coil = coilOf(build, spring.wire);
    const { tension, shear } = moduliOf(spring.wire.source.material.name, coil.diameter);
    return spring.kind === 'torsion' ? torsionRate(coil, tension) : helicalRate(coil, shear);
  }
  if (spring.kind !== 'torsion' || spring.strip === undefined) return NaN;
  return spiralRate(stripOf(build, spring.strip), STRIP_MODULUS[spring.strip.source.material]);
}

/** Whether the file says how stiff a spring is. */
export function hasRate(spring: SpringModel): boolean {
  return spring.rate !== undefined || spring.wire !== undefined || (spring.kind === 'torsion' && spring.strip !== undefined);
}

export function coilOf({ parameters: p }: Build, { diameter, meanCoil, activeTurns }: WireModel): Coil {
  return { diameter: p[diameter]!, meanCoil: p[meanCoil]!, activeTurns: p[activeTurns]! };
}

export function stripOf({ parameters: p }: Build, { width, thickness, length }: StripModel): FlatStrip {
  return { width: p[width]!, thickness: p[thickness]!, length: p[length]! };
}

/** Pa: 207 GPa (30 Mpsi) of carbon steel, 193 GPa (28 Mpsi) of austenitic stainless steel; both from memory. */
const STRIP_MODULUS: Readonly<Record<StripMaterial, number>> = { carbon_steel: 207e9, stainless_301: 193e9 };
