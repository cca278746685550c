import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { isSame } from '../../src/studies/compare.ts';
import type { Comparison, FileChanges } from '../../src/studies/compare/comparison.ts';
import { BASE, change, edited } from './compareFiles.ts';

const NOTHING: FileChanges = { values: [], words: [], added: [], gone: [], renamed: [], unread: [], rewritten: [] };

/** Path, and both sides as written. */
const values = ({ file }: Comparison): readonly unknown[] =>
  file.values.map(({ path, was, is, changed }) => [path, was?.text, is?.text, changed]);
const words = ({ file }: Comparison): readonly unknown[] => file.words.map(({ path, was, is }) => [path, was, is]);
/** All of the file's changes but the named ones. */
const others = ({ file }: Comparison, ...but: readonly (keyof FileChanges)[]): unknown => ({
  ...file,
  ...Object.fromEntries(but.map((key) => [key, []])),
});

describe('no difference', () => {
  it('is between a text and itself', () => {
    const same = compareTexts(BASE, BASE);
    expect(isSame(same)).toBe(true);
    expect(same.file).toEqual(NOTHING);
    expect(same.curves).toEqual([]);
    expect(same.verdict).toEqual({ worse: false, newErrors: 0, lostRequirements: 0, lostSolution: false, unjudged: [], closesLess: [] });
    expect([same.was, same.is]).toEqual(['solved', 'solved']);
  });

  it.each([
    ['comments', BASE.replaceAll('\n', ' # so\n')],
    ['line ends and a byte order mark', `\ufeff${BASE.replaceAll('\n', '\r\n')}`],
    ['blanks', BASE.replaceAll(': ', ':   ').replaceAll(', ', ',  ')],
    ['blanks in formulas', BASE.replace('reach + 2 mm', 'reach+2mm').replace('>= 67', '>=67')],
    ['quotes', edited(['half: reach / 2', 'half: "reach / 2"'])],
    ['the order of parts', edited(['  crank: [0, 0]\n  centre: [90, 10]', '  centre: [90, 10]\n  crank: [0, 0]'])],
    ['the order of blocks', `${edited(['title: Two barrels\n', ''])}title: Two barrels\n`],
    ['the order of what a movement moves', edited(['[shaft, main.enters]', '[main.enters, shaft]'])],
    ['a default written out', edited(['lever: shaft, rate: 2.4', 'counts_as_return: true, lever: shaft, rate: 2.4'])],
    ['an anchor for what is repeated', edited(['open: 68 deg', 'open: &full 68 deg'])],
  ])('comes from %s', (_, text) => {
    const comparison = compareTexts(BASE, text);
    expect(comparison.file).toEqual(NOTHING);
    expect(isSame(comparison)).toBe(true);
  });

  it('comes from another unit for the same value, which is told apart as rewritten', () => {
    const comparison = compareTexts(
      edited(['slack: 1 mm', 'slack: 25.4 mm'], ['pull: 32 mm', 'pull: 57 mm']),
      edited(['slack: 1 mm', 'slack: 1 inch'], ['pull: 32 mm', 'pull: 57 mm']),
    );
    expect(isSame(comparison)).toBe(true);
    expect(comparison.file.rewritten.map(({ path, was, is }) => [path, was.text, is.text])).toEqual([
      ['cables.main.slack', '25.4 mm', '1 inch'],
    ]);
    expect(others(comparison, 'rewritten')).toEqual(NOTHING);
  });
});

