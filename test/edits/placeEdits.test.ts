import '../support/seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { editsFor } from '../../src/edits/editsFor.ts';
import type { Change, Trial } from '../../src/protocol/messages.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { sketchText, type Sketch } from '../support/sketch.ts';
import { dot, minus, size, times, unit, type Vector } from '../support/vector.ts';
import { drawnPlace } from './places.ts';
import { commented, polarText } from './polarText.ts';

/** The text after a trial, or why there is none. */
function tried(text: string, ...trial: Trial): string {
  const edited = editsFor({ text, definition: readDefinition(text).definition }, trial);
  return 'why' in edited ? `refused: ${edited.why}` : applyEdits(text, edited.edits);
}

interface Wish {
  readonly fine?: boolean;
  readonly through?: string;
}

/** @param to mm */
function moved(path: string, to: readonly number[], { fine = false, through }: Wish = {}): Change {
  return { kind: 'place', path, to: [to[0]! / 1000, to[1]! / 1000, (to[2] ?? 0) / 1000], fine, through };
}

const FILE = `format: 1
let:
  reach: 38 mm ± 0.1 mm # by the drawing
  half: reach / 2
  way: 30 deg
  x0: 100 mm
points:
  centre: [184, 62] # probed
levers:
  crank:
    pivot: [120, 40.25]
    arms:
      round: {radius: 40 mm ± 0.05 mm, angle: 160 deg}
      by_let: {radius: reach, angle: 62 deg}
      by_half: {radius: 'half', angle: way}
      at: {at: [131, 18]} # by its place
      inch: {at: [5 in, 18]}
  shaft:
    pivot: centre
    axis: [0, 3, 4]
    arms:
      arm: {radius: 30, angle: 60, offset: 4 mm}
      flat: {radius: 30, angle: 60}
  slid:
    pivot: [x0, 2 * x0]
    arms:
      out: {radius: x0 / 4, angle: 10}
pedal: {lever: crank, opens: clockwise, travel: 20 deg}
cables:
  main: {from: crank.round, leaves: [30, 66], enters: ["90", '95'], to: shaft.arm}
springs:
  second:
    from:
      - 150 # across
      - 10  # up
    to: shaft.arm
    rate: 0.9 N/mm
    free_length: 46 mm
`;

/** Lines that differ, after the edit. */
function changedLines(text: string, after: string): readonly string[] {
  const before = text.split('\n');
  return after.split('\n').filter((line, index) => line !== before[index]);
}

describe('a place by coordinates', () => {
  test('is rounded to 0.1 mm, finer where asked, and keeps what stands beside it', () => {
    expect(changedLines(FILE, tried(FILE, moved('levers.crank.pivot', [121.26, 40.25])))).toEqual(['    pivot: [121.3, 40.25]']);
    expect(changedLines(FILE, tried(FILE, moved('levers.crank.pivot', [121.264, 39.877], { fine: true })))).toEqual([
      '    pivot: [121.26, 39.88]',
    ]);
    expect(changedLines(FILE, tried(FILE, moved('levers.crank.arms.at', [132, -0.04])))).toEqual([
      '      at: {at: [132, 0]} # by its place',
    ]);
  });

  test('is that of the point by whose name it is given', () => {
    const point = ['  centre: [185.1, 60] # probed'];
    expect(changedLines(FILE, tried(FILE, moved('levers.shaft.pivot', [185.1, 60])))).toEqual(point);
    expect(changedLines(FILE, tried(FILE, moved('points.centre', [185.1, 60])))).toEqual(point);
  });

  test('stays in its quotes, its block and its unit', () => {
    expect(tried(FILE, moved('cables.main.enters', [91.5, 95]))).toContain(`enters: ["91.5", '95']`);
    expect(tried(FILE, moved('springs.second.from', [149.5, 12]))).toContain('      - 149.5 # across\n      - 12  # up\n');
    // 130 mm is 5.11811… inch; what is written lands within 0.005 mm.
    expect(tried(FILE, moved('levers.crank.arms.inch', [130, 18]))).toContain('inch: {at: [5.118 in, 18]}');
  });

  test('gets a z where it is moved out of the plane', () => {
    expect(tried(FILE, moved('levers.crank.pivot', [120, 40.25, 3.14]))).toContain('pivot: [120, 40.25, 3.1]');
    expect(tried(FILE, moved('springs.second.from', [150, 10, -2]))).toContain('      - 10  # up\n      - -2\n');
  });

  test('is not written where it stands there', () => {
    expect(tried(FILE, moved('levers.crank.pivot', [120, 40.25]))).toBe(FILE);
    expect(tried(FILE, moved('levers.shaft.arms.arm', drawnPlace(FILE, 'levers.shaft.arms.arm')))).toBe(FILE);
  });
});

