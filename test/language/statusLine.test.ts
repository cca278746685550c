/** What the status bar says of a file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { statusLine, type StatusLine } from '../../src/language/statusLine.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { solve } from '../../src/solve.ts';

const example = (name: string): string => readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
const FOUR = example('four-barrel');
const statusOf = (text: string): StatusLine => statusLine(solve(text));

describe('the status line', () => {
  it('says that nothing is wrong and how far the plates open', () => {
    const { text, severity, tooltip } = statusOf(FOUR);
    expect(text).toBe('no errors · opens 82°');
    expect(severity).not.toBe('error');
    expect(tooltip.verdict).toContain('2 requirements passed');
    expect(tooltip.requirements[0]).toBe('opens fully: passed, 82° ≥ 81° (1° to spare, at 100 %)');
    expect(tooltip.caution).toBe(CAUTION);
  });

  it('counts what is worst: errors, else requirements that are not met, else warnings', () => {
    const bad = statusOf(example('binding-broken'));
    expect(bad).toMatchObject({ text: '1 error · opens 76.1°', severity: 'error' });
    const unmet = statusOf(FOUR.replace('>= 81 deg', '>= 85 deg'));
    expect(unmet).toMatchObject({ text: '1 requirement not met · opens 82°', severity: 'error' });
    const warned = statusOf(FOUR.replace('crank_reach: 38 mm', 'crank_reach: 36.9 mm').replace('>= 81 deg', '>= 79 deg'));
    expect(warned.text).toMatch(/^1 warning · opens 81\.\d°$/);
    expect(warned.severity).toBe('warning');
  });

  it('takes the shaft that opens least', () => {
    const text = example('two-banks');
    expect(statusOf(text).text).toMatch(/ · opens 80°$/);
    expect(
      statusOf(
        text.replace(
          'pivot: rear_shaft\n    axis: [-0.4, 3, 4]\n    arms:\n      arm: {radius: shaft_reach',
          'pivot: rear_shaft\n    axis: [-0.4, 3, 4]\n    arms:\n      arm: {radius: 34 mm',
        ),
      ).text,
    ).toMatch(/ · opens 7\d(\.\d)?°$/);
  });

  it('says so where nothing can be used or solved yet', () => {
    expect(statusOf('')).toMatchObject({ text: 'cannot be used', severity: 'error' });
    expect(statusOf('format: 1\nlevers: {a: {pivot: [0, 0]}}\npedal: {lever: a, opens: clockwise, travel: 10 deg}\n').text).toBe(
      'no errors',
    );
    expect(statusOf('format: 1\nlevers: {a: {pivot: [0, 0]}}\n').text).toBe('1 error');
  });

  it('keeps its lists short and shows no control characters', () => {
    const many = Array.from({ length: 40 }, (_, i) => `  "n${i}\\e": max(shaft.opening) > ${i} deg\n`).join('');
    const { tooltip } = statusOf(FOUR.replace(/require:[^]*$/, `require:\n${many}`));
    expect(tooltip.requirements).toHaveLength(13);
    expect(tooltip.requirements.at(-1)).toBe('and 28 more');
    expect(tooltip.requirements.join('')).not.toContain('\u001b');
  });

  it('never throws, however the file is cut', () => {
    for (let end = 0; end < FOUR.length; end += 97) expect(statusOf(FOUR.slice(0, end)).text).not.toBe('');
  });
});
