/** Obstacles of the bay. */
import type { Definition } from '../definition/definition.ts';
import type { DrawnKeepOut } from '../protocol/picture.ts';
import { tripleOf } from './turning.ts';

export function drawKeepOuts({ keepOuts }: Definition): readonly DrawnKeepOut[] {
  return keepOuts.map(({ name, shape, clearance }) => ({
    name,
    shape:
      shape.kind === 'circle'
        ? { kind: 'circle', centre: tripleOf(shape.centre), radius: shape.radius.nominal }
        : { kind: 'polygon', corners: shape.corners.map(tripleOf) },
    clearance: clearance?.nominal ?? 0,
  }));
}
