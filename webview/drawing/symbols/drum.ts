/** A drum: the circle to the centre of the cable that lies on it, or its profile, with a radius so that one sees it turn. */
import type { DrawnDrum } from '../../../src/protocol/picture.ts';
import type { Mark } from '../mark.ts';
import { line, move, polyline, segment } from '../path.ts';
import { isEndOn, MM_PER_M } from '../projection.ts';
import { leverAt, type Sheet } from '../sheet.ts';
import { turningPoint, xAt, xTurned, yAt, yTurned } from '../turning.ts';

export function drumMarks(sheet: Sheet, key: string, index: number, drum: DrawnDrum): readonly Mark[] {
  return [rimMark(sheet, `${key}/drum/${drum.name}`, index, drum), radiusMark(sheet, `${key}/radius/${drum.name}`, index, drum)];
}

function rimMark(sheet: Sheet, key: string, index: number, drum: DrawnDrum): Mark {
  const base = { key, layer: 'bodies', look: 'drum', name: `${leverAt(sheet, index).name}.${drum.name}` } as const;
  const mark = turningPoint(sheet.view, index, drum.mark);
  const { form } = drum;
  if (form.kind === 'profile') {
    const rim = form.rim.map((at) => turningPoint(sheet.view, index, at));
    return {
      ...base,
      tag: 'path',
      moves: true,
      place: (pose, pen) => {
        let text = '';
        for (const [i, point] of rim.entries()) text += (i === 0 ? move : line)(xAt(point, pose), yAt(point, pose));
        pen.path(text === '' ? '' : `${text}${line(mark.x, mark.y)}Z`);
        pen.stands(pose.stands[index] === 1);
      },
    };
  }
  if (isEndOn(sheet.view, leverAt(sheet, index).axis)) {
    return { ...base, tag: 'circle', moves: false, place: (_pose, pen) => pen.circle(mark.x, mark.y, MM_PER_M * form.radius) };
  }
  const spots = Array.from({ length: CHORDS }, (_, i) => {
    const angle = (2 * Math.PI * i) / CHORDS;
    return { x: xTurned(mark, angle), y: yTurned(mark, angle) };
  });
  return { ...base, tag: 'path', moves: false, place: (_pose, pen) => pen.path(polyline(spots, true)) };
}

/** A circle drawn by so many chords is short by 0.1 % at their middle. */
const CHORDS = 72;

function radiusMark(sheet: Sheet, key: string, index: number, drum: DrawnDrum): Mark {
  const rim = turningPoint(sheet.view, index, drum.mark);
  return {
    key,
    layer: 'bodies',
    tag: 'path',
    look: 'radius',
    moves: true,
    place: (pose, pen) => {
      const x = xAt(rim, pose);
      const y = yAt(rim, pose);
      pen.path(segment(x, y, x + INWARDS * (rim.x - x), y + INWARDS * (rim.y - y)));
      pen.stands(pose.stands[index] === 1);
    },
  };
}

/** Share of the radius that is drawn. */
const INWARDS = 0.35;
