/** Pressing and coming back as the loop that they are: its two ends closed, what lies within, and the way it is gone through. */
import { valueAt } from './curve.ts';
import type { Plot } from './curve.ts';
import type { DrawnChart } from './drawn.ts';

export interface Loop {
  /** Path of what lies within: the work that friction takes of a stroke; empty where a curve has gaps. */
  readonly within: string;
  /** Path of the two ends, where the foot turns round. */
  readonly ends: string;
}

/** Which way along the pedal a curve is gone through; undefined for one that is of no loop. */
export const wayOf = (column: string): 1 | -1 | undefined => WAYS[column];

const WAYS: Readonly<Record<string, 1 | -1>> = { 'pedal.effort': 1, 'pedal.release': -1 };

/** @param pathOf of each curve, by its column */
export function loopOf({ curves }: DrawnChart, pathOf: ReadonlyMap<string, string>): Loop | undefined {
  const [out, back] = [1, -1].map((way) => curves.find(({ column }) => wayOf(column) === way));
  const [there, home] = [pathOf.get(out?.column ?? '') ?? '', pathOf.get(back?.column ?? '') ?? ''];
  if (!isOnePiece(there) || !isOnePiece(home)) return undefined;
  const reversed = home.slice(1).split('L').reverse();
  return {
    within: `${there}L${reversed.join('L')}Z`,
    ends: `M${there.slice(there.lastIndexOf('L') + 1)}L${reversed[0]!}M${reversed.at(-1)!}L${there.slice(1, there.indexOf('L'))}`,
  };
}

const isOnePiece = (path: string): boolean => path.includes('L') && path.lastIndexOf('M') === 0;

/**
 * Arrow heads on a curve, as a path; empty where it is too short for one.
 * @param way 1 where it is gone through as the pedal goes down, -1 as it comes up
 */
export function arrowsOn(stations: Float64Array, values: Float64Array, plot: Plot, way: 1 | -1): string {
  const spot = (at: number) => [plot.x(at), plot.y(valueAt(stations, values, at))] as const;
  return (way === 1 ? [0.3, 0.8] : [0.2, 0.7])
    .map((at) => {
      const [x, y] = spot(at);
      const [x1, y1] = spot(at - way * BACK);
      const length = Math.hypot(x - x1, y - y1);
      if (!(length > 0)) return '';
      const [ux, uy] = [(x - x1) / length, (y - y1) / length];
      const barb = (side: 1 | -1) => `${tenth(x - HEAD_PX * ux + side * HALF_PX * uy)} ${tenth(y - HEAD_PX * uy - side * HALF_PX * ux)}`;
      return `M${barb(1)}L${tenth(x)} ${tenth(y)}L${barb(-1)}`;
    })
    .join('');
}

/** Along the pedal, from the tip of an arrow to where its direction is read: a fraction. */
const BACK = 0.02;
const HEAD_PX = 7;
const HALF_PX = 4;

const tenth = (px: number): number => Math.round(10 * px) / 10;
