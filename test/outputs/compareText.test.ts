import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { compareText } from '../../src/outputs/compareText.ts';
import { widthOf } from '../../src/outputs/width.ts';
import { BASE, CLOSED_BY_TWO, SPRUNG_PEDAL, edited, without } from '../studies/compareFiles.ts';

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
    expect(opens[0]).toMatch(/^shaft \| full opening \| 68° \| 66° \| −2° \| \d+\.?\d* % → \d+\.?\d* %$/);
    expect(rows.some((row) => row.includes('rotation'))).toBe(false);
    expect(rows.find((row) => row.includes('pedal travel at 50 % of opening'))).toMatch(/ % \| [\d.]+ % \| −[\d.]+ points$/);
  });

  it('begins with what can no longer be judged, and does not call settled what is not looked at any more', () => {
    const text = compareText(compareTexts(CLOSED_BY_TWO, without(CLOSED_BY_TWO, 'springs')), { ...NAMES, width: 200 });
    const rows = section(text, 'What it did');
    expect(rows[0]).toBe('worse | shaft | can no longer be judged: what closes shaft, since the file describes no springs any more');
    expect(rows).toContainEqual(expect.stringMatching(/^no longer looked at \| a \| was not checked: whether it is stressed too much/));
    expect(text).not.toContain('settled');
    expect(text).toMatch(/worse: shaft can no longer be judged\n$/);
  });

  it.each(['springs', 'plates'])('does not tell an error that is gone with the %s as gone, and tells it once', (block) => {
    const text = compareText(compareTexts(SPRUNG_PEDAL, without(SPRUNG_PEDAL, block)), { ...NAMES, width: 200 });
    expect(section(text, 'What it did')[0]).toMatch(/^worse \| shaft \| can no longer be judged: was \[no-return-spring\]/);
    expect(text.match(/\[no-return-spring\]/g)).toHaveLength(1);
    expect(text).not.toContain('gone  shaft');
  });

  it('tells what is settled where it has been checked', () => {
    const text = compareText(compareTexts(without(CLOSED_BY_TWO, 'springs'), CLOSED_BY_TWO), { ...NAMES, width: 200 });
    expect(section(text, 'What it did')).toContain(
      'settled | bank | was not checked: what closes its shaft, since the file describes no springs',
    );
  });

  it('does not call what was wrong gone where the new file is not solved', () => {
    const short = edited(['max: 100 mm', 'max: 90 mm']);
    const rows = section(compareText(compareTexts(short, without(short, 'pedal')), { ...NAMES, width: 200 }), 'What it did');
    expect(rows).toContainEqual(expect.stringMatching(/^not judged \| link \| no longer looked at: was error \[rod-out-of-adjustment\]/));
    expect(rows.filter((row) => row.includes('error gone'))).toEqual([]);
  });

  it('tells closing torque on the first lines, what fell first, and effort and opening behind it', () => {
    const weaker = CLOSED_BY_TWO.replace('rate: 2.4 N*mm/deg, preload: 180', 'rate: 2.4 N*mm/deg, preload: 60').replace(
      'open: 80 deg',
      'open: 70 deg',
    );
    const text = compareText(compareTexts(CLOSED_BY_TWO, weaker), { ...NAMES, width: 200 });
    const rows = section(text, 'What it did');
    expect(rows.slice(0, 2)).toEqual([
      'fell | shaft | closing torque at rest 360 N·mm → 240 N·mm (−33.3 %)',
      'fell | shaft | least closing torque 360 N·mm → 240 N·mm (−33.3 %), at 0 %',
    ]);
    const behind = [/^now failed \| opens fully/, /^(?:rose|fell) \| pedal \| greatest effort/, /full opening 80° → 70° \(−12\.5 %\)/].map(
      (row) => rows.findIndex((each) => row.test(each)),
    );
    expect(behind[0]).toBe(2);
    expect(behind.every((place) => place > 1)).toBe(true);
    expect(behind[2]).toBeGreaterThan(behind[1] ?? NaN);
  });

  it('tells closing torque by more than 5 % and not by less, and worse where it fell by more than half', () => {
    const first = (share: number): string | undefined =>
      section(
        compareText(
          compareTexts(
            CLOSED_BY_TWO,
            CLOSED_BY_TWO.replaceAll('2.4 N*mm/deg, preload: 180', `${2.4 * share} N*mm/deg, preload: ${180 * share}`),
          ),
          { ...NAMES, width: 200 },
        ),
        'What it did',
      ).find((row) => row.includes('least closing torque'));
    expect(first(0.94)).toMatch(/^fell \| shaft/);
    expect(first(1.06)).toMatch(/^rose \| shaft \| least closing torque 360 N·mm → 382 N·mm \(\+6 %\)/);
    expect(first(0.49)).toMatch(/^worse \| shaft/);
    const little = compareText(compareTexts(CLOSED_BY_TWO, CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 175')), NAMES);
    expect(little).not.toContain('What it did');
    expect(little).not.toContain('but closing torque fell');
  });

  it('says in the last line that closing torque fell, though not by half', () => {
    const text = compareText(compareTexts(CLOSED_BY_TWO, CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 120')), NAMES);
    expect(text).toMatch(/not worse: .*; but closing torque fell\n$/);
  });

  it('shows a dozen figures at most, those that matter most first, and says how many more there are', () => {
    const text = textOf(['reach: 30 mm', 'reach: 31 mm'], ['open: 68 deg', 'open: 60 deg']);
    const rows = section(text, 'Figures');
    expect(rows).toHaveLength(1 + 12 + 1);
    expect(rows.at(-1)).toMatch(/^and \d+ more figures: --format json$/);
    expect(rows[1]).toMatch(/^shaft \| full opening/);
    expect(rows.slice(1, -1).map((row) => row.split(' | ')[0])).not.toContain('link');
  });

  it('has one kind of minus sign, in figures and in values as they are written', () => {
    const text = textOf(['enters: [-60, 30]', 'enters: [-61, 30]'], ['preload: 180 N*mm', 'preload: -400 N*mm']);
    expect(text).toContain('−60 → −61');
    expect(text.replace(/`[^`]*`/g, '')).not.toMatch(/(?<![\w.-])-\d/);
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
