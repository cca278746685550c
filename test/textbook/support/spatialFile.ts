/** A spatial four-bar with ball joints written as a throttle file. */
import type { SpatialLever } from '../values/spatial.ts';
import { plainNumber, quantity } from './fourBarFile.ts';
import { ballAt } from './spatialFourBar.ts';

export interface DrawnSpatialFourBar {
  /** Lengths as millimetres; `ball` is where each ball stands at rotation 0. */
  readonly input: SpatialLever;
  readonly output: SpatialLever;
  readonly rod: number;
  /** Rotation of the output, degrees, that makes the rod fit at input rotation 0: the branch that is drawn. */
  readonly drawnOutputDeg: number;
  /** What the pedal lever turns, degrees; negative turns the other way. */
  readonly travelDeg: number;
}

/**
 * Levers `foot` and `driven`, joined by the rod `link`. The output is drawn turned to where the rod fits, so the output's rotation of
 * the table of values is drawnOutputDeg + driven.rotation.
 */
export function spatialFile({ input, output, rod, drawnOutputDeg, travelDeg }: DrawnSpatialFourBar): string {
  const drawn = ballAt(output, (drawnOutputDeg * Math.PI) / 180);
  return `format: 1
title: Spatial four-bar with ball joints
levers:
  foot:
    pivot: ${place(input.pivot)}
    axis: ${direction(input.axis)}
    arms:
      pin: {at: ${place(input.ball)}}
  driven:
    pivot: ${place(output.pivot)}
    axis: ${direction(output.axis)}
    arms:
      pin: {at: ${place(drawn)}}
pedal: {lever: foot, opens: ${travelDeg < 0 ? 'clockwise' : 'counterclockwise'}, travel: ${quantity(Math.abs(travelDeg), 'deg')}, pad: pin}
rods:
  link:
    from: foot.pin
    to: driven.pin
    length: ${quantity(rod, 'mm')}
`;
}

/** Bare numbers: a place is in millimetres where nothing else is said. */
function place(values: readonly number[]): string {
  return `[${values.map(plainNumber).join(', ')}]`;
}

function direction(values: readonly number[]): string {
  return `[${values.join(', ')}]`;
}
