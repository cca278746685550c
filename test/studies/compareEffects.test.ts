import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { solve } from '../../src/solve.ts';
import type { Comparison, OutcomeChange } from '../../src/studies/compare/comparison.ts';
import { DISPLAY_TOLERANCE } from '../../src/studies/compare/noticeable.ts';
import { BASE, change, edited } from './compareFiles.ts';

const DEGREE = Math.PI / 180;

const outcome = ({ outcomes }: Comparison, part: string, key: string): OutcomeChange | undefined =>
  outcomes.find((each) => each.part === part && each.key === key);

/** A column of a file at a pedal travel, in its unit. */
const columnAt = (text: string, name: string, travel: number): number | null | undefined =>
  solve(text).table([travel], [name]).columns[0]?.values[0];

describe('what a change did', () => {
  const wider = edited(['open: 68 deg', 'open: 66 deg']);
  const comparison = compareTexts(BASE, wider);

  it('is told of the columns: least, greatest, at rest and at full, where they differ', () => {
    const full = outcome(comparison, 'shaft', 'opening.full');
    expect(full?.was?.figure).toEqual({ value: expect.closeTo(68 * DEGREE, 9) as number, dimension: 'angle' });
    expect(full?.is?.figure).toEqual({ value: expect.closeTo(66 * DEGREE, 9) as number, dimension: 'angle' });
    expect(full?.difference).toBeCloseTo(-2 * DEGREE, 9);
    expect(full?.is?.travel).toBe(1);
    expect(outcome(comparison, 'shaft', 'opening.greatest')?.difference).toBeCloseTo(-2 * DEGREE, 9);
    expect(outcome(comparison, 'shaft', 'opening.rest')).toBeUndefined();
    expect(outcome(comparison, 'shaft', 'opening.least')).toBeUndefined();
  });

  it('is told of the load path, with the pedal travel where it holds', () => {
    const opens = outcome(comparison, 'shaft', 'opens');
    expect(opens).toMatchObject({ from: 'part', label: 'opens' });
    expect(opens?.is?.travel).toBeLessThan(opens?.was?.travel ?? NaN);
    expect(columnAt(wider, 'shaft.opening', opens?.is?.travel ?? NaN)).toBeCloseTo(66, 6);
  });

  it('is told of the facts, a pedal travel as a share', () => {
    const half = outcome(comparison, 'shaft', 'travel-at-50');
    expect(half).toMatchObject({ from: 'fact', percent: true });
    expect(columnAt(BASE, 'shaft.opening', half?.was?.figure?.value ?? NaN)).toBeCloseTo(34, 6);
    expect(columnAt(wider, 'shaft.opening', half?.is?.figure?.value ?? NaN)).toBeCloseTo(33, 6);
  });

  it('is not told of the pedal travel itself', () => {
    expect(comparison.outcomes.filter(({ part, from }) => part === 'pedal' && from === 'column').map(({ key }) => key)).not.toContain(
      'travel.full',
    );
  });

  it('is told above the display tolerance and not below', () => {
    const degrees = DISPLAY_TOLERANCE.angle;
    const by = (angle: number): OutcomeChange | undefined =>
      outcome(change(['open: 68 deg', `open: ${68 - angle} deg`]), 'shaft', 'opening.full');
    expect(by(1.2 * degrees)).toBeDefined();
    expect(by(0.8 * degrees)).toBeUndefined();
    expect(change(['open: 68 deg', `open: ${68 - 0.8 * degrees} deg`]).file.values).toHaveLength(1);
  });

  it('tells two facts of one key apart by the lever that they are of', () => {
    const second = `  other: {pivot: [150, 60], arms: {a: {at: [140, 80]}}, stops: {open: 60 deg}}\n`;
    const two = edited(
      ['levers:\n', `levers:\n${second}`],
      ['rods:\n', 'rods:\n  onward: {from: shaft.spare, to: other.a}\n'],
      ['plates:\n', 'plates:\n  more: {lever: other, count: 1, bore: 30 mm}\n'],
    );
    const adjuster = compareTexts(two, two.replace('pitch: 1 mm', 'pitch: 2 mm')).outcomes.filter(({ key }) => key === 'adjuster-at-50');
    expect(adjuster.map(({ part, label }) => [part, /opening of (\w+)/.exec(label)?.[1]]).sort()).toEqual([
      ['link', 'other'],
      ['link', 'shaft'],
    ]);
    for (const { was, is } of adjuster) {
      const ratio = (is?.figure?.value ?? NaN) / (was?.figure?.value ?? NaN);
      expect(ratio).toBeGreaterThan(1.6);
      expect(ratio).toBeLessThan(2.4);
    }
  });

  it('names the columns that one side alone has', () => {
    const { columns } = change(['springs:\n', 'springs:\n  third: {lever: shaft, rate: 1 N*mm/deg}\n']);
    expect(columns).toEqual({ added: ['third.torque', 'third.effort_off', 'third.release_off'], gone: [] });
  });
});

