/** All that is drawn of a linkage, put together. */
import type { Picture } from '../protocol/picture.ts';
import { drawCables } from './cables.ts';
import type { Drawable } from './drawable.ts';
import { drawGaps } from './gaps.ts';
import { findHandles } from './handles.ts';
import { drawKeepOuts } from './keepOuts.ts';
import { drawLevers } from './levers.ts';
import { scalePedal } from './pedal.ts';
import { liesInPlane } from './plane.ts';
import { drawPlates } from './plates.ts';
import { drawCouplings, drawRods } from './rods.ts';
import { drawSensors } from './sensors.ts';
import { drawSlots } from './slots.ts';
import { drawSprings } from './springs.ts';

export function drawPicture(drawable: Drawable): Picture {
  const parts = {
    stations: drawable.stations,
    pedal: scalePedal(drawable),
    levers: drawLevers(drawable),
    rods: drawRods(drawable),
    cables: drawCables(drawable),
    slots: drawSlots(drawable),
    couplings: drawCouplings(drawable),
    plates: drawPlates(drawable),
    sensors: drawSensors(drawable),
    springs: drawSprings(drawable),
    keepOuts: drawKeepOuts(drawable.definition),
    gaps: drawGaps(drawable),
    handles: findHandles(drawable),
  };
  return { ...parts, isPlanar: liesInPlane(parts) };
}
