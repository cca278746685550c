/** Plates that turn past 90°, what of their open area is lost by then, and the stop at which they stand along the bore. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { checkFindings } from '../support/checkFindings.ts';
import { markedAt } from '../support/markedAt.ts';
import { degrees } from './handGeometry.ts';

/** The cable turns the shaft by as much as the stop lets it. */
const upTo = (opening: number, shaft = 0, stop = `, open: ${opening} deg`): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg${stop}}}
pedal: {cable: main, pull: ${(24 * opening * Math.PI) / 180} mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40, shaft: ${shaft}, seat: 6 deg, idle: 1.5 deg}}
`;

describe('plates past 90°', () => {
  it('are warned of with what is lost of their open area, without a shaft in the way', () => {
    // 90° + 3°: 1 − cos 87°/cos 6° is left of the bore.
    const lost = (100 * Math.cos((87 * Math.PI) / 180)) / Math.cos((6 * Math.PI) / 180);
    const { only } = checkFindings(
      markedAt(
        upTo(85.5),
        `open: |85.5 deg|`,
        `warning[plate-past-square]: The plates bank turn up to 3° past 90°, at 100 % of pedal travel: the open area of each falls by up to ${Number(lost.toFixed(1))} % of its greatest, from 96.`,
      ),
    );
    expect(degrees(only('plate-past-square').worst?.value ?? NaN)).toBeCloseTo(93, 9);
  });

  it('are a note as long as the shaft hides them, and none up to 0.1°', () => {
    // cos ψ below 0.2 · cos 6°: hidden until 11.47° past 90°.
    checkFindings(markedAt(upTo(85.5, 8), 'open: |85.5 deg|', 'note[plate-past-square]: the shaft still hides them there'));
    checkFindings(markedAt(upTo(93, 8), 'open: |93 deg|', 'note[plate-past-square]: 10.5° past 90°'));
    checkFindings(markedAt(upTo(98, 8), 'open: |98 deg|', 'warning[plate-past-square]: 15.5° past 90°'));
    checkFindings(upTo(82.55));
    checkFindings(markedAt(upTo(82.65), 'open: |82.65 deg|', 'warning[plate-past-square]: 0.15° past 90°'));
  });

  it('are mended by the open stop at which they stand along the bore', () => {
    const mended = applyMend(upTo(85.5), 'plate-past-square');
    expect(mended.mend).toMatchObject({ unknown: 'levers.shaft.stops.open', outcome: { kind: 'itself' } });
    expect(degrees(mended.value)).toBeCloseTo(82.5, 9);
    // What the pedal pulls on is told in its turn.
    expect(mended.left).toEqual(['opening-early shaft']);
  });

  it.each([
    [
      'seat: 84 deg, idle: 6 deg',
      '84 deg',
      "Count `seat` from square to the bore: 84° from the bore's axis are 6°. With 84° of seat and 6° of idle",
    ],
    ['seat: 60 deg, idle: 31 deg', '60 deg', "Count `seat` from square to the bore: 60° from the bore's axis are 30°"],
    ['seat: 6 deg, idle: 84 deg', '84 deg', 'Count `idle` from the seat: the few degrees'],
  ])('that stand at 90° before they open are told at the angle to blame, with what it is counted from: %s', (angles, at, instead) => {
    const text = upTo(40).replace('seat: 6 deg, idle: 1.5 deg', angles);
    const [finding, ...more] = solve(text).findings.filter(({ code }) => code === 'plate-past-square');
    expect(more).toEqual([]);
    expect(text.slice(finding?.span.start, finding?.span.end)).toBe(at);
    expect(finding?.cure).toContain(instead);
    expect(finding?.cure).toMatch(/the plates stand at 9[01]° before they open$/);
    expect(finding).not.toHaveProperty('mend');
  });

  it('set their open stop by those of their lever that do not stand past 90° as drawn', () => {
    const text = upTo(85.5).replace(/^plates: \{/m, 'plates: {wrong: {lever: shaft, bore: 40, seat: 89 deg, idle: 1 deg}, ');
    const cures = solve(text).findings.flatMap(({ code, part, cure = '' }) => (code === 'plate-past-square' ? [[part, cure]] : []));
    expect(cures).toEqual([
      ['wrong', expect.stringMatching(/^Count `seat`/)],
      ['bank', expect.stringMatching(/^Set the open stop at 82\.5°/)],
    ]);
  });

  it('are told at the plates where the file has no open stop', () => {
    const [finding] = solve(upTo(85.5, 0, '')).findings;
    expect(finding).toMatchObject({
      code: 'plate-past-square',
      part: 'bank',
      cure: expect.stringContaining('Give it an open stop at 82.5°') as string,
    });
    expect(finding).not.toHaveProperty('mend');
  });
});
