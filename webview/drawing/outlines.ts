/** Where the moving parts stand at rest and at the last station that has figures: faint, behind all else. */
import type { Mark } from './mark.ts';
import { line, move, segment } from './path.ts';
import { dialAbout, leverAt, type Sheet } from './sheet.ts';
import { discOf } from './symbols/plates.ts';
import { armsOf } from './symbols/lever.ts';
import { lastKnown } from './interpolate.ts';
import { turningPoint, xTurned, yTurned } from './turning.ts';

export function outlineMarks(sheet: Sheet): readonly Mark[] {
  const ends = [
    { key: 'outline/closed', station: 0 },
    { key: 'outline/open', station: sheet.picture.stations.length - 1 },
  ];
  return ends.map(({ key, station }) => {
    const text = skeletonAt(sheet, station);
    return { key, layer: 'outlines', tag: 'path', look: 'end-position', moves: false, place: (_pose, pen) => pen.path(text) };
  });
}

/** Arms, rods and plates as lines; each where it was assembled last at or before the station. */
function skeletonAt(sheet: Sheet, station: number): string {
  const { picture, view } = sheet;
  const known = picture.levers.map(({ rotation }) => lastKnown(rotation)[station] ?? -1);
  const angleAt = (lever: number, at: number) => leverAt(sheet, lever).rotation[at] ?? 0;
  let text = '';
  for (const [index, lever] of picture.levers.entries()) {
    if (!lever.isDriven) continue;
    const rotation = angleAt(index, known[index]!);
    for (const { root, pin } of armsOf(sheet, index)) text += move(root.x, root.y) + line(xTurned(pin, rotation), yTurned(pin, rotation));
  }
  for (const { from, to } of picture.rods) {
    const a = turningPoint(view, from.lever, from.at);
    const b = turningPoint(view, to.lever, to.at);
    const at = Math.min(known[from.lever]!, known[to.lever]!);
    const [p, q] = [angleAt(from.lever, at), angleAt(to.lever, at)];
    text += segment(xTurned(a, p), yTurned(a, p), xTurned(b, q), yTurned(b, q));
  }
  for (const plates of picture.plates) {
    const { pivot, axis } = leverAt(sheet, plates.lever);
    text += discOf(sheet, plates, dialAbout(sheet, pivot, axis))(angleAt(plates.lever, known[plates.lever]!));
  }
  return text;
}
