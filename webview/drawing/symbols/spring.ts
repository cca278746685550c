/**
 * Springs: a coiled one about a shaft as a spiral that winds up as the shaft turns; one between two places as a zigzag that is as long as
 * the spring is. Numbers of turns and breadths are schematic.
 */
import type { DrawnSpring } from '../../../src/protocol/picture.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { hatch, line, move, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { anchoredAt, dialAbout, leverAt, onDial, type Sheet } from '../sheet.ts';
import { isPinPlace, pointOf, xAt, yAt } from '../turning.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

/** @param rank how many torsion springs stand on the same shaft before it: each is drawn outside the last */
export function springSymbol(sheet: Sheet, spring: DrawnSpring, rank: number): Symbol {
  return spring.form.kind === 'torsion' ? spiral(sheet, spring, spring.form.lever, rank) : zigzag(sheet, spring, spring.form);
}

function spiral(sheet: Sheet, spring: DrawnSpring, index: number, rank: number): Symbol {
  const key = `spring:${spring.name}`;
  const lever = leverAt(sheet, index);
  const dial = dialAbout(sheet, lever.pivot, lever.axis);
  const inner = sheet.ornament * (0.55 + 0.45 * rank);
  const outer = inner + sheet.ornament * 0.35;
  const fixed = Math.PI + lever.sense * (0.35 + 0.5 * rank);
  const end = onDial(dial, fixed, outer);
  const place = (pose: Pose, pen: Pen) => {
    const [turns, points] = pose.isSmall ? [SMALL_TURNS, SMALL_POINTS] : [TURNS, POINTS];
    const total = lever.sense * turns * 2 * Math.PI + pose.rotation[index]!;
    let text = move(end.x, end.y);
    for (let i = 1; i <= points; i++) {
      const { x, y } = onDial(dial, fixed + (total * i) / points, outer + ((inner - outer) * i) / points);
      text += line(x, y);
    }
    pen.path(text);
    pen.stands(pose.stands[index] === 1);
  };
  const foot = (pose: Pose, pen: Pen) => pen.path(footPath(end.x, end.y, pose));
  return {
    key,
    part: { kind: 'spring', name: spring.name },
    note: WORDS.torsionNote,
    marks: [
      { key: `${key}/coil`, layer: 'plates', tag: 'path', look: 'spring coil', name: spring.name, moves: true, place },
      { key: `${key}/foot`, layer: 'plates', tag: 'path', look: 'ground', moves: false, place: foot },
    ],
    grip: place,
    anchor: anchoredAt(end),
  };
}

const TURNS = 1.75;
const POINTS = 56;
/** Where it is small: one line about the shaft. */
const SMALL_TURNS = 0.75;
const SMALL_POINTS = 20;

const footPath = (x: number, y: number, { pixel: u, isSmall }: Pose): string =>
  segment(x - 5 * u, y, x + 5 * u, y) + (isSmall ? '' : hatch(x, y, { x: 1, y: 0 }, { x: 0, y: 1 }, 10 * u, 3.5 * u, 3.5 * u));

function zigzag(sheet: Sheet, spring: DrawnSpring, form: Exclude<DrawnSpring['form'], { readonly kind: 'torsion' }>): Symbol {
  const key = `spring:${spring.name}`;
  const from = pointOf(sheet.view, sheet.picture, form.from);
  const to = pointOf(sheet.view, sheet.picture, form.to);
  const stands = (pose: Pose) => pose.stands[from.lever] === 1 || pose.stands[to.lever] === 1;
  const lead = form.kind === 'extension' ? 0.14 : 0.04;
  const coil = (pose: Pose, pen: Pen) => {
    const x1 = xAt(from, pose);
    const y1 = yAt(from, pose);
    const dx = xAt(to, pose) - x1;
    const dy = yAt(to, pose) - y1;
    const length = Math.hypot(dx, dy) || 1;
    const nx = (-dy / length) * AMPLITUDE_PX * pose.pixel;
    const ny = (dx / length) * AMPLITUDE_PX * pose.pixel;
    let text = move(x1, y1) + line(x1 + dx * lead, y1 + dy * lead);
    for (let i = 0; i < BENDS; i++) {
      const t = lead + ((1 - 2 * lead) * (i + 0.5)) / BENDS;
      const way = i % 2 === 0 ? 1 : -1;
      text += line(x1 + dx * t + way * nx, y1 + dy * t + way * ny);
    }
    text += line(x1 + dx * (1 - lead), y1 + dy * (1 - lead)) + line(x1 + dx, y1 + dy);
    if (form.kind === 'compression') {
      for (const t of [lead, 1 - lead])
        text += segment(x1 + dx * t - 1.4 * nx, y1 + dy * t - 1.4 * ny, x1 + dx * t + 1.4 * nx, y1 + dy * t + 1.4 * ny);
    }
    pen.path(text);
    pen.stands(stands(pose));
  };
  const ends = (pose: Pose, pen: Pen) => {
    pen.path(segment(xAt(from, pose), yAt(from, pose), xAt(to, pose), yAt(to, pose)));
  };
  const marks: Mark[] = [{ key: `${key}/coil`, layer: 'links', tag: 'path', look: 'spring', name: spring.name, moves: true, place: coil }];
  if (!isPinPlace(form.from)) {
    const foot = (pose: Pose, pen: Pen) => pen.path(footPath(from.x + from.px, from.y + from.py, pose));
    marks.push({ key: `${key}/foot`, layer: 'ground', tag: 'path', look: 'ground', moves: false, place: foot });
  }
  return {
    key,
    part: { kind: 'spring', name: spring.name },
    note: WORDS.springNote(form.kind),
    marks,
    grip: ends,
    anchor: (pose, out) => {
      out.x = (xAt(from, pose) + xAt(to, pose)) / 2;
      out.y = (yAt(from, pose) + yAt(to, pose)) / 2;
    },
  };
}

const BENDS = 18;
const AMPLITUDE_PX = 6;
