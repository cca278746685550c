/** Sets of plates in their bores. */
import type { DrawnPlates } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';

export function drawPlates({ mechanism, build, placeOf }: Drawable): readonly DrawnPlates[] {
  const p = build.parameters;
  return mechanism.attached.plates.flatMap(({ name, lever, count, bore, shaft, seat, idle }): DrawnPlates[] => {
    const place = placeOf(lever);
    const drawn: DrawnPlates = {
      name,
      lever: place ?? 0,
      count: Math.max(1, Math.round(p[count]!)),
      bore: p[bore]!,
      shaft: p[shaft]!,
      drawnAngle: p[seat]! + p[idle]!,
      seat: p[seat]!,
    };
    const isKnown = [drawn.count, drawn.bore, drawn.shaft, drawn.drawnAngle, drawn.seat].every(Number.isFinite);
    return place === undefined || !isKnown ? [] : [drawn];
  });
}