describe('findings', () => {
  const short = edited(['max: 100 mm', 'max: 90 mm']);

  it('are new where a change raises them, and an error is worse', () => {
    const { findings, verdict } = compareTexts(BASE, short);
    expect(findings.added.map(({ code, severity, part, path }) => [code, severity, part, path])).toEqual([
      ['rod-out-of-adjustment', 'error', 'link', expect.stringMatching(/^rods\.link/)],
    ]);
    expect(verdict).toEqual({ worse: true, newErrors: 1, lostRequirements: 0, lostSolution: false, unjudged: [], closesLess: [] });
  });

  it('are gone where a change mends them, which is not worse', () => {
    const { findings, verdict } = compareTexts(short, BASE);
    expect(findings.gone.map(({ code }) => code)).toEqual(['rod-out-of-adjustment']);
    expect(findings.added).toEqual([]);
    expect(verdict.worse).toBe(false);
  });

  it('are kept where only their worst value or their limit differs', () => {
    const { findings, verdict } = compareTexts(short, short.replace('max: 90 mm', 'max: 89 mm'));
    expect([findings.added, findings.gone]).toEqual([[], []]);
    expect(findings.kept.map(({ was, is }) => [was.code, (is.limit?.value ?? NaN) - (was.limit?.value ?? NaN)])).toEqual([
      ['rod-out-of-adjustment', expect.closeTo(-0.001, 9)],
    ]);
    expect(verdict.worse).toBe(false);
  });

  it('are the same where they are marked at another place of the part', () => {
    const drawn = solve(short).findings.find(({ code }) => code === 'rod-out-of-adjustment')?.worst?.value ?? NaN;
    const written = short.replace('adjust: {min', `length: ${drawn * 1000} mm, adjust: {min`);
    const paths = [short, written].map(
      (text) => compareTexts(BASE, text).findings.added.find(({ code }) => code === 'rod-out-of-adjustment')?.path,
    );
    expect(paths).toEqual(['rods.link', 'rods.link.length']);
    const { findings, verdict } = compareTexts(short, written);
    expect([findings.added, findings.gone]).toEqual([[], []]);
    expect(verdict.worse).toBe(false);
  });

  it('are kept and worse where a warning became an error', () => {
    const limited = (warning: number, error: number): string => edited(['[35 deg, 25 deg]', `[${warning} deg, ${error} deg]`]);
    const [mild, severe] = [limited(60, 25), limited(60, 59)];
    const { findings, verdict } = compareTexts(mild, severe);
    expect(findings.kept.filter(({ was }) => was.code === 'transmission-angle').map(({ was, is }) => [was.severity, is.severity])).toEqual([
      ['warning', 'error'],
    ]);
    expect(verdict).toMatchObject({ worse: true, newErrors: 1 });
    expect(compareTexts(severe, mild).verdict).toMatchObject({ worse: false, newErrors: 0 });
  });
});

describe('problems', () => {
  it('are new and gone by code and place, whatever the line they stand in', () => {
    const broken = edited(['max: 100 mm', 'max: 100 mmm']);
    expect(compareTexts(broken, `# moved\n\n${broken}`).problems).toEqual({ added: [], gone: [], kept: [] });
    const { problems, verdict } = compareTexts(BASE, broken);
    expect(problems.added.map(({ path }) => path)).toEqual(['rods.link.adjust.max']);
    expect(verdict.newErrors).toBe(1);
  });
});

describe('what was not checked', () => {
  it('is told where that is new', () => {
    const { notChecked } = change(['keep_out:\n', 'keep_out:\n  bonnet: {circle: [0, 400], radius: 9 mm}\n']);
    expect(notChecked.added.map(({ part }) => part)).toEqual(['bonnet']);
    expect(notChecked.gone).toEqual([]);
  });
});

