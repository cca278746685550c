/** A coupling, by which one lever turns another at a fixed ratio: a chain line between the two shafts, or a ring where they are one. */
import type { DrawnCoupling } from '../../../src/protocol/picture.ts';
import type { Pen, Symbol } from '../mark.ts';
import { ring, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { onPaper } from '../projection.ts';
import { leverAt, type Sheet } from '../sheet.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

export function couplingSymbol(sheet: Sheet, coupling: DrawnCoupling): Symbol {
  const key = `coupling:${coupling.name}`;
  const a = onPaper(sheet.view, leverAt(sheet, coupling.from).pivot);
  const b = onPaper(sheet.view, leverAt(sheet, coupling.to).pivot);
  const place = ({ pixel: u }: Pose, pen: Pen) => {
    const isOne = Math.hypot(a.x - b.x, a.y - b.y) < 2 * RING_PX * u;
    pen.path(isOne ? ring((a.x + b.x) / 2, (a.y + b.y) / 2, RING_PX * u) : segment(a.x, a.y, b.x, b.y));
  };
  return {
    key,
    part: { kind: 'coupling', name: coupling.name },
    note: WORDS.couplingNote,
    marks: [{ key: `${key}/line`, layer: 'ground', tag: 'path', look: 'coupling', name: coupling.name, moves: false, place }],
    grip: place,
    anchor: (_pose, out) => {
      out.x = (a.x + b.x) / 2;
      out.y = (a.y + b.y) / 2;
    },
  };
}

const RING_PX = 9;