describe('a value', () => {
  it('is told by its path, SI, and as it is written', () => {
    const comparison = change(['slack: 1 mm', 'slack: 0.1 inch']);
    expect(others(comparison, 'values')).toEqual(NOTHING);
    expect(comparison.file.values).toMatchObject([
      {
        ...{ block: 'cables', name: 'main', path: 'cables.main.slack', changed: ['value'], follows: [] },
        was: { text: '1 mm', unit: 'mm', nominal: 0.001, dimension: 'length' },
        is: { text: '0.1 inch', unit: 'inch', dimension: 'length' },
      },
    ]);
    expect(comparison.file.values[0]?.is?.nominal).toBeCloseTo(0.00254, 12);
  });

  it.each([
    ['of an arm', ['angle: 120 deg', 'angle: 121 deg'], 'levers.bellcrank.arms.out.angle'],
    ['of a drum', ['groove: 120 deg', 'groove: 121 deg'], 'levers.bellcrank.drums.quadrant.groove'],
    ['of a stop', ['open: 68 deg', 'open: 67 deg'], 'levers.shaft.stops.open'],
    ['of the pedal', ['pull: 32 mm', 'pull: 31 mm'], 'pedal.pull'],
    ['of a place', ['enters: [-60, 30]', 'enters: [-60, 31]'], 'cables.main.enters.1'],
    ['of an adjuster', ['max: 100 mm', 'max: 101 mm'], 'rods.link.adjust.max'],
    ['of a plate', ['bore: 45 mm', 'bore: 46 mm'], 'plates.bank.bore'],
    ['of a range', ['[0 deg, 110 deg]', '[0 deg, 111 deg]'], 'sensors.position.range.1'],
    ['of a spring', ['rate: 0.9 N/mm', 'rate: 0.8 N/mm'], 'springs.second.rate'],
    ['of a keep-out', ['[140, 120]', '[140, 121]'], 'keep_out.rail.circle.1'],
    ['of a movement', ['[0, 0.1, 0]', '[0, 0.2, 0]'], 'movements.rock.shift.1'],
    ['of a limit', ['[35 deg, 25 deg]', '[35 deg, 24 deg]'], 'limits.transmission.1'],
  ] as const)('%s has the path that it has in the file', (_, pair, path) => {
    const comparison = change(pair);
    expect(comparison.file.values.map((each) => [each.path, each.changed])).toEqual([[path, ['value']]]);
    expect(others(comparison, 'values')).toEqual(NOTHING);
  });

  it('is new or gone with one side alone', () => {
    expect(values(change(['slack: 1 mm, ', '']))).toEqual([['cables.main.slack', '1 mm', undefined, []]]);
    expect(values(change(['adjust: {min', 'length: 94 mm, adjust: {min']))).toEqual([['rods.link.length', undefined, '94 mm', []]]);
  });

  it('is told where its tolerance alone changed', () => {
    expect(values(change(['30 mm ± 0.1 mm', '30 mm ± 0.2 mm']))).toEqual([
      ['let.reach', '30 mm ± 0.1 mm', '30 mm ± 0.2 mm', ['tolerance']],
    ]);
    expect(values(change(['30 mm ± 0.1 mm', '30 mm']))).toEqual([['let.reach', '30 mm ± 0.1 mm', '30 mm', ['tolerance']]]);
    expect(values(change(['30 mm ± 0.1 mm', '30 mm +0.1/-0.1 mm']))).toEqual([]);
  });

  it('is told where a formula stands for its value', () => {
    expect(values(change(['reach + 2 mm', '32 mm']))).toEqual([['levers.shaft.arms.arm.radius', 'reach + 2 mm', '32 mm', ['formula']]]);
    expect(values(change(['reach + 2 mm', 'reach + 3 mm']))).toEqual([
      ['levers.shaft.arms.arm.radius', 'reach + 2 mm', 'reach + 3 mm', ['value', 'formula']],
    ]);
  });

  it('is told at the point by whose name a place is given, and nowhere else', () => {
    expect(values(change(['centre: [90, 10]', 'centre: [91, 10]']))).toEqual([['points.centre.0', '90', '91', ['value']]]);
  });

  it('is told at the anchor that an alias repeats, and nowhere else', () => {
    const aliased = (open: string): string => edited(['groove: 120 deg', `groove: &full ${open}`], ['open: 68 deg', 'open: *full']);
    expect(values(compareTexts(aliased('68 deg'), aliased('69 deg')))).toEqual([
      ['levers.bellcrank.drums.quadrant.groove', '68 deg', '69 deg', ['value']],
    ]);
  });
});