describe('a pin by radius and angle', () => {
  test('is written by them, as short as it may be', () => {
    const after = tried(FILE, moved('levers.crank.arms.round', [120, 80.25], { fine: true }));
    expect(changedLines(FILE, after)).toEqual(['      round: {radius: 40 mm ± 0.05 mm, angle: 90 deg}']);
    const near = tried(FILE, moved('levers.crank.arms.round', [85, 52]));
    expect(size(minus(drawnPlace(near, 'levers.crank.arms.round'), [85, 52, 0]))).toBeLessThan(0.005);
  });

  test('moves along its axis where the text has an offset, and else stays in its plane', () => {
    const axis = unit([0, 3, 4]);
    const arm = drawnPlace(FILE, 'levers.shaft.arms.arm');
    const lifted = arm.map((figure, index) => figure + 2.5 * axis[index]!) as unknown as Vector;
    expect(changedLines(FILE, tried(FILE, moved('levers.shaft.arms.arm', lifted, { fine: true })))[0]).toMatch(
      /offset: 6\.(?:49|50?)\d* mm\}/,
    );
    const flat = drawnPlace(FILE, 'levers.shaft.arms.flat');
    const off = flat.map((figure, index) => figure + 2.5 * axis[index]!) as unknown as Vector;
    const after = tried(FILE, moved('levers.shaft.arms.flat', off, { fine: true }));
    expect(after).not.toMatch(/flat: .*offset/);
    expect(size(minus(drawnPlace(after, 'levers.shaft.arms.flat'), flat))).toBeLessThan(0.02);
  });

  test('is not put on its own axis', () => {
    expect(tried(FILE, moved('levers.crank.arms.round', [120, 40.25], { fine: true }))).toBe(
      'refused: The pin would stand on the axis of `crank`',
    );
  });

  test('lands where it is asked to though its pivot is moved too', () => {
    const both = [moved('levers.crank.arms.round', [80, 60]), moved('levers.crank.pivot', [115, 45])];
    const after = tried(FILE, ...both);
    expect(drawnPlace(after, 'levers.crank.pivot')).toEqual([115, 45, 0]);
    expect(size(minus(drawnPlace(after, 'levers.crank.arms.round'), [80, 60, 0]))).toBeLessThan(0.005);
  });
});

