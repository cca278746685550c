/** The number of a place among stations, in whatever order they are asked for. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stationFinder } from '../../src/travel/stations.ts';

test('a station is found by its number, and no other place is', () => {
  const places = fc.uniqueArray(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(places, fc.array(fc.double({ noNaN: true }), { maxLength: 10 }), (drawn, others) => {
      const asked = [...drawn, ...others].map((place) => place + 0);
      const stations = [...new Set(drawn.map((place) => place + 0))].sort((a, b) => a - b);
      const numberOf = stationFinder(stations);
      for (const place of [...asked, ...stations]) expect(numberOf(place)).toBe(stations.indexOf(place));
    }),
    { numRuns: 300 },
  );
});

test('where there is no station none is found', () => {
  expect(stationFinder([])(0.5)).toBe(-1);
});
