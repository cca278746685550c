/** Where the linkage comes nearest to keep-outs, and its parts to each other. */
import type { Body } from '../clearance/bodies.ts';
import { clearanceOf, nearestTo, type Gap } from '../clearance/clearance.ts';
import type { LeastGap } from '../clearance/leastGap.ts';
import type { Build } from '../kinematics/build.ts';
import { figureText } from '../outputs/figure.ts';
import type { DrawnGap } from '../protocol/picture.ts';
import type { PartKey } from '../protocol/report.ts';
import type { Drawable } from './drawable.ts';

/** Of each keep-out that which comes nearest, and whatever else comes near; none where nothing is solved. */
export function drawGaps({ travel }: Drawable): readonly DrawnGap[] {
  if (travel === undefined) return [];
  const clearance = clearanceOf(travel);
  const found = new Map<Gap, LeastGap>();
  for (const body of clearance.bodies.keepOuts) {
    const nearest = nearestTo(clearance, body);
    if (nearest !== undefined) found.set(nearest.gap, nearest.least);
  }
  for (const gap of [...clearance.keepOuts, ...clearance.parts]) {
    const { least } = gap.search(NEAR);
    if (least !== undefined) found.set(gap, least);
  }
  return [...found].map(([gap, least]) => drawGap(travel.build, gap, least)).sort((a, b) => a.gap - b.gap);
}

/** m; what stays farther apart is nothing to look at. */
const NEAR = 0.03;

function drawGap(build: Build, { one, other }: Gap, { gap, travel, points: [from, to], heights }: LeastGap): DrawnGap {
  const lever = build.mechanism.levers[one.levers[0]!]!;
  const height = build.parameters[lever.pivot + 2]!;
  const [low, high] = heights ?? [height, height];
  const length = figureText({ value: Math.abs(gap), dimension: 'length' });
  return {
    between: [keyOf(one), keyOf(other)],
    from: [...from, low],
    to: [...to, high],
    gap,
    text: gap < 0 ? `${length} deep` : length,
    clearance: other.kind === 'keep-out' ? (other.source.clearance?.nominal ?? 0) : 0,
    travel,
  };
}

const keyOf = ({ kind, name }: Body): PartKey => ({ kind, name });
