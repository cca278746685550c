import { describe, expect, it } from 'vitest';
import { CRANK, SHAFT, textOf, torsion } from '../failures/throttles.ts';
import { call, FAULTY_FILE } from './support.ts';

const onCrank = textOf(CRANK, { springs: { first: torsion('crank', 450), second: torsion('crank', 450) } });
const files = {
  good: textOf(CRANK),
  single: textOf(SHAFT, { springs: { second: undefined } }),
  crank: onCrank,
  broken: FAULTY_FILE,
  empty: 'format: 1\n',
};

describe('return', () => {
  it('ends with 0 where every plate closes with each part lost, and tells a cable that seizes apart', async () => {
    const { code, out, error } = await call(['return', 'good'], { files });
    expect({ code, error }).toEqual({ code: 0, error: '' });
    expect(out).toContain('With every part\n  shaft  closes ');
    expect(out).toMatch(
      / {2}rod link\n {4}shaft {2}closes .*\n(?:.*\n)*? {4}shaft is let go and turns closed by first and second, onto the stop of shaft/,
    );
    expect(out).toMatch(/With a cable seized\n {2}cable main seized\n {4}shaft {2}stays open/);
    expect(out).toContain('good: every plate closes with each of 4 parts lost in turn; 1 cable would hold plates open where seized');
    expect(out).toContain('Caution.');
    expect(out).not.toMatch(/complian|NaN|undefined|Infinity/);
  });

  it('ends with 1 where a part lost leaves plates open, at the place of the part', async () => {
    const { code, out } = await call(['return', 'crank'], { files });
    expect(code).toBe(1);
    expect(out).toMatch(/crank:\d+:\d+: warning\[failure-holds-open\]: Without link, shaft stays open: nothing brings shaft back/);
    expect(out).toContain('does not meet the figure of 49 CFR 571.124 S5.2 (read in the agency’s letter nht75-2.28 of 18 July 1975');
    expect(out).toContain('of 4 parts lost in turn, 1 part would leave plates open');
  });

  it('does not say again what a single spring is found for', async () => {
    const { code, out } = await call(['return', 'single'], { files });
    expect(code).toBe(1);
    expect(out).toMatch(/ {2}spring first\n {4}shaft {2}stays open/);
    expect(out).not.toContain('failure-holds-open');
  });

  it('ends with 1 where it could not be checked, with 2 where nothing can be used', async () => {
    expect((await call(['return', 'broken'], { files })).code).toBe(1);
    expect((await call(['return', 'empty'], { files })).code).toBe(1);
    expect((await call(['return', 'missing'], { files })).code).toBe(2);
    expect((await call(['return', '-'], { input: '' })).code).toBe(2);
    const { out } = await call(['return', 'broken'], { files });
    expect(out).toMatch(/error\[unknown-name\]/);
    expect(out).toMatch(/broken: not checked: `springs\.return` is not understood\n$/);
  });

  it('takes one file and one of two formats', async () => {
    expect((await call(['return'], { files })).error).toContain('A file is missing');
    expect((await call(['return', 'good', 'single'], { files })).error).toContain('One file at a time');
    expect((await call(['return', 'good', '--format', 'sarif'], { files })).error).toContain('write text or json');
    expect((await call(['return', 'good', '--columns', 'x'], { files })).error).toContain('`--columns` belongs to');
    expect((await call(['return', '--help'])).out).toMatch(/^Usage: pedal-to-plate return FILE/);
  });

  it('fits a narrow terminal', async () => {
    const { out } = await call(['return', 'good'], { files, terminal: true, columns: 64, environment: { NO_COLOR: '1' } });
    const wide = out.split('\n').filter((line) => line.length > 64);
    expect(wide.filter((line) => !line.startsWith('good: '))).toEqual([]);
  });
});