describe('a `let` that changed', () => {
  it('lists what changed through it alone, through other formulas too', () => {
    const comparison = change(['reach: 30 mm', 'reach: 31 mm']);
    expect(values(comparison)).toEqual([['let.reach', '30 mm ± 0.1 mm', '31 mm ± 0.1 mm', ['value']]]);
    expect(comparison.file.values[0]?.follows).toEqual([
      'let.half',
      'levers.bellcrank.arms.out.radius',
      'levers.shaft.arms.arm.radius',
      'levers.shaft.arms.spare.radius',
    ]);
    expect(others(comparison, 'values')).toEqual(NOTHING);
  });

  it('leaves a value that has another formula besides to itself', () => {
    const comparison = change(['reach: 30 mm', 'reach: 31 mm'], ['reach + 2 mm', 'reach + 3 mm']);
    expect(comparison.file.values.map(({ path }) => path)).toEqual(['let.reach', 'levers.shaft.arms.arm.radius']);
    expect(comparison.file.values[0]?.follows).not.toContain('levers.shaft.arms.arm.radius');
  });

  it('has each of two changed ones list what rests on both', () => {
    const comparison = change(['reach: 30 mm', 'reach: 31 mm'], ['half: reach / 2', 'half: reach / 3']);
    expect(comparison.file.values.map(({ path, follows }) => [path, follows.includes('levers.shaft.arms.spare.radius')])).toEqual([
      ['let.reach', true],
      ['let.half', true],
    ]);
  });
});

describe('a word', () => {
  it.each([
    ['a title', ['Two barrels', 'Three'], ['title', 'Two barrels', 'Three']],
    ['a choice', ['kind: rod_end', 'kind: clevis'], ['rods.link.ends.kind', 'rod_end', 'clevis']],
    ['a turn', ['wraps: clockwise', 'wraps: counterclockwise'], ['levers.bellcrank.drums.quadrant.wraps', 'clockwise', 'counterclockwise']],
    [
      'a flag',
      ['lever: shaft, rate: 2.4', 'counts_as_return: false, lever: shaft, rate: 2.4'],
      ['springs.first.counts_as_return', 'true', 'false'],
    ],
    ['a pin', ['to: shaft.arm', 'to: shaft.spare'], ['rods.link.to', 'shaft.arm', 'shaft.spare']],
    ['a lever', ['{lever: shaft, at_closed', '{lever: bellcrank, at_closed'], ['sensors.position.lever', 'shaft', 'bellcrank']],
    ['a point', ['pivot: centre', 'pivot: crank'], ['levers.shaft.pivot', 'centre', 'crank']],
    ['what a movement moves', ['[shaft, main.enters]', '[shaft]'], ['movements.rock.moves', 'main.enters, shaft', 'shaft']],
    [
      'a requirement',
      ['>= 67 deg', '>= 66 deg'],
      ['require.opens fully', 'at(100%, shaft.opening) >= 67 deg', 'at(100%, shaft.opening) >= 66 deg'],
    ],
  ] as const)('is told: %s', (_, pair, expected) => {
    const comparison = change(pair);
    expect(words(comparison)).toEqual([expected]);
    expect(others(comparison, 'words')).toEqual(NOTHING);
  });

  it('is told where it was left out', () => {
    expect(words(change(['    pivot: centre\n', '    pivot: centre\n    opens: clockwise\n']))).toEqual([
      ['levers.shaft.opens', undefined, 'clockwise'],
    ]);
  });

  it('tells a place given by a name that was given by figures, and the figures where they differ', () => {
    expect(words(change(['pivot: centre', 'pivot: [90, 10]']))).toEqual([['levers.shaft.pivot', 'centre', undefined]]);
    const moved = change(['pivot: centre', 'pivot: [91, 10]']);
    expect(values(moved)).toEqual([['levers.shaft.pivot.0', '90', '91', ['value']]]);
  });

  it('does not tell the form of what is new beside its figures', () => {
    const comparison = change(['    pivot: crank\n', '    pivot: crank\n    axis: [0, 0, 1]\n']);
    expect(words(comparison)).toEqual([]);
    expect(comparison.file.values.map(({ path }) => path)).toEqual([0, 1, 2].map((index) => `levers.bellcrank.axis.${index}`));
  });

  it('tells an arm that is given in another way with its figures', () => {
    const comparison = change(['{radius: half, angle: 0 deg}', '{at: [105, 10]}']);
    expect(words(comparison)).toEqual([['levers.shaft.arms.spare', 'polar', 'place']]);
    expect(comparison.file.values.map(({ path }) => path).sort()).toEqual([
      'levers.shaft.arms.spare.angle',
      'levers.shaft.arms.spare.at.0',
      'levers.shaft.arms.spare.at.1',
      'levers.shaft.arms.spare.radius',
    ]);
  });
});
