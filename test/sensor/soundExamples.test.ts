/** Sensors and plates of the examples that are to be sound: their figures are such as a tuner would want, and nothing is detected. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { areaAt, fractionAt } from '../../src/plates/platesAt.ts';
import { outOfStep } from '../../src/plates/outOfStep.ts';
import {
  beyondElectrical,
  beyondMechanical,
  shareOfSpan,
  signalsTakenForFaults,
  turnsBackWhileOpening,
} from '../../src/sensor/detections.ts';
import { sensorResolution } from '../../src/sensor/resolution.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';

const travelOf = (path: string): ReturnType<typeof solveTravel> =>
  solveTravel(mechanismOf(readFileSync(new URL(path, import.meta.url), 'utf8')));

describe.each(['../../examples/four-barrel.throttle.yaml', '../../examples/two-banks.throttle.yaml', '../support/sample.throttle.yaml'])(
  '%s',
  (path) => {
    const travel = travelOf(path);
    const { sensors, plates } = travel.mechanism.attached;

    it('has a sensor within its ranges, with a steady signal and most of its span in use', () => {
      expect(sensors).toHaveLength(1);
      for (const sensor of sensors) {
        expect(beyondElectrical(travel, sensor)).toEqual([]);
        expect(beyondMechanical(travel, sensor)).toEqual([]);
        expect(turnsBackWhileOpening(travel, sensor)).toBeUndefined();
        expect(signalsTakenForFaults(travel, sensor)).toEqual([]);
        expect(shareOfSpan(travel, sensor)).toBeGreaterThan(0.7);
      }
    });

    it('gives the tuner between 6 and 9 counts for a degree at tip-in and overall', () => {
      for (const sensor of sensors) {
        const { tipIn, overall } = sensorResolution(travel, sensor);
        for (const each of [tipIn, overall]) {
          const counts = ((each?.countsPerAngle ?? NaN) * Math.PI) / 180;
          expect(counts).toBeGreaterThan(6);
          expect(counts).toBeLessThan(9);
        }
      }
    });

    it('passes a few mm² at idle and opens to the shadow of the shaft', () => {
      expect(plates.length).toBeGreaterThan(0);
      for (const each of plates) {
        const idle = areaAt(travel.build, travel.poseAt(0), each) * 1e6;
        expect(idle).toBeGreaterThan(3);
        expect(idle).toBeLessThan(8);
        expect(fractionAt(travel.build, travel.poseAt(1), each)).toBe(1);
      }
    });

    it('keeps its banks in step', () => {
      const [first, ...others] = plates;
      for (const other of others) {
        const { atRest, nearIdle, above } = outOfStep(travel, first!, other);
        for (const each of [atRest, nearIdle, above]) {
          expect(Math.abs(each.opening?.value ?? NaN)).toBeLessThan(1e-9);
          expect(Math.abs(each.area?.value ?? NaN)).toBeLessThan(1e-7);
        }
      }
    });
  },
);
