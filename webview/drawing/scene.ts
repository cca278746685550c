/** A picture as symbols and marks, from the back to the front: all that is drawn, in one view. */
import type { Picture } from '../../src/protocol/picture.ts';
import type { ViewDirection } from '../state.ts';
import { otherMark } from './comparison.ts';
import { extentOf, type Box } from './extent.ts';
import type { Mark, Symbol } from './mark.ts';
import { outlineMarks } from './outlines.ts';
import { PROJECTIONS } from './projection.ts';
import type { Sheet } from './sheet.ts';
import { cableSymbol } from './symbols/cable.ts';
import { couplingSymbol } from './symbols/coupling.ts';
import { gapMarks } from './symbols/gaps.ts';
import { keepOutSymbol } from './symbols/keepOuts.ts';
import { leverSymbol } from './symbols/lever.ts';
import { platesSymbol } from './symbols/plates.ts';
import { rodSymbol } from './symbols/rod.ts';
import { sensorSymbol } from './symbols/sensor.ts';
import { slotSymbol } from './symbols/slot.ts';
import { springSymbol } from './symbols/spring.ts';
import { traceMarks } from './traces.ts';

export interface Scene {
  readonly sheet: Sheet;
  readonly extent: Box;
  /** Of no part: traces, end positions, least gaps, the state compared with. */
  readonly backdrop: readonly Mark[];
  readonly symbols: readonly Symbol[];
}

/** @param other the state compared with; undefined where there is none */
export function sceneOf(picture: Picture, direction: ViewDirection, other: Picture | undefined): Scene {
  const view = PROJECTIONS[direction];
  const extent = extentOf(picture, view);
  const ornament = ORNAMENT * Math.hypot(extent.right - extent.left, extent.bottom - extent.top);
  const sheet: Sheet = { picture, view, ornament };
  const backdrop = [...outlineMarks(sheet), ...traceMarks(sheet), ...gapMarks(sheet)];
  if (other !== undefined) backdrop.push(otherMark(sheet, other));
  const bores = new Set(picture.plates.map(({ lever }) => lever));
  const coils = new Map<number, number>();
  const symbols = [
    ...picture.keepOuts.map((keepOut) => keepOutSymbol(sheet, keepOut)),
    ...picture.couplings.map((coupling) => couplingSymbol(sheet, coupling)),
    ...picture.levers.map((_, index) => leverSymbol(sheet, index, bores.has(index))),
    ...picture.cables.map((cable) => cableSymbol(sheet, cable)),
    ...picture.rods.map((rod) => rodSymbol(sheet, rod)),
    ...picture.slots.map((slot) => slotSymbol(sheet, slot)),
    ...picture.plates.map((plates) => platesSymbol(sheet, plates)),
    ...picture.sensors.map((sensor) => sensorSymbol(sheet, sensor)),
    ...picture.springs.map((spring) => {
      const lever = spring.form.kind === 'torsion' ? spring.form.lever : -1;
      const rank = coils.get(lever) ?? 0;
      coils.set(lever, rank + 1);
      return springSymbol(sheet, spring, rank);
    }),
  ];
  return { sheet, extent, backdrop, symbols };
}

/** Of the drawing's diagonal. */
const ORNAMENT = 0.02;
