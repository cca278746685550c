/**
 * A position sensor: an arc over its electrical range with a tick at either end, and a needle at its angle. Where zero of the sensor lies
 * about its shaft is not in the file: the middle of the range is drawn upwards.
 */
import type { DrawnSensor } from '../../../src/protocol/picture.ts';
import { figureAt } from '../interpolate.ts';
import type { Pen, Symbol } from '../mark.ts';
import { polyline, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { alongDial, anchoredAt, dialAbout, leverAt, onDial, type Sheet } from '../sheet.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

export function sensorSymbol(sheet: Sheet, sensor: DrawnSensor): Symbol {
  const key = `sensor:${sensor.name}`;
  const lever = leverAt(sheet, sensor.lever);
  const dial = dialAbout(sheet, lever.pivot, lever.axis);
  const radius = RADIUS * sheet.ornament;
  const way = turningWay(sensor, lever.rotation) ?? lever.sense;
  const [first, last] = sensor.range;
  const half = Math.min(Math.abs(last - first) / 2, Math.PI);
  const arc = polyline(alongDial(dial, -way * half, way * half, radius)) + tick(-way * half) + tick(way * half);
  function tick(angle: number): string {
    const inner = onDial(dial, angle, radius * 0.9);
    const outer = onDial(dial, angle, radius * 1.1);
    return segment(inner.x, inner.y, outer.x, outer.y);
  }
  const needle = (pose: Pose, pen: Pen) => {
    const stands = pose.stands[sensor.lever] === 1;
    const at = stands ? { from: Math.max(0, pose.known[sensor.lever]!), share: 0 } : (pose.own?.[sensor.lever] ?? pose.at);
    const angle = figureAt(sensor.angle, at);
    const turned = way * (angle - (first + last) / 2);
    const inner = onDial(dial, turned, radius * 0.3);
    const tip = onDial(dial, turned, radius * 0.98);
    pen.path(Number.isNaN(angle) ? '' : segment(inner.x, inner.y, tip.x, tip.y));
    pen.stands(stands);
  };
  return {
    key,
    part: { kind: 'sensor', name: sensor.name },
    note: WORDS.sensorNote,
    marks: [
      {
        key: `${key}/arc`,
        layer: 'plates',
        tag: 'path',
        look: 'sensor',
        name: sensor.name,
        moves: false,
        place: (_pose, pen) => pen.path(arc),
      },
      { key: `${key}/needle`, layer: 'plates', tag: 'path', look: 'needle', moves: true, place: needle },
    ],
    grip: (_pose, pen) => pen.path(arc),
    anchor: anchoredAt(onDial(dial, way * half, radius)),
  };
}

/** In ornaments: outside of torsion springs. */
const RADIUS = 1.9;

/** +1 where the sensor's angle grows with the rotation of its lever, −1 where it falls; undefined where neither is seen. */
function turningWay(sensor: DrawnSensor, rotation: Float64Array): 1 | -1 | undefined {
  let product = 0;
  for (let i = 1; i < rotation.length; i++) {
    const change = (rotation[i]! - rotation[i - 1]!) * (sensor.angle[i]! - sensor.angle[i - 1]!);
    if (!Number.isNaN(change)) product += change;
  }
  return product === 0 ? undefined : product > 0 ? 1 : -1;
}
