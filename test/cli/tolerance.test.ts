import { describe, expect, it } from 'vitest';
import { textbookLinkage, twoShafts } from '../studies/tolerance/cases.ts';
import { call } from './support.ts';

const files = {
  linkage: textbookLinkage('± 0.05 mm'),
  exact: textbookLinkage(''),
  shafts: twoShafts('± 0.1 mm'),
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
    expect(out).toContain('Not checked\n  `lost` of a rod');
    expect(out).toContain('Caution.');
    expect(out).toMatch(/shafts: 10000 builds from 8 toleranced dimensions, .*kept by \d/);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('ends with 2 where the file has no tolerance or nothing can be solved', async () => {
    const { code, error } = await call(['tolerance', 'exact'], { files });
    expect(code).toBe(2);
    expect(error).toContain('No dimension of the file has a tolerance');
    expect((await call(['tolerance', 'empty'], { files })).code).toBe(2);
    expect((await call(['tolerance', 'missing'], { files })).code).toBe(2);
  });

  it('takes one file and a seed', async () => {
    expect((await call(['tolerance'], { files })).error).toContain('A file is missing');
    expect((await call(['tolerance', 'linkage', '--seed', 'x'], { files })).error).toContain('`--seed` is a whole number');
    const [one, other] = await Promise.all(['1', '2'].map((seed) => call(['tolerance', 'linkage', '--seed', seed], { files })));
    expect(one!.out).not.toBe(other!.out);
    expect((await call(['tolerance', '--help'])).out).toMatch(/^Usage: pedal-to-plate tolerance FILE/);
  });
});
