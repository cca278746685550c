/** A fork: the slot in which the pin slides, from its least to its greatest reach, on the arm that carries it. */
import type { DrawnSlot } from '../../../src/protocol/picture.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { bar, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { leverAt, type Sheet } from '../sheet.ts';
import { fixedPoint, turningPoint, xAt, yAt } from '../turning.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

export function slotSymbol(sheet: Sheet, slot: DrawnSlot): Symbol {
  const key = `slot:${slot.name}`;
  const { lever } = slot.fork;
  const pivot = fixedPoint(sheet.view, sheet.picture, leverAt(sheet, lever).pivot);
  const from = turningPoint(sheet.view, lever, slot.fork.from);
  const to = turningPoint(sheet.view, lever, slot.fork.to);
  const isStanding = (pose: Pose) => pose.stands[lever] === 1;
  const groove = (pose: Pose, pen: Pen) => {
    pen.path(bar(xAt(from, pose), yAt(from, pose), xAt(to, pose), yAt(to, pose), HALF_PX * pose.pixel));
    pen.stands(isStanding(pose));
  };
  const arm = (pose: Pose, pen: Pen) => {
    pen.path(segment(pivot.x, pivot.y, xAt(from, pose), yAt(from, pose)));
    pen.stands(isStanding(pose));
  };
  const marks: Mark[] = [
    { key: `${key}/arm`, layer: 'bodies', tag: 'path', look: 'bar', moves: true, place: arm },
    { key: `${key}/groove`, layer: 'links', tag: 'path', look: 'groove', name: slot.name, moves: true, place: groove },
  ];
  return {
    key,
    part: { kind: 'slot', name: slot.name },
    note: WORDS.slotNote,
    marks,
    grip: groove,
    anchor: (pose, out) => {
      out.x = (xAt(from, pose) + xAt(to, pose)) / 2;
      out.y = (yAt(from, pose) + yAt(to, pose)) / 2;
    },
  };
}

/** Room for the symbol of the pin. */
const HALF_PX = 5.5;
