import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describePart, describePicture, describePose, describeStops } from '../../../webview/drawing/describe.ts';
import { shownOf } from '../../support/drawingPage.ts';

const example = (name: string) =>
  shownOf(readFileSync(new URL(`../../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8')).picture;

describe('the drawing in words', () => {
  it('counts what is there', () => {
    expect(describePicture(example('four-barrel'), 'front')).toBe(
      'Front view to scale: 3 levers, 1 cable, 1 rod, 4 plates, 1 sensor, 2 springs.',
    );
  });

  it('says how far each lever has opened', () => {
    const said = describePose(example('four-barrel'), 1);
    // The pedal's travel and the shaft's open stop, as the file gives them.
    expect(said).toMatch(/^At 100 % of pedal travel: pedal opened 27°, bellcrank opened [\d.]+°, shaft opened 8[12](\.\d)?°; plates bank /);
  });

  it('says whether plates are closed, how far they are open, and when fully', () => {
    const picture = example('four-barrel');
    const [shaft] = picture.levers.filter(({ name }) => name === 'shaft');
    const platesAt = (opening: number, stops = shaft!.stops) => {
      const rotation = picture.stations.map(() => (shaft!.sense * opening * Math.PI) / 180);
      const levers = picture.levers.map((lever) => (lever === shaft ? { ...lever, rotation, stops } : lever));
      return /; (.*)\.$/.exec(describePose({ ...picture, levers }, 0.5))?.[1];
    };
    const none = { closed: 0, open: undefined };
    const { drawnAngle } = picture.plates[0]!;
    const square = Math.round((90 - (drawnAngle * 180) / Math.PI) * 10) / 10;
    expect(platesAt(0)).toBe('plates bank closed');
    expect(platesAt(20, none)).toBe(`plates bank open by 20° of ${square}°`);
    expect(platesAt(20, { closed: 0, open: Math.PI / 3 })).toBe('plates bank open by 20° of 60°');
    expect(platesAt(60, { closed: 0, open: Math.PI / 3 })).toBe('plates bank fully open at 60°');
    expect(platesAt(-1)).toBe('plates bank 1° below closed');
    expect(platesAt(NaN)).toBe('plates bank has no position');
  });

  it('says what has no position, and where it was assembled last', () => {
    const picture = example('binding-broken');
    expect(describeStops(picture, 0.3)).toEqual([]);
    const [stop, ...more] = describeStops(picture, 0.9);
    expect(more).toEqual([]);
    // The file's own finding: it cannot reach the shaft from 54.6 % on.
    const at = /as at ([\d.]+) %/.exec(stop!.text)?.[1];
    expect(Number(at)).toBeGreaterThan(53);
    expect(Number(at)).toBeLessThanOrEqual(54.6);
    expect(stop!.text).toContain('shaft stands');
  });

  it('names a part with its dimensions', () => {
    expect(describePart({ kind: 'rod', name: 'link' }, undefined)).toBe('rod link');
    expect(describePart({ kind: 'pedal', name: 'pedal' }, undefined)).toBe('pedal');
  });
});
