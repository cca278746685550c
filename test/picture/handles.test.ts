/** What a person can drag: each place of the file once, by its path, with the values behind it. */
import { describe, expect, it } from 'vitest';
import { valuesOf } from '../../src/language/values.ts';
import { FILES, leverNamed, placeAt, shownOf } from './shown.ts';

const TEXT = `format: 1
let:
  reach: 38 mm
  twice: 2 * reach
  clock: 40 deg
points:
  shared: [100, 10 mm + reach]
  lonely: [1, 2]
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 220, angle: -75}, out: {radius: twice, angle: 100 deg + clock}}}
  shaft:
    pivot: shared
    axis: {through: [100, 48, 50]}
    arms:
      arm: {radius: 30, angle: 80}
      tang: {at: [120, 30]}
      hook: {at: anchor_point}
pedal: {lever: foot, opens: counterclockwise, travel: 20 deg, pad: pad}
cables:
  main: {from: foot.pad, leaves: [80, -200], enters: [60, 90], to: shaft.arm}
springs:
  back: {from: shared, to: shaft.tang, rate: 1 N/mm, free_length: 10 mm}
  side: {from: [150, 60], to: shaft.tang, rate: 1 N/mm, free_length: 20 mm}
  coil: {lever: shaft, rate: 2 N*mm/deg}
keep_out:
  rail: {circle: [300, 300], radius: 11 mm}
`;

describe('handles', () => {
  const { picture } = shownOf(TEXT.replace('points:\n', 'points:\n  anchor_point: [90, 70]\n'));
  const by = (path: string) => {
    const found = picture.handles.filter((handle) => handle.path === path);
    expect(found, path).toHaveLength(1);
    return found[0]!;
  };

  it('are pivots, pins, housing ends and anchors, and nothing else', () => {
    expect(picture.handles.map(({ path, kind }) => `${kind} ${path}`)).toEqual([
      'pivot levers.foot.pivot',
      'pin levers.foot.arms.pad',
      'pin levers.foot.arms.out',
      'pivot points.shared',
      'pin levers.shaft.arms.arm',
      'pin levers.shaft.arms.tang',
      'pin points.anchor_point',
      'housing cables.main.leaves',
      'housing cables.main.enters',
      'anchor springs.side.from',
    ]);
  });

  it('are one for all that take a place from points, told with what takes it', () => {
    expect(by('points.shared').label).toBe('shared: pivot of shaft, anchor of back');
    expect(by('points.shared').at).toEqual([0.1, 0.048, 0]);
  });

  it('say which plain values they follow from, through other formulas too', () => {
    expect(by('points.shared').lets).toEqual(['reach']);
    expect([...by('levers.foot.arms.out').lets].sort()).toEqual(['clock', 'reach']);
    expect(by('levers.shaft.arms.tang').lets).toEqual([]);
    expect(by('levers.foot.pivot').lets).toEqual([]);
  });

  it('turn with the lever where they are pins', () => {
    const { at } = by('levers.shaft.arms.tang');
    if (!('lever' in at)) throw new Error('The pin stands still');
    expect(picture.levers[at.lever]!.name).toBe('shaft');
    const [x, y] = placeAt(at.at, 0);
    expect(x).toBeCloseTo(0.12, 12);
    expect(y).toBeCloseTo(0.03, 12);
    expect(leverNamed(picture.levers, 'shaft').arms.find(({ name }) => name === 'tang')!.at).toEqual(at.at);
  });

  it('stand still where they do', () => {
    expect(by('cables.main.enters').at).toEqual([0.06, 0.09, 0]);
    expect(by('springs.side.from').at).toEqual([0.15, 0.06, 0]);
  });
});

it.each(FILES)('of $name lead to values that stand in the file', ({ text }) => {
  const { picture, answers } = shownOf(text);
  const paths = valuesOf(answers.definition!).map(({ path }) => path);
  expect(picture.handles.length).toBeGreaterThan(4);
  expect(new Set(picture.handles.map(({ path }) => path)).size).toBe(picture.handles.length);
  for (const { path } of picture.handles)
    expect(
      paths.some((each) => each.startsWith(`${path}.`)),
      path,
    ).toBe(true);
});
