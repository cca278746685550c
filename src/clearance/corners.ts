/** Corners of pieces from the figures of a build, and what holds of the levers that they turn with. */
import type { Lever } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import { UNITS, type Corner, type Figures, type Piece } from './piece.ts';

const STILL = [0, 0, 0] as const;

/** @param base mm */
export function standing(base: Figures): Corner {
  return { lever: -1, base, perp: STILL, cross: STILL };
}

/** @param pin nine parameters */
export function pinCorner(build: Build, lever: number, pin: number): Corner {
  return { lever, base: figuresAt(build, pin), perp: figuresAt(build, pin + 3), cross: figuresAt(build, pin + 6) };
}

/** @param sense +1 where the axis points at the viewer */
export function turningCorner(lever: number, pivot: readonly [number, number], sense: number, at: readonly [number, number]): Corner {
  const perp = [at[0] - pivot[0], at[1] - pivot[1]] as const;
  return { lever, base: pivot, perp, cross: [-sense * perp[1], sense * perp[0]] };
}

/** mm. @param from three parameters */
export function figuresAt({ parameters: p }: Build, from: number): Figures {
  return [UNITS * p[from]!, UNITS * p[from + 1]!, UNITS * p[from + 2]!];
}

/** Whether a lever turns about z. */
export function isAlongZ({ mechanism, parameters }: Build, lever: number): boolean {
  const { axis } = mechanism.levers[lever]!;
  return Math.hypot(parameters[axis]!, parameters[axis + 1]!) < ALONG && Number.isFinite(parameters[axis + 2]!);
}

/** Sine of the angle within which a direction is that of z. */
const ALONG = 1e-9;

/** Layer of a lever for which the file gives none. */
const FIRST_LAYER = 0;

export function layerOf({ layer }: Lever): number {
  return layer?.nominal ?? FIRST_LAYER;
}

/** The layer of some levers; undefined where they stand on two. */
export function layerOfAll({ mechanism }: Build, levers: readonly number[]): number | undefined {
  const layers = new Set(levers.map((lever) => layerOf(mechanism.levers[lever]!.source)));
  return layers.size === 1 ? [...layers][0] : undefined;
}

export function isBounded({ corners, radius }: Piece): boolean {
  return radius < FARTHEST && corners.every(({ base, perp }) => [...base, ...perp].every((figure) => Math.abs(figure ?? 0) < FARTHEST));
}

/** mm; farther than the reader lets a place be from any other. */
const FARTHEST = 1e6;
