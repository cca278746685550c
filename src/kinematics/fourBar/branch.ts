/**
 * Which way of closing the loop passes through a set of wanted positions, and whether one does.
 *
 * While the input turns one way the loop stays on its circuit (see `fourBar.ts`) until coupler and output come into line; there
 * the input stops. So one branch is one circuit over one interval of the input in which the loop closes, and a linkage that
 * satisfies Freudenstein's equation at every wanted point is of use only if they all lie on one branch.
 */
import { TURN, wrapped } from './fourBar.ts';
import type { AngleRange, Circuit, FourBar } from './fourBar.ts';
import type { AnglePair } from './freudenstein.ts';
import { assembledWithin, inputLimits } from './limits.ts';
import { solvePosition } from './position.ts';

/** One circuit over one interval of the input angle. */
export interface Branch {
  readonly circuit: Circuit;
  readonly range: AngleRange;
  /** Indices of the wanted points that lie nearest to it; ascending. */
  readonly points: readonly number[];
}

export type BranchDefect =
  /** The points lie on more than one branch: the linkage must be taken apart to reach them all. */
  | { readonly kind: 'branch'; readonly branches: readonly Branch[] }
  /** The loop cannot close for these input angles of the range. */
  | { readonly kind: 'assemblyGap'; readonly range: AngleRange; readonly points: readonly number[] }
  /** The points, in the order given, are not passed one after the other by an input that turns one way; the first that breaks it. */
  | { readonly kind: 'order'; readonly point: number }
  /** All links lie on one line at this input angle of the range, and the loop may go on either way. */
  | { readonly kind: 'changePoint'; readonly phi: number };

export interface Followed {
  /** The branch with most of the points, the first of equals; `undefined` when the loop closes at none of them. */
  readonly branch: Branch | undefined;
  readonly defects: readonly BranchDefect[];
}

/** Looks for the branch through `points` while φ runs over `range`; φ of the points is not wrapped: it lies in the range. */
export function followBranch(fourBar: FourBar, points: readonly AnglePair[], range: AngleRange): Followed {
  const parts = assembledWithin(fourBar, range);
  const branches = branchesThrough(fourBar, points, parts);
  let branch: Branch | undefined;
  for (const candidate of branches) {
    if (branch === undefined || candidate.points.length > branch.points.length) branch = candidate;
  }
  const defects: BranchDefect[] = [];
  if (branches.length > 1) defects.push({ kind: 'branch', branches });
  for (const gap of gapsBetween(parts, range)) {
    const missed = points.flatMap(({ phi }, index) => (phi > gap.from && phi < gap.to ? [index] : []));
    defects.push({ kind: 'assemblyGap', range: gap, points: missed });
  }
  const unordered = firstOutOfOrder(points);
  if (unordered !== undefined) defects.push({ kind: 'order', point: unordered });
  for (const phi of changePointsWithin(fourBar, range)) defects.push({ kind: 'changePoint', phi });
  return { branch, defects };
}

/** θ4 of the circuit at φ less the wanted ψ, in (−π, π]; `undefined` where the loop cannot close. */
export function outputError(fourBar: FourBar, circuit: Circuit, { phi, psi }: AnglePair): number | undefined {
  const position = solvePosition(fourBar, phi, circuit);
  return position === undefined ? undefined : wrapped(position.theta4 - psi);
}

/** All angles `angle + k·2π` strictly inside a range. */
export function repeatsWithin(angle: number, range: AngleRange): readonly number[] {
  const found: number[] = [];
  for (let k = Math.floor((range.from - angle) / TURN); angle + k * TURN < range.to; k++) {
    if (angle + k * TURN > range.from) found.push(angle + k * TURN);
  }
  return found;
}

function branchesThrough(fourBar: FourBar, points: readonly AnglePair[], parts: readonly AngleRange[]): readonly Branch[] {
  const branches: { circuit: Circuit; range: AngleRange; points: number[] }[] = [];
  points.forEach((pair, index) => {
    const range = parts.find(({ from, to }) => pair.phi >= from - AT_LIMIT && pair.phi <= to + AT_LIMIT);
    const open = outputError(fourBar, 'open', pair);
    const crossed = outputError(fourBar, 'crossed', pair);
    if (range === undefined || open === undefined || crossed === undefined) return;
    const circuit = Math.abs(open) <= Math.abs(crossed) ? 'open' : 'crossed';
    const known = branches.find((branch) => branch.circuit === circuit && branch.range === range);
    if (known) known.points.push(index);
    else branches.push({ circuit, range, points: [index] });
  });
  return branches;
}

function gapsBetween(parts: readonly AngleRange[], range: AngleRange): readonly AngleRange[] {
  const gaps: AngleRange[] = [];
  let reached = range.from;
  for (const { from, to } of parts) {
    if (from - reached > AT_LIMIT) gaps.push({ from: reached, to: from });
    reached = Math.max(reached, to);
  }
  if (range.to - reached > AT_LIMIT) gaps.push({ from: reached, to: range.to });
  return gaps;
}

function firstOutOfOrder(points: readonly AnglePair[]): number | undefined {
  let sense = 0;
  for (let i = 1; i < points.length; i++) {
    const step = Math.sign((points[i]?.phi ?? 0) - (points[i - 1]?.phi ?? 0));
    if (step === 0 || step === -sense) return i;
    sense = step;
  }
  return undefined;
}

function changePointsWithin(fourBar: FourBar, range: AngleRange): readonly number[] {
  const toggles = inputLimits(fourBar)?.toggles ?? [];
  return toggles.filter(({ changePoint }) => changePoint).flatMap(({ angle }) => repeatsWithin(angle, range));
}

/** Radians within which a point counts as standing at a limit of the input, and a gap as none. */
const AT_LIMIT = 1e-12;
