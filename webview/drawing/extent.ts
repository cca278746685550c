/** How much of the paper the drawing takes over its whole travel, mm: all of it, a part of it, or some of its levers. */
import type { Picture, Triple } from '../../src/protocol/picture.ts';
import type { PartKey } from '../../src/protocol/report.ts';
import { onPaper, MM_PER_M, type Projection, type Spot } from './projection.ts';
import { keyOfPart, partOfLever, type Sheet } from './sheet.ts';
import { housingSpots } from './symbols/cable.ts';
import { outlineOf } from './symbols/keepOuts.ts';
import { traceOf } from './traces.ts';
import { isPinPlace, turningPoint } from './turning.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of a picture without parts, a square about the origin. */
export const extentOf = (picture: Picture, view: Projection): Box => boxAbout(piecesOf(picture, view)) ?? EMPTY;

const EMPTY: Box = { left: -50, top: -50, right: 50, bottom: 50 };

/** Undefined where the part is not drawn. */
export function extentOfPart(picture: Picture, view: Projection, part: PartKey): Box | undefined {
  const key = keyOfPart(picture, part);
  return boxAbout(piecesOf(picture, view).filter((piece) => piece.part !== undefined && keyOfPart(picture, piece.part) === key));
}

/** @param levers indices; what else hangs on these alone counts too. Undefined where nothing of them is drawn */
export const extentOfLevers = (picture: Picture, view: Projection, levers: ReadonlySet<number>): Box | undefined =>
  boxAbout(piecesOf(picture, view).filter((piece) => piece.levers.length > 0 && piece.levers.every((lever) => levers.has(lever))));

/** Something that takes room. */
interface Piece {
  /** Undefined for what is no part. */
  readonly part: PartKey | undefined;
  /** Indices of the levers that it hangs on. */
  readonly levers: readonly number[];
  readonly spots: readonly Spot[];
  /** So much about each spot, mm. */
  readonly around: number;
}

function piecesOf(picture: Picture, view: Projection): readonly Piece[] {
  const pieces: Piece[] = [];
  const add = (part: PartKey | undefined, levers: readonly number[], spots: readonly Spot[], around = 0) =>
    pieces.push({ part, levers, spots, around });
  const turning = (lever: number, at: readonly number[]): readonly Spot[] =>
    traceOf(turningPoint(view, lever, at), picture.levers[lever]!.rotation);
  const pivotOf = (lever: number): readonly Spot[] => [onPaper(view, picture.levers[lever]!.pivot)];
  for (const [index, lever] of picture.levers.entries()) {
    const part = partOfLever(picture, index);
    const drums = lever.drums.map(({ mark }) => Math.hypot(mark[3]!, mark[4]!, mark[5]!));
    add(part, [index], pivotOf(index), MM_PER_M * Math.max(0, ...drums));
    for (const at of [...lever.arms.map((arm) => arm.at), ...lever.outline]) add(part, [index], turning(index, at));
  }
  const sheet: Sheet = { picture, view, ornament: 1 };
  for (const cable of picture.cables) {
    const part: PartKey = { kind: 'cable', name: cable.name };
    const driven = cable.enters.inner.lever;
    add(part, cable.leaves === undefined ? [driven] : [cable.leaves.inner.lever, driven], housingSpots(sheet, cable));
    add(part, [driven], [onPaper(view, cable.enters.housing)]);
  }
  for (const { name, from, to } of picture.rods)
    add({ kind: 'rod', name }, [from.lever, to.lever], [...turning(from.lever, from.at), ...turning(to.lever, to.at)]);
  for (const { name, fork } of picture.slots) {
    const spots = [fork.from, fork.to].flatMap((at) => turning(fork.lever, at));
    add({ kind: 'slot', name }, [fork.lever], spots);
  }
  for (const { name, from, to } of picture.couplings) add({ kind: 'coupling', name }, [from, to], [...pivotOf(from), ...pivotOf(to)]);
  for (const { name, lever, bore } of picture.plates) add({ kind: 'plates', name }, [lever], pivotOf(lever), 0.8 * MM_PER_M * bore);
  for (const { name, lever } of picture.sensors) add({ kind: 'sensor', name }, [lever], pivotOf(lever));
  for (const { name, form } of picture.springs) {
    const part: PartKey = { kind: 'spring', name };
    if (form.kind === 'torsion') add(part, [form.lever], pivotOf(form.lever));
    else {
      const from = isPinPlace(form.from) ? turning(form.from.lever, form.from.at) : [onPaper(view, form.from)];
      const levers = isPinPlace(form.from) ? [form.from.lever, form.to.lever] : [form.to.lever];
      add(part, levers, [...from, ...turning(form.to.lever, form.to.at)]);
    }
  }
  for (const keepOut of picture.keepOuts)
    add(
      { kind: 'keep-out', name: keepOut.name },
      [],
      outlineOf(keepOut, keepOut.clearance).map((corner: Triple) => onPaper(view, corner)),
    );
  return pieces;
}

function boxAbout(pieces: readonly Piece[]): Box | undefined {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const { spots, around } of pieces) {
    for (const { x, y } of spots) {
      if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
      box.left = Math.min(box.left, x - around);
      box.right = Math.max(box.right, x + around);
      box.top = Math.min(box.top, y - around);
      box.bottom = Math.max(box.bottom, y + around);
    }
  }
  return box.left > box.right ? undefined : box;
}
