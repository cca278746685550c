import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { isSame } from '../../src/studies/compare.ts';
import type { Comparison } from '../../src/studies/compare/comparison.ts';
import { BASE, change, edited } from './compareFiles.ts';

const IN_BLOCKS = [
  ['let', 'let:\n', 'fresh: 7 mm', 'fresh'],
  ['points', 'points:\n', 'fresh: [1, 2]', 'fresh'],
  ['levers', 'levers:\n', 'fresh: {pivot: [300, 0], arms: {a: {at: [310, 0]}}}', 'fresh'],
  ['arms', '    arms:\n      out', 'fresh: {at: [5, 5]}', 'bellcrank.fresh'],
  ['drums', '    drums:\n', 'fresh: {radius: 20 mm, wraps: clockwise}', 'bellcrank.fresh'],
  ['plates', 'plates:\n', 'fresh: {lever: bellcrank, count: 1, bore: 40 mm}', 'fresh'],
  ['sensors', 'sensors:\n', 'fresh: {lever: bellcrank, at_closed: 9 deg, range: [0 deg, 90 deg], signal: [1 V, 4 V]}', 'fresh'],
  ['springs', 'springs:\n', 'fresh: {lever: bellcrank, rate: 1 N*mm/deg}', 'fresh'],
  ['keep_out', 'keep_out:\n', 'fresh: {circle: [0, 300], radius: 9 mm}', 'fresh'],
  ['movements', 'movements:\n', 'fresh: {moves: [shaft], shift: [0.01, 0, 0]}', 'fresh'],
  ['limits', 'limits:\n', 'drive: 20 deg', 'drive'],
  ['require', 'require:\n', 'fresh one: pedal.travel >= 0', 'fresh one'],
] as const;

/** The base with one more entry in a block. */
function extended(block: string, head: string, entry: string): string {
  const indent = block === 'arms' || block === 'drums' ? '      ' : '  ';
  const start = block === 'arms' ? head.slice(0, head.indexOf('\n') + 1) : head;
  const at = BASE.indexOf(head) + start.length;
  return `${BASE.slice(0, at)}${indent}${entry}\n${BASE.slice(at)}`;
}

describe('parts', () => {
  it.each(IN_BLOCKS)('of the block %s are new on one way and gone on the other', (block, head, entry, name) => {
    const longer = extended(block, head, entry);
    const there = compareTexts(BASE, longer).file;
    expect(there).toEqual({ ...EMPTY, added: [{ block, name }] });
    expect(compareTexts(longer, BASE).file).toEqual({ ...EMPTY, gone: [{ block, name }] });
  });

  it.each([
    ['rods', 'cables', 'rods:\n  second: {from: bellcrank.out, to: idler.a}\n', 'second'],
    ['slots', 'cables', 'slots:\n  second: {pin: bellcrank.out, fork: idler, angle: 90 deg}\n', 'second'],
    ['couplings', 'cables', 'couplings:\n  second: {from: bellcrank, to: idler, ratio: 1}\n', 'second'],
  ] as const)('of the block %s too', (block, _, text, name) => {
    const withIdler = edited(['levers:\n', 'levers:\n  idler: {pivot: [200, 60], arms: {a: {at: [205, 90]}}}\n']);
    const longer = block === 'rods' ? withIdler.replace('rods:\n', text) : `${withIdler}${text}`;
    expect(compareTexts(withIdler, longer).file).toEqual({ ...EMPTY, added: [{ block, name }] });
  });

  it('tell a lever without the arms that come and go with it', () => {
    const comparison = compareTexts(extended('levers', IN_BLOCKS[2][1], IN_BLOCKS[2][2]), BASE);
    expect(comparison.file.gone).toEqual([{ block: 'levers', name: 'fresh' }]);
  });

  it('that share no content are gone and new, not renamed', () => {
    const { file } = change(['  first: {lever: shaft, rate: 2.4', '  other: {lever: shaft, rate: 2.5']);
    expect(file).toEqual({ ...EMPTY, added: [{ block: 'springs', name: 'other' }], gone: [{ block: 'springs', name: 'first' }] });
  });
});

const EMPTY: Comparison['file'] = { values: [], words: [], added: [], gone: [], renamed: [], unread: [], rewritten: [] };

/** Another name for a part, wherever the file speaks of it. */
const renamed = (was: string, is: string): string => BASE.replace(new RegExp(`\\b${was}\\b`, 'g'), is);

