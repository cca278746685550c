import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { movedBy, undoneBy } from '../../../webview/page/keys.ts';
import { phaseOut, steppedTravel, travelAt } from '../../../webview/page/play.ts';

describe('playing', () => {
  test('goes out and back once, softly', () => {
    expect([0, 0.25, 0.5, 0.75, 1].map((phase) => Number(travelAt(phase).toFixed(12)))).toEqual([0, 0.5, 1, 0.5, 0]);
    expect(travelAt(0.01)).toBeLessThan(0.001);
  });

  test('goes on outwards from where the pedal stands', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (at) => {
        const phase = phaseOut(at);
        expect(phase).toBeLessThanOrEqual(0.5);
        expect(travelAt(phase)).toBeCloseTo(at, 9);
      }),
    );
  });

  test('goes in ten steps each way where motion is unwelcome', () => {
    const seen = new Set(Array.from({ length: 2001 }, (_, index) => steppedTravel(index / 2000)));
    expect([...seen]).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
    expect([steppedTravel(0), steppedTravel(0.5), steppedTravel(1)]).toEqual([0, 1, 0]);
  });
});

describe('keys on the slider', () => {
  test.each([
    ['ArrowRight', false, 0.41],
    ['ArrowLeft', false, 0.39],
    ['ArrowRight', true, 0.401],
    ['ArrowDown', true, 0.399],
    ['PageUp', false, 0.5],
    ['PageDown', true, 0.3],
    ['Home', false, 0],
    ['End', false, 1],
    ['a', false, undefined],
    ['constructor', false, undefined],
  ])('%s with Shift %s', (key, shiftKey, to) => {
    expect(movedBy({ key, shiftKey }, 0.4)).toBe(to);
  });

  test('a hundred small steps are the whole way', () => {
    let at = 0;
    for (let n = 0; n < 100; n++) at = movedBy({ key: 'ArrowRight', shiftKey: false }, at)!;
    expect(at).toBe(1);
  });
});

describe('the keys that take back', () => {
  const none = { ctrlKey: false, metaKey: false, shiftKey: false };
  test.each([
    ['z', { ctrlKey: true }, 'undo'],
    ['z', { metaKey: true }, 'undo'],
    ['Z', { ctrlKey: true, shiftKey: true }, 'redo'],
    ['Z', { metaKey: true, shiftKey: true }, 'redo'],
    ['y', { ctrlKey: true }, 'redo'],
    ['y', { metaKey: true }, undefined],
    ['z', {}, undefined],
    ['z', { ctrlKey: true, metaKey: true }, undefined],
    ['x', { ctrlKey: true }, undefined],
  ] as const)('%s with %o', (key, held, way) => {
    expect(undoneBy({ key, ...none, ...held })).toBe(way);
  });
});