describe('requirements', () => {
  it('that were passed and fail now are told with figures and margin, and are worse', () => {
    const { requirements, verdict } = change(['open: 68 deg', 'open: 66 deg']);
    expect(requirements.map(({ name, was, is }) => [name, was?.outcome, is?.outcome])).toContainEqual(['opens fully', 'passed', 'failed']);
    const flipped = requirements.find(({ name }) => name === 'opens fully');
    expect(flipped?.was?.comparisons[0]?.margin?.value).toBeCloseTo(1 * DEGREE, 9);
    expect(flipped?.is?.comparisons[0]?.margin?.value).toBeCloseTo(-1 * DEGREE, 9);
    expect(flipped?.is?.comparisons[0]?.actual?.value).toBeCloseTo(66 * DEGREE, 9);
    expect(verdict).toEqual({ worse: true, newErrors: 0, lostRequirements: 1, lostSolution: false, unjudged: [], closesLess: [] });
  });

  it('that pass now are not worse', () => {
    const { requirements, verdict } = compareTexts(edited(['open: 68 deg', 'open: 66 deg']), BASE);
    expect(requirements.map(({ name, was, is }) => [name, was?.outcome, is?.outcome])).toContainEqual(['opens fully', 'failed', 'passed']);
    expect(verdict.worse).toBe(false);
  });

  it('that cannot be decided any more are worse', () => {
    const { verdict } = change(['max(pedal.effort)', 'pedal.effort']);
    expect(verdict).toMatchObject({ worse: true, lostRequirements: 1 });
  });

  it('that keep their outcome are told where a figure differs', () => {
    const { requirements } = change(['open: 68 deg', 'open: 67.5 deg']);
    expect(requirements.map(({ name, was, is }) => [name, was?.outcome, is?.outcome])).toContainEqual(['opens fully', 'passed', 'passed']);
    expect(change(['slack: 1 mm', 'slack: 1.0 mm']).requirements).toEqual([]);
  });

  it('that are new and fail, or are gone, are told and lose nothing', () => {
    const { requirements, verdict } = change(['  light: max(pedal.effort) <= 200 N\n', '  steep: at(100%, shaft.opening) >= 80 deg\n']);
    expect(requirements.map(({ name, was, is }) => [name, was?.outcome, is?.outcome])).toEqual([
      ['steep', undefined, 'failed'],
      ['light', 'passed', undefined],
    ]);
    expect(verdict.worse).toBe(false);
  });
});

describe('curves', () => {
  const text = edited(['open: 68 deg', 'open: 60 deg']);

  it('are those of opening, area, effort and signal that differ', () => {
    const names = compareTexts(BASE, text).curves.map(({ column }) => column);
    expect(names).toContain('shaft.opening');
    expect(names).toContain('bank.area');
    expect(names).toContain('position.signal');
    expect(names).not.toContain('bellcrank.opening');
  });

  it('stand on 101 even stations and the turning places of both', () => {
    const [curve] = compareTexts(BASE, text, { columns: ['shaft.opening'] }).curves;
    const stations = curve?.stations ?? [];
    for (let percent = 0; percent <= 100; percent++) expect(stations).toContain(percent / 100);
    expect([...stations].sort((a, b) => a - b)).toEqual(stations);
    // Both open stops are met between even stations; on each the opening has a kink, which is a station.
    for (const [file, open] of [
      [BASE, 68],
      [text, 60],
    ] as const) {
      const met = stations.find((at) => (columnAt(file, 'shaft.opening', at) ?? NaN) > open - 1e-6);
      expect(stations.some((at) => at === met && Math.abs(at * 100 - Math.round(at * 100)) > 1e-6)).toBe(true);
    }
  });

  it('have the values of each file and their difference', () => {
    const [curve] = compareTexts(BASE, text, { columns: ['shaft.opening'] }).curves;
    expect(curve).toMatchObject({ column: 'shaft.opening', unit: 'deg' });
    expect(curve?.was).toEqual(solve(BASE).table(curve?.stations ?? [], ['shaft.opening']).columns[0]?.values);
    expect(curve?.is).toEqual(solve(text).table(curve?.stations ?? [], ['shaft.opening']).columns[0]?.values);
    expect(curve?.difference).toEqual(curve?.is.map((value, index) => (value ?? NaN) - (curve.was[index] ?? NaN)));
    expect(curve?.difference.at(-1)).toBeCloseTo(-8, 9);
  });

  it('that were asked for are there though they are the same', () => {
    expect(compareTexts(BASE, BASE, { columns: ['shaft.opening', 'link'] }).curves.map(({ column }) => column)).toEqual([
      ...['link.transmission', 'link.drive', 'link.misalignment', 'link.twist', 'shaft.opening'],
    ]);
    expect(compareTexts(BASE, BASE, { columns: ['nothing.such'] }).curves).toEqual([]);
  });

  it('have no values on a side that is not solved', () => {
    const [curve] = compareTexts(BASE, 'format: 1\n', { columns: ['shaft.opening'] }).curves;
    expect(new Set(curve?.is)).toEqual(new Set([null]));
    expect(new Set(curve?.difference)).toEqual(new Set([null]));
    expect(curve?.was.includes(null)).toBe(false);
  });
});