describe('a place that follows from a formula', () => {
  test('is not moved before one of the values behind it is chosen', () => {
    expect(tried(FILE, moved('levers.crank.arms.by_let', [140, 80]))).toMatch(/^refused: .*follows from `reach`: choose which to write$/);
    expect(tried(FILE, moved('levers.crank.arms.by_half', [140, 80]))).toMatch(/follows from `reach` or `way`: choose/);
    expect(tried(FILE, moved('levers.crank.arms.by_half', [140, 80], { through: 'x0' }))).toMatch(
      /does not follow from `x0`, but from `reach` or `way`$/,
    );
  });

  test('has that one value solved for, and its own plain figures written', () => {
    const after = tried(FILE, moved('levers.crank.arms.by_let', [140, 80], { through: 'reach' }));
    expect(size(minus(drawnPlace(after, 'levers.crank.arms.by_let'), [140, 80, 0]))).toBeLessThan(0.005);
    expect(after).toMatch(/reach: 44\.\d+ mm ± 0\.1 mm # by the drawing/);
    expect(changedLines(FILE, after)).toHaveLength(2);
  });

  test('is brought as near as that one value alone brings it', () => {
    const after = tried(FILE, moved('levers.crank.arms.by_half', [150, 60], { through: 'reach' }));
    const pin = drawnPlace(after, 'levers.crank.arms.by_half');
    // The angle stays at 30°; the radius is that of the place asked for, by the other formula.
    expect(size(minus(pin, [120, 40.25, 0]))).toBeCloseTo(Math.hypot(30, 19.75), 2);
    expect(changedLines(FILE, after)).toHaveLength(1);
    // x0 and 2·x0: the nearest point of that line to [130, 220] has x = (130 + 2 · 220) / 5.
    const slid = tried(FILE, moved('levers.slid.pivot', [130, 220], { through: 'x0' }));
    expect(drawnPlace(slid, 'levers.slid.pivot')[0]).toBeCloseTo(114, 2);
  });

  test('is left to the person where the value would move the whole lever', () => {
    expect(tried(FILE, moved('levers.slid.arms.out', [130, 205], { through: 'x0' }))).toMatch(/moves the lever/);
  });

  test('is refused where no value gives it', () => {
    const text = 'format: 1\nlet:\n  a: 20 mm\nlevers:\n  b:\n    pivot: ["min(a, 30 mm)", 0]\n';
    expect(tried(text, moved('levers.b.pivot', [40, 0], { through: 'a' }))).toBe('refused: No value of `a` brings it there');
    expect(tried(text, moved('levers.b.pivot', [25, 0], { through: 'a' }))).toContain('a: 25 mm');
  });
});

test('what is not there, or nowhere, is refused in words', () => {
  expect(tried(FILE, moved('levers.crank.arms.none', [0, 0]))).toMatch(/^refused: There is no place `levers.crank.arms.none`/);
  expect(tried(FILE, moved('levers.crank.pivot', [NaN, 0]))).toMatch(/^refused: .*cannot be moved there$/);
  expect(tried('- 1\n- 2\n', moved('levers.crank.pivot', [1, 0]))).toMatch(/^refused: /);
  expect(tried('format: 1\nlevers:\n  a: {pivot: [&one 5, *one], arms: {out: {at: [9, 9]}}}\n', moved('levers.a.pivot', [1, 2]))).toMatch(
    /^refused: One figure/,
  );
});

/** What every text keeps: each of its lines' comments, and every character outside figures. */
function withoutFigures(text: string): string {
  return text.replace(/-?\d+(?:\.\d+)?/g, '0');
}

describe('any linkage, planar or with leaning axes', () => {
  const wish = fc.tuple(fc.double({ min: -25, max: 25, noNaN: true }), fc.double({ min: -25, max: 25, noNaN: true }), fc.nat());
  const forms: readonly ((sketch: Sketch) => string)[] = [polarText, (sketch) => commented(sketchText(sketch))];

  test('has the place where it was asked for, and all else as it was', () => {
    let checked = 0;
    fc.assert(
      fc.property(anyMechanism(), wish, fc.nat(1), fc.boolean(), fc.boolean(), (sketch, [dx, dy, which], form, fine, crlf) => {
        const plain = forms[form]!(sketch);
        const text = crlf ? `\ufeff${plain.replaceAll('\n', '\r\n')}` : plain;
        const paths = sketch.levers.flatMap(({ name, arms }) => [
          `levers.${name}.pivot`,
          ...Object.keys(arms).map((arm) => `levers.${name}.arms.${arm}`),
        ]);
        const path = paths[which % paths.length]!;
        const present = drawnPlace(text, path);
        const to: Vector = [present[0] + dx, present[1] + dy, present[2]];
        const after = tried(text, moved(path, to, { fine }));
        if (after.startsWith('refused')) return expect(after).toContain('would stand on the axis');
        checked++;
        const step = fine ? 0.01 : 0.1;
        const lever = sketch.levers.find(({ name }) => path.startsWith(`levers.${name}.`))!;
        const rounded = to.map((figure, index) =>
          Math.abs(figure - present[index]!) < 1e-6 ? figure : Math.round(figure / step) * step,
        ) as unknown as Vector;
        const miss = minus(drawnPlace(after, path), rounded);
        // Without an offset in the text a pin does not leave its lever's plane.
        const isHeld = path.includes('.arms.') && form === 0 && !offsetOf(text, path);
        const u = unit(lever.axis);
        expect(size(isHeld ? minus(miss, times(u, dot(miss, u))) : miss)).toBeLessThan(step * 0.05 * 1.0001);
        expect(withoutFigures(after)).toBe(withoutFigures(text));
        for (const other of paths)
          if (other !== path && !other.startsWith(`${path.replace(/pivot$/, '')}arms`))
            expect(drawnPlace(after, other)).toEqual(drawnPlace(text, other));
      }),
      { numRuns: 300 },
    );
    expect(checked).toBeGreaterThan(250);
  });
});

/** Whether the text gives a pin an offset along its lever's axis. */
function offsetOf(text: string, path: string): boolean {
  const arm = path.slice(path.lastIndexOf('.') + 1);
  return new RegExp(`\\b${arm}: \\{[^}]*offset`).test(text);
}

test('an angle is counted on from the one that is written, beyond half a turn too', () => {
  for (const degrees of [200, -200, 560]) {
    const text = `format: 1\nlevers:\n  a: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: ${degrees} deg}}}\npedal: {lever: a, opens: clockwise, travel: 20 deg}\n`;
    const to = ((degrees + 5) * Math.PI) / 180;
    const change: Change = {
      kind: 'place',
      path: 'levers.a.arms.out',
      to: [0.04 * Math.cos(to), 0.04 * Math.sin(to), 0],
      fine: true,
      through: undefined,
    };
    const angle = /angle: (\S+) deg/.exec(tried(text, change))?.[1];
    expect(Math.abs(Number(angle) - (degrees + 5))).toBeLessThan(0.02);
  }
});
