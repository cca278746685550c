import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Picture } from '../../../src/protocol/picture.ts';
import { engineSide } from '../../../webview/drawing/engineSide.ts';
import { extentOf, extentOfLevers, extentOfPart } from '../../../webview/drawing/extent.ts';
import { PROJECTIONS } from '../../../webview/drawing/projection.ts';
import { shownOf } from '../../support/drawingPage.ts';
import { longChain } from '../../support/longChain.ts';

const example = (name: string) =>
  shownOf(readFileSync(new URL(`../../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8')).picture;
const four = example('four-barrel');
const namesOf = (picture: Picture) => [...engineSide(picture)].map((index) => picture.levers[index]!.name).sort();
const view = PROJECTIONS.front;

describe('engine side', () => {
  it('is the levers with plates and what drives them, without the pedal', () => {
    expect(namesOf(four)).toEqual(['bellcrank', 'shaft']);
    expect(namesOf(example('two-banks'))).toEqual(['bellcrank', 'front', 'rear', 'rotor']);
  });

  it('reaches through rods to all but the pedal where there is no cable', () => {
    const { picture } = shownOf(longChain(3));
    expect(namesOf(picture)).toEqual(['crank_1', 'crank_2', 'crank_3']);
  });

  it('is nothing where there are no plates', () => {
    expect(engineSide({ ...four, plates: [] }).size).toBe(0);
  });
});

describe('extent', () => {
  const all = extentOf(four, view);

  it('of the engine side leaves the pedal out, and has the housing end', () => {
    const side = extentOfLevers(four, view, engineSide(four))!;
    expect(side.right).toBe(all.right);
    expect(side.bottom).toBeLessThan(all.bottom);
    const end = 1000 * four.cables[0]!.enters.housing[0];
    expect(side.left).toBeLessThanOrEqual(end);
    // From the file: the housing ends on the pedal's side at x = 150 mm or less; the engine begins beyond 400.
    expect(side.left).toBeGreaterThan(400);
  });

  it('of a rod spans the ways of its pins', () => {
    const box = extentOfPart(four, view, { kind: 'rod', name: 'link' })!;
    // From the file: pins at [512, 148] + 38 mm at 166° and [604, 172] + 32 mm at 140°, as drawn.
    const pins = [
      [512 + 38 * Math.cos((166 * Math.PI) / 180), -(148 + 38 * Math.sin((166 * Math.PI) / 180))],
      [604 + 32 * Math.cos((140 * Math.PI) / 180), -(172 + 32 * Math.sin((140 * Math.PI) / 180))],
    ] as const;
    for (const [x, y] of pins) {
      expect(x).toBeGreaterThanOrEqual(box.left - 1e-6);
      expect(x).toBeLessThanOrEqual(box.right + 1e-6);
      expect(y).toBeGreaterThanOrEqual(box.top - 1e-6);
      expect(y).toBeLessThanOrEqual(box.bottom + 1e-6);
    }
    expect(box.right - box.left).toBeLessThan(200);
  });

  it('of a part that is not drawn is none', () => {
    expect(extentOfPart(four, view, { kind: 'rod', name: 'no_such' })).toBeUndefined();
  });
});
