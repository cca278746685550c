import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Triple } from '../../../src/protocol/picture.ts';
import { showAnswers } from '../../../src/picture/showAnswers.ts';
import { solve } from '../../../src/solve.ts';
import { sceneOf } from '../../../webview/drawing/scene.ts';
import { turnedAbout } from '../../../webview/drawing/turning.ts';
import type { ViewDirection } from '../../../webview/state.ts';
import { marksOf, noted } from '../../support/noted.ts';

const FOLDER = new URL('../../../examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((name) => name.endsWith('.throttle.yaml'));
const textOf = (name: string) => readFileSync(new URL(name, FOLDER), 'utf8');
const solved = new Map(
  EXAMPLES.map((name) => {
    const answers = solve(textOf(name));
    return [name, { answers, picture: showAnswers(answers)!.picture }];
  }),
);

/** By hand, for this test: no projection of the view's own. */
const SEEN: Readonly<Record<ViewDirection, (place: Triple) => readonly [number, number]>> = {
  front: ([x, y]) => [1000 * x, -1000 * y],
  top: ([x, , z]) => [1000 * x, 1000 * z],
  side: ([, y, z]) => [-1000 * z, -1000 * y],
};

describe('scene', () => {
  it.each(EXAMPLES.flatMap((name) => (['front', 'top', 'side'] as const).map((view) => [name, view] as const)))(
    'has each pin of %s in the %s view where the table has its lever',
    (name, view) => {
      const { answers, picture } = solved.get(name)!;
      const scene = sceneOf(picture, view, undefined);
      const pins = marksOf(scene).filter(({ look }) => look === 'pin');
      expect(pins.length).toBeGreaterThan(1);
      const count = picture.stations.length;
      const stations = [0, 0.25, 0.5, 0.75, 1].map((share) => picture.stations[Math.round(share * (count - 1))]!);
      const table = answers.table(
        stations,
        picture.levers.map((lever) => `${lever.name}.rotation`),
      );
      let checked = 0;
      for (const [row, station] of stations.entries()) {
        for (const lever of picture.levers) {
          const degrees = table.columns.find((column) => column.name === `${lever.name}.rotation`)?.values[row];
          if (degrees === null || degrees === undefined) continue;
          for (const arm of lever.arms) {
            const drawn: Triple = [arm.at[0]! + arm.at[3]!, arm.at[1]! + arm.at[4]!, arm.at[2]! + arm.at[5]!];
            const [x, y] = SEEN[view](turnedAbout(drawn, lever.pivot, lever.axis, (degrees * Math.PI) / 180));
            const pin = pins.find((mark) => mark.name === `${lever.name}.${arm.name}`)!;
            const { circle } = noted(pin, picture, station);
            expect(circle![0]).toBeCloseTo(x, 3);
            expect(circle![1]).toBeCloseTo(y, 3);
            checked += 1;
          }
        }
      }
      expect(checked).toBeGreaterThan(pins.length);
    },
  );

  it.each(EXAMPLES)('of %s gives each mark a key of its own and figures only', (name) => {
    const { picture } = solved.get(name)!;
    for (const view of ['front', 'top', 'side'] as const) {
      const marks = marksOf(sceneOf(picture, view, picture));
      expect(new Set(marks.map(({ key }) => key)).size).toBe(marks.length);
      for (const travel of [0, 0.31, 0.777, 1]) {
        for (const mark of marks) {
          const { d, circle } = noted(mark, picture, travel);
          expect(d ?? circle?.join(' '), mark.key).not.toMatch(/NaN|Infinity|undefined|e[-+]/);
        }
      }
    }
  });

  it('leaves what cannot be assembled where it was last, dashed, and its driver moving', () => {
    const { picture } = solved.get('binding-broken.throttle.yaml')!;
    const marks = marksOf(sceneOf(picture, 'front', undefined));
    const mark = (name: string) => marks.find((candidate) => candidate.name === name)!;
    const [late, end] = [noted(mark('shaft.arm'), picture, 0.8), noted(mark('shaft.arm'), picture, 1)];
    expect(late.stands && end.stands).toBe(true);
    expect(late.circle).toEqual(end.circle);
    expect(noted(mark('shaft.arm'), picture, 0.4).stands).toBe(false);
    // The rod keeps its length: it stays at both ends, whatever its driver does.
    const length = (travel: number) => {
      const [x1, y1, x2, y2] = noted(mark('link'), picture, travel)
        .d!.match(/-?[\d.]+/g)!
        .map(Number) as [number, number, number, number];
      return Math.hypot(x2 - x1, y2 - y1);
    };
    expect(length(1)).toBeCloseTo(length(0), 2);
    expect(noted(mark('link'), picture, 1).stands).toBe(true);
  });

  it('draws a plate at its seat and idle when closed, that much further at its stop, and as long as its bore over the cosine of its seat', () => {
    const { picture } = solved.get('four-barrel.throttle.yaml')!;
    const plate = marksOf(sceneOf(picture, 'front', undefined)).find(({ name }) => name === 'bank')!;
    const ends = (travel: number) =>
      noted(plate, picture, travel)
        .d!.match(/-?[\d.]+/g)!
        .map(Number) as [number, number, number, number];
    /** From square to the bore, degrees. */
    const angleAt = (travel: number) => {
      const [x1, y1, x2, y2] = ends(travel);
      return (Math.atan2(Math.abs(y2 - y1), Math.abs(x2 - x1)) * 180) / Math.PI;
    };
    // Bore 42 mm, seat 6°, idle 1.5°, open stop at 82°, as the file gives them.
    const [x1, y1, x2, y2] = ends(0);
    expect(Math.hypot(x2 - x1, y2 - y1)).toBeCloseTo(42 / Math.cos((6 * Math.PI) / 180), 2);
    expect(angleAt(0)).toBeCloseTo(7.5, 2);
    expect(angleAt(1)).toBeCloseTo(89.5, 2);
  });
});
