import { describe, expect, it } from 'vitest';
import { textbookLinkage, twoShafts } from '../studies/tolerance/cases.ts';
import { FOUR_BARREL } from '../support/editorRequests.ts';
import type { JsonTolerance } from '../../src/outputs/json/toleranceDocument.ts';
import { call } from './support.ts';

const files = {
  linkage: textbookLinkage('± 0.05 mm'),
  exact: textbookLinkage(''),
  shafts: twoShafts('± 0.1 mm'),
  barrels: FOUR_BARREL,
  empty: 'format: 1\n',
};

describe('tolerance', () => {
  it('tells the ranges of each outcome, what they come from, and what setting a rod wins', async () => {
    const { code, out, error } = await call(['tolerance', 'shafts'], { files });
    expect(error).toBe('');
    // Two stops that meet at once as drawn do not once the rod is cut to ± 0.1 mm.
    expect(code).toBe(1);
    expect(out).toContain(
      'opening of first at full pedal\n  68° with every dimension in its middle; all against it 67.5° to 68.5°, linear',
    );
    expect(out).toMatch(/link made adjustable and set by the /);
    expect(out).toMatch(/\nNot checked\n(?: {2}.*\n)* {2}`lost` of a rod/);
    expect(out).toContain('Caution.');
    expect(out).toMatch(/shafts: 10000 builds from 8 toleranced dimensions, .*kept by \d/);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('tells first and in the last line what builds do not keep, by which part and how far the worst is off', async () => {
    const { out } = await call(['tolerance', 'shafts', '--builds', '100'], { files });
    const [, first] = out.split('\n\n');
    expect(first).toMatch(/^Rules of the check\n/);
    // As drawn there is one spring, and the link lies in line with both arms on the way: in every build, too.
    const told = first!.replace(/\n +/g, ' ');
    expect(told).toMatch(
      /single-return-spring at close: kept by 0 % of the builds \(.*\), of 100; the file as drawn does not keep it either; /,
    );
    expect(told).toMatch(
      /held-open at (first|second) in \d+, (first|second) in \d+, as an error: .*; the worst: (first|second) is held 0\.\d+° open at rest/,
    );
    expect(out.trimEnd().split('\n').at(-1)).toMatch(
      /everything checked, rules and requirements too, is kept by 0 of the 100 builds .*; not kept, by so many: transmission-angle, as drawn, too \(100 %\), .* and 8 more$/,
    );
  });

  it('says what holds an opening, and gives figures of one outcome digits alike', async () => {
    const { code, out } = await call(['tolerance', 'barrels', '--builds', '100'], { files });
    expect(code).toBe(0);
    expect(out).toContain('opening of shaft at full pedal\n  82°: its open stop holds it there in every build');
    expect(out).toContain('opening of shaft at rest\n  0°: its closed stop holds it there in every build');
    expect(out).toContain('signal of position at rest\n  0.9364 V: no tolerance moves it');
    expect(out).not.toContain('whatever the tolerances');
    expect(out.trimEnd().split('\n').at(-1)).toMatch(
      /is kept by 100 of the 100 builds that were gone through whole \(96\.3 % to 100 % of all, as sure as 95 %\)$/,
    );
    // Nothing small stands with more digits than its neighbours.
    const shafts = await call(['tolerance', 'shafts', '--builds', '100'], { files });
    for (const line of shafts.out.split('\n').filter((each) => each.includes('with every dimension in its middle'))) {
      const digits = [...line.matchAll(/-?\d+(?:\.(\d+))?(?=°| V| N)/g)].map(([, behind = '']) => behind.length);
      expect([line, Math.max(...digits) <= 4]).toEqual([line, true]);
    }
  });

  it('ends with 2 where the file has no tolerance or nothing can be solved', async () => {
    const { code, error } = await call(['tolerance', 'exact'], { files });
    expect(code).toBe(2);
    expect(error).toContain('No dimension of the file has a tolerance');
    expect((await call(['tolerance', 'empty'], { files })).code).toBe(2);
    expect((await call(['tolerance', 'missing'], { files })).code).toBe(2);
  });

  it('without a tolerance tells what is free, builds nothing and calls nothing kept', async () => {
    const bare = FOUR_BARREL.replace(/ ± 0\.1 mm/g, '');
    const free = `${bare}tune:\n  free: {crank_reach: {from: 34 mm, to: 44 mm}}\n  curve: {of: shaft.opening, slopes: {tip_in: 0.5, end: 1.2}}\n`;
    const { code, out, error } = await call(['tolerance', 'free'], { files: { free } });
    expect([code, error]).toEqual([1, '']);
    expect(out).toMatch(/\nleast drive angle of link\n {2}[\d.]+° as drawn\n {2}free: let\.crank_reach \+ 1 mm: [+-][\d.]+°\n/);
    expect(out).toContain('opening of shaft at full pedal\n  82° as drawn\n  its open stop holds it there\n');
    expect(out.replace(/\n +/g, ' ')).toContain(
      'Not checked how many builds keep limits, rules and requirements: the file gives no tolerance',
    );
    expect(out).not.toMatch(/kept by|met by|every build|random|NaN|undefined|Infinity|– /);
    expect(out.trimEnd().split('\n').at(-1)).toBe(
      'free: no tolerance is given, so that nothing is known of how many builds keep what is checked; told is what 1 free dimension of `tune` does',
    );
    const json = JSON.parse((await call(['tolerance', 'free', '--format', 'json'], { files: { free } })).out) as JsonTolerance;
    expect([json.together.builds, json.together.share, json.kept, json.bands, json.rules]).toEqual([0, null, null, null, []]);
    expect(json.outcomes.flatMap(({ free: [each] }) => (each === undefined ? [] : [each.by]))).toEqual(
      json.outcomes.map(() => ({ value: 1, unit: 'mm' })),
    );
  });

  it('takes one file and a seed', async () => {
    expect((await call(['tolerance'], { files })).error).toContain('A file is missing');
    expect((await call(['tolerance', 'linkage', '--seed', 'x'], { files })).error).toContain('`--seed` is a whole number');
    const [one, other] = await Promise.all(['1', '2'].map((seed) => call(['tolerance', 'linkage', '--seed', seed], { files })));
    expect(one!.out).not.toBe(other!.out);
    expect((await call(['tolerance', '--help'])).out).toMatch(/^Usage: pedal-to-plate tolerance FILE/);
  });
});