describe('a renamed part', () => {
  it.each([
    ['let', 'reach', 'arm_reach'],
    ['points', 'centre', 'shaft_centre'],
    ['levers', 'shaft', 'axle'],
    ['levers', 'bellcrank', 'crank_lever'],
    ['cables', 'main', 'inner'],
    ['rods', 'link', 'drag_link'],
    ['plates', 'bank', 'barrels'],
    ['springs', 'second', 'outer'],
    ['keep_out', 'rail', 'fuel_rail'],
    ['movements', 'rock', 'sway'],
    ['require', 'light', 'light enough'],
  ] as const)('of the block %s is told as such, wherever it is spoken of, and changes nothing', (block, was, is) => {
    // The plates have a `shaft` of their own.
    const text = renamed(was, is).replace('axle: 8 mm', 'shaft: 8 mm');
    const comparison = compareTexts(BASE, text);
    expect(comparison.file).toEqual({ ...EMPTY, renamed: [{ block, was, is }] });
    const { outcomes, columns, findings, problems, requirements, curves, notChecked } = comparison;
    expect({ outcomes, columns, requirements, curves, notChecked }).toEqual({
      ...{ outcomes: [], columns: { added: [], gone: [] }, requirements: [], curves: [] },
      notChecked: { added: [], gone: [] },
    });
    for (const marks of [findings, problems]) expect(marks).toEqual({ added: [], gone: [], kept: [] });
    expect(isSame(comparison)).toBe(false);
    expect(comparison.verdict.worse).toBe(false);
  });

  it.each([
    ['arms', 'out', 'outer'],
    ['drums', 'quadrant', 'sheave'],
  ] as const)('of the %s of a lever is told with its lever', (block, was, is) => {
    expect(compareTexts(BASE, renamed(was, is)).file).toEqual({
      ...EMPTY,
      renamed: [{ block, was: `bellcrank.${was}`, is: `bellcrank.${is}` }],
    });
  });

  it('is recognised though a `let` behind it changed', () => {
    const { file } = compareTexts(
      BASE,
      renamed('shaft', 'axle').replace('axle: 8 mm', 'shaft: 8 mm').replace('reach: 30 mm', 'reach: 31 mm'),
    );
    expect(file.renamed).toEqual([{ block: 'levers', was: 'shaft', is: 'axle' }]);
    expect(file.values.map(({ path, follows }) => [path, follows.includes('levers.axle.arms.arm.radius')])).toEqual([['let.reach', true]]);
  });

  it('of two equal ones goes with the first', () => {
    const two = edited(['springs:\n', 'springs:\n  a: {lever: shaft, rate: 1 N*mm/deg}\n  b: {lever: shaft, rate: 1 N*mm/deg}\n']);
    const { file } = compareTexts(two, two.replace('  a: {', '  c: {').replace('  b: {', '  d: {'));
    expect(file.renamed).toEqual([
      { block: 'springs', was: 'a', is: 'c' },
      { block: 'springs', was: 'b', is: 'd' },
    ]);
  });

  it('is compared by its new name in what was found', () => {
    const text = renamed('link', 'drag_link').replace('max: 100 mm', 'max: 90 mm');
    const known = compareTexts(edited(['max: 100 mm', 'max: 90 mm']), text);
    expect(known.findings).toEqual({ added: [], gone: [], kept: [] });
    const raised = compareTexts(BASE, text);
    expect(raised.findings.added.map(({ code, part }) => [code, part])).toEqual([['rod-out-of-adjustment', 'drag_link']]);
  });
});

describe('a broken file', () => {
  const broken = edited(['slack: 1 mm', 'slack: 1 mmm'], ['open: 68 deg', 'open: 60 deg']);

  it('as the new one is compared as far as it is understood', () => {
    const comparison = compareTexts(BASE, broken);
    expect([comparison.was, comparison.is]).toEqual(['solved', 'unsolved']);
    expect(comparison.file.values.map(({ path }) => path)).toEqual(['levers.shaft.stops.open']);
    expect(comparison.file.gone).toEqual([]);
    expect(comparison.file.unread).toContainEqual({ block: 'cables', name: 'main', side: 'is' });
    expect(comparison.problems.added.map(({ path, severity }) => [path, severity])).toEqual([['cables.main.slack', 'error']]);
    expect(comparison.outcomes).toEqual([]);
    expect(comparison.verdict).toMatchObject({ worse: true, newErrors: 1, lostSolution: true });
  });

  it('as the old one too', () => {
    const comparison = compareTexts(broken, BASE);
    expect([comparison.was, comparison.is]).toEqual(['unsolved', 'solved']);
    expect(comparison.file.added).toEqual([]);
    expect(comparison.file.unread).toContainEqual({ block: 'cables', name: 'main', side: 'was' });
    expect(comparison.problems.gone).toHaveLength(1);
    expect(comparison.verdict.worse).toBe(false);
  });

  it('tells a value that cannot be read from one that is not there', () => {
    const { file } = change(['pitch: 1 mm', 'pitch: 1 mmm']);
    expect(file.values.map(({ path, is, unread }) => [path, is, unread])).toEqual([['rods.link.adjust.pitch', undefined, 'is']]);
    expect(compareTexts(edited(['pitch: 1 mm', 'pitch: 1 mmm']), BASE).file.values[0]?.unread).toBe('was');
  });

  it.each([[''], ['nonsense'], ['format: 2\n'], ['[1, 2'], [`format: 1\n${'#'.repeat(300_000)}`]])(
    'of which nothing is understood says so (%#)',
    (text) => {
      const comparison = compareTexts(BASE, text);
      expect(comparison.file).toEqual(EMPTY);
      expect(comparison.is).not.toBe('solved');
      expect(comparison.verdict.worse).toBe(true);
      expect(compareTexts(text, BASE).was).toBe(comparison.is);
      expect(isSame(compareTexts(text, text))).toBe(true);
    },
  );
});

it('tells of a wire the material and the figures that are others, by their places in the file', () => {
  const wound = (wire: string): string => `format: 1
levers: {shaft: {pivot: [0, 0]}}
pedal: {lever: shaft, opens: counterclockwise, travel: 60 deg}
springs: {only: {lever: shaft, wire: {diameter: 1.6 mm, mean_coil: 16 mm, ${wire}}}}
`;
  const { file } = compareTexts(wound('active_turns: 12, material: music_wire'), wound('active_turns: 11, material: stainless_302'));
  expect(file.values.map(({ path }) => path)).toEqual(['springs.only.wire.active_turns']);
  expect(file.words.map(({ path, was, is }) => [path, was, is])).toEqual([['springs.only.wire.material', 'music_wire', 'stainless_302']]);
});
