import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { compareText } from '../../src/outputs/compareText.ts';
import { widthOf } from '../../src/outputs/width.ts';
import { BASE, edited } from '../studies/compareFiles.ts';

type Edits = readonly (readonly [piece: string, instead: string])[];

const NAMES = { was: 'old.yaml', is: 'new.yaml' };
const textOf = (...pairs: Edits): string => compareText(compareTexts(BASE, edited(...pairs)), NAMES);
/** Lines of the section with a title, without it and their indent. */
const section = (text: string, title: string): string[] => {
  const lines = text.split('\n');
  const start = lines.indexOf(title);
  expect(start, `there is a section ${title}`).toBeGreaterThanOrEqual(0);
  const rest = lines.slice(start + 1);
  return rest.slice(0, rest.indexOf('')).map((line) => line.trim().replace(/ {2,}/g, ' | '));
};

describe('a comparison as text', () => {
  it('says in its last line that nothing differs, and is short then', () => {
    const text = compareText(compareTexts(BASE, BASE), NAMES);
    expect(text.trimEnd().split('\n').at(-1)).toBe('old.yaml → new.yaml: no difference');
    expect(text.split('\n\n')).toHaveLength(3);
  });

  it('carries the caution', () => {
    expect(textOf(['slack: 1 mm', 'slack: 2 mm']).replaceAll('\n', ' ')).toContain(CAUTION);
  });

  it('tells values as they are written, with the difference and what changed with them', () => {
    const lines = section(textOf(['reach: 30 mm', 'reach: 31 mm'], ['slack: 1 mm', 'slack: 0.5 mm']), 'What changed in the file');
    expect(lines[0]).toBe('changed | let.reach | 30 mm ± 0.1 mm → 31 mm ± 0.1 mm (+1 mm); with it let.half,');
    expect(lines.at(-1)).toBe('changed | cables.main.slack | 1 mm → 0.5 mm (−0.5 mm)');
  });

  it('tells a formula with what it comes to', () => {
    expect(section(textOf(['reach + 2 mm', '32 mm']), 'What changed in the file')).toEqual([
      'changed | levers.shaft.arms.arm.radius | reach + 2 mm (32 mm) → 32 mm (of equal value)',
    ]);
  });

  it('tells parts new, gone and renamed, words, and what cannot be read', () => {
    const lines = section(
      textOf(
        ['  second: {from', '  last: {from'],
        ['  rail: {circle: [140, 120], radius: 11 mm}', '  bonnet: {circle: [0, 900], radius: 9 mm}'],
        ['kind: rod_end', 'kind: clevis'],
        ['pitch: 1 mm', 'pitch: 1 mmm'],
      ),
      'What changed in the file',
    );
    expect(lines).toEqual([
      'renamed | springs.second | is springs.last now',
      'gone | keep_out.rail',
      'new | keep_out.bonnet',
      'unread | rods.link.adjust.pitch | was 1 mm; cannot be understood any more',
      'changed | rods.link.ends.kind | rod_end → clevis',
    ]);
  });

  it('tells what it did worst first', () => {
    const text = textOf(['open: 68 deg', 'open: 66 deg'], ['max: 100 mm', 'max: 90 mm'], ['[35 deg, 25 deg]', '[60 deg, 25 deg]']);
    const status = section(text, 'What it did').map((line) => line.split(' | ')[0]);
    expect(status.filter((word) => ['new error', 'now failed', 'new warning'].includes(word ?? ''))).toEqual([
      'new error',
      'now failed',
      'new warning',
    ]);
    expect(status[0]).toBe('new error');
    expect(text).toMatch(/worse: 1 new error, 1 requirement that was passed and is not now\n$/);
  });

  it('tells a requirement with both figures', () => {
    const text = textOf(['open: 68 deg', 'open: 66 deg']).replace(/\s+/g, ' ');
    expect(text).toContain('now failed opens fully was passed: 68° ≥ 67° (1° to spare, at 100 %); is 66°, not ≥ 67° (1° short, at 100 %)');
  });

  it('tells what is mended, and that it is not worse', () => {
    const text = compareText(compareTexts(edited(['max: 100 mm', 'max: 90 mm']), BASE), NAMES);
    expect(section(text, 'What it did')[0]).toMatch(/^error gone \| link \| was \[rod-out-of-adjustment\]/);
    expect(text).toMatch(/not worse: no new error, and no requirement that was passed and is not now\n$/);
  });

  it('tells a figure once, with its difference and where it holds', () => {
    const rows = section(textOf(['open: 68 deg', 'open: 66 deg']), 'Figures');
    expect(rows[0]).toBe('was | is | difference | at pedal travel');
    const opens = rows.filter((row) => row.includes('68°') && row.startsWith('shaft'));
    expect(opens).toHaveLength(1);
    expect(opens[0]).toMatch(/^shaft \| opens \| 68° \| 66° \| −2° \| \d+\.?\d* % → \d+\.?\d* %$/);
    expect(rows.some((row) => row.includes('rotation'))).toBe(false);
    expect(rows.find((row) => row.includes('pedal travel at 50 % of opening'))).toMatch(/ % \| [\d.]+ % \| −[\d.]+ points$/);
  });

  it('shows curves at a few stations, and where they lie furthest apart', () => {
    const lines = textOf(['open: 68 deg', 'open: 60 deg']).split('\n');
    const at = lines.indexOf('  shaft.opening [deg]');
    const cells = (line: string | undefined): string[] => (line ?? '').trim().split(/ {2,}/);
    expect(cells(lines[at + 1])).toEqual(['pedal', '0 %', '10 %', '25 %', '50 %', '75 %', '90 %', '100 %']);
    expect(cells(lines[at + 2]).at(-1)).toBe('68.00');
    expect(cells(lines[at + 3]).at(-1)).toBe('60.00');
    expect(cells(lines[at + 4]).at(-1)).toBe('−8.00');
    expect(lines[at + 5]?.trim()).toMatch(/^furthest apart: −8\.00 deg at [\d.]+ % of pedal travel$/);
    expect(new Set(lines.slice(at + 1, at + 5).map(widthOf)).size).toBe(1);
  });

  it('says where a side is not solved, or cannot be used at all', () => {
    const broken = edited(['slack: 1 mm', 'slack: 1 mmm']);
    const one = compareText(compareTexts(BASE, broken), NAMES);
    expect(one).toContain('The new file is not solved');
    expect(one).toMatch(/worse: it was solved and is not now, 1 new error/);
    expect(compareText(compareTexts(broken, BASE), NAMES)).toContain('The old file is not solved');
    expect(compareText(compareTexts(BASE, 'format: 2'), NAMES)).toMatch(/not compared: the new file cannot be used\n$/);
    expect(compareText(compareTexts('', ''), NAMES)).toMatch(/not compared: neither file can be used\n$/);
  });

  it('breaks lines to a width, but for tables and names', () => {
    const text = compareText(compareTexts(BASE, edited(['max: 100 mm', 'max: 90 mm'], ['reach: 30 mm', 'reach: 31 mm'])), {
      ...NAMES,
      width: 80,
    });
    const folded = text.slice(0, text.indexOf('\nFigures')).split('\n');
    expect(Math.max(...folded.map(widthOf))).toBeLessThanOrEqual(80);
  });

  it('shows no control character of a file or its name', () => {
    const evil = BASE.replace('Two barrels', '"a\\e[31mb"');
    const text = compareText(compareTexts(BASE, evil), { was: 'a\u001b[2J', is: 'b\nc' });
    expect(text).not.toContain('\u001b');
    expect(text.split('\n')[0]).toBe('a\ufffd[2J → b\ufffdc');
  });
});
