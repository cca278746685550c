/** Least gaps and keep-outs as the view shows them, against figures by hand. */
import { describe, expect, it } from 'vitest';
import { isPicture } from '../../src/protocol/pictureGuards.ts';
import { shownOf } from './shown.ts';

const TEXT = `format: 1
levers:
  crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}, back: {radius: 30 mm, angle: 210 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out:
  post: {circle: [0, 70], radius: 10 mm, clearance: 20 mm}
  floor: {polygon: [[-60, -34], [60, -34], [60, -60], [-60, -60]]}
  far: {circle: [0, 300], radius: 10 mm}
  other_layer: {circle: [0, 60], radius: 10 mm, layer: 1}
`;

describe('least gaps', () => {
  const { picture, report } = shownOf(TEXT);

  it('are told with their parts and figures, the deepest first', () => {
    expect(
      picture.gaps.map(({ between, text, travel, clearance }) => [
        between.map(({ kind, name }) => `${kind} ${name}`),
        text,
        travel,
        clearance,
      ]),
    ).toEqual([
      [['lever crank', 'keep-out floor'], '2 mm deep', 1, 0],
      [['lever crank', 'keep-out post'], '14 mm', 1, 0.02],
      // Nothing near it: what comes nearest stands all the same.
      [['lever crank', 'keep-out far'], '244 mm', 1, 0],
    ]);
  });

  it('stand where the two are nearest', () => {
    const [deep, short] = picture.gaps;
    // The tip of `out` points up, 46 mm from the pivot; the post begins at 60.
    for (const [point, y] of [
      [short!.from, 0.046],
      [short!.to, 0.06],
      [deep!.from, -0.036],
      [deep!.to, -0.034],
    ] as const) {
      expect(point[0]).toBeCloseTo(0, 9);
      expect(point[1]).toBeCloseTo(y, 9);
      expect(point[2]).toBe(0);
    }
  });

  it('belong to keep-outs that can be chosen: parts with their dimensions and what comes nearest', () => {
    const outs = report.parts.filter(({ kind }) => kind === 'keep-out');
    expect(
      outs.map(({ name, dimensions, figures }) => [name, dimensions, figures.map(({ label, text, travel }) => [label, text, travel])]),
    ).toEqual([
      ['post', ['circle [0, 70]', 'radius 10 mm', 'clearance 20 mm'], [['least gap of post, to the arm crank.out', '14 mm', 1]]],
      ['floor', ['polygon [-60, -34, 60, -34, 60, -60, -60, -60]'], [['depth of the arm crank.back in floor', '2 mm', 1]]],
      ['far', ['circle [0, 300]', 'radius 10 mm'], [['least gap of far, to the arm crank.out', '244 mm', 1]]],
      ['other_layer', ['circle [0, 60]', 'radius 10 mm', 'layer 1'], []],
    ]);
    const [post] = outs;
    expect(TEXT.slice(post!.place.start, post!.place.end)).toBe('post');
  });

  it('are none of a file that is not solved', () => {
    expect(shownOf(TEXT.replace(/pedal:.*\n/, '')).picture.gaps).toEqual([]);
  });

  it('are refused by the page where they are of no use', () => {
    const [gap] = picture.gaps;
    for (const wrong of [
      { travel: 1.5 },
      { gap: NaN },
      { from: [0, 0] },
      { between: [gap!.between[0]] },
      { between: [{ kind: 'wall', name: 'post' }, gap!.between[1]] },
    ]) {
      expect(isPicture({ ...picture, gaps: [{ ...gap, ...wrong }] }), JSON.stringify(wrong)).toBe(false);
    }
  });
});
