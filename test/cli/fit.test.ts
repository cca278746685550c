import { describe, expect, it } from 'vitest';
import { BENCH, benchText, SOUND_BENCH, TEN } from '../studies/fit/bench.ts';
import { call } from './support.ts';

const columns = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const noise = ['0.004 V', '0.1 deg'];
const fromFile = `${BENCH}measured:\n  fit: [main.slack, tps.at_closed]\n  runs:\n    bench: {file: bench.csv}\n`;
const CSV = 'pedal.travel [%],tps.signal [V]\n0,0.94\n20,1.39\n40,1.965\n60,2.59\n80,3.27\n';
const files = {
  told: benchText({
    columns,
    at: TEN,
    car: { 'rods.link.length': 0.1108 },
    fit: ['link.length', 'tps.at_closed'],
    noise,
    linkage: SOUND_BENCH,
  }),
  untold: benchText({
    columns,
    at: TEN,
    fit: ['crank.pivot.x', 'shaft.pivot.x', 'link.length', 'tps.at_closed'],
    noise,
    off: { '4:0': 0.2 },
  }),
  bare_count: benchText({
    linkage: SOUND_BENCH,
    columns: ['pedal.travel', 'tps.signal'],
    at: [0, 30, 80],
    fit: ['main.slack', 'tps.at_closed', 'crank.out.radius'],
  }).replace('38 mm ± 0.3 mm', '38 mm'),
  plain: BENCH,
  empty: 'format: 1\n',
  'shop/car': fromFile,
  'shop/bench.csv': CSV,
  'bare/car': fromFile,
  'bad/car': fromFile,
  'bad/bench.csv': CSV.replace('1.39', 'NaN'),
  'folder/car': fromFile,
  'folder/bench.csv': { kind: 'folder' },
  'latin/car': fromFile,
  'latin/bench.csv': new Uint8Array([0x70, 0xe9, 0x0a]),
} as const;

describe('fit', () => {
  it('tells a figure that the file has in inches in inches, with the same car', async () => {
    const mm = benchText({ columns, at: TEN, fit: ['crank.out.radius', 'main.slack', 'tps.at_closed'], noise, linkage: SOUND_BENCH });
    const inch = mm.replace('38 mm ± 0.3 mm', `${38 / 25.4} inch ± ${0.3 / 25.4} inch`).replace('slack: 1 mm', `slack: ${1 / 25.4} inch`);
    expect(inch.match(/ inch/g)).toHaveLength(3);
    const [one, other] = await Promise.all([mm, inch].map(async (text) => (await call(['fit', 'car'], { files: { car: text } })).out));
    const found = (out: string, name: string, unit: string): readonly number[] =>
      new RegExp(`${name}: ([\\d.]+) ${unit} ± ([\\d.]+) ${unit}; the file has ([\\d.]+) ${unit}`).exec(out)?.slice(1).map(Number) ?? [];
    for (const name of ['crank\\.out\\.radius', 'main\\.slack']) {
      const [inMm, inInch] = [found(one!, name, 'mm'), found(other!, name, 'inch')];
      expect([inMm.length, inInch.length]).toEqual([3, 3]);
      inInch.forEach((value, i) => expect(Math.abs(value * 25.4 - inMm[i]!)).toBeLessThan(0.03 * Math.min(1, inMm[i]!)));
    }
    expect(other!.replace(/\n +/g, ' ')).toMatch(/the file has 1\.496 inch ± 0\.01181 inch; [^;]* to ± [\d.]+ inch, three standard/);
  });

  it('tells the dimensions with their errors, and ends with 0 where all is told and goes together', async () => {
    const { code, out, error } = await call(['fit', 'told'], { files });
    expect(error).toBe('');
    expect(out).toMatch(
      /As the car is, ± one standard error\n {2}link\.length: 110\.\d+ mm ± 0\.\d+ mm; the file has 110\.5 mm ± 0\.6 mm; the readings narrow that to ± 0\.\d+ mm,\s+three standard errors/,
    );
    expect(out).toMatch(/tps\.signal of bench: 10 readings, noise 0\.004 V, as the file says; they scatter by \d\.\d\d of it/);
    expect(out).toContain('What to turn\n  shaft.opening: up to ');
    expect(out).toContain('Not checked\n  whether a reading was taken');
    expect(out).toContain('Caution.');
    expect(out).toMatch(/told: 2 dimensions from 20 readings, all told and all readings as their noise says\n$/);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
    expect(code).toBe(0);
  });

  it('tells what cannot be told and which reading is off, and ends with 1', async () => {
    const { code, out } = await call(['fit', 'untold'], { files });
    expect(out).toContain('What these readings cannot tell\n  these readings ');
    expect(out).toMatch(
      /tps\.signal of bench, row 5 \(line \d+\): 2\.\d+ V, where the others want \d\.\d+ V; \d+\.\d times what is common:\s+left out/,
    );
    expect(out).toMatch(/not all can be told; 1 reading off and left out\n$/);
    expect(code).toBe(1);
  });

  it('does not call it sound where there are no more readings than dimensions, so that nothing can be held against any', async () => {
    const { code, out } = await call(['fit', 'bare_count'], { files });
    expect(out).toContain('it alone tells something, so a mistake in it cannot show');
    expect(out).toMatch(/3 dimensions from 3 readings; nothing can be held against any reading\n$/);
    expect(code).toBe(1);
  });

  it('reads CSV files beside the file, whatever folder that is in', async () => {
    const { out, error } = await call(['fit', 'shop/car'], { files });
    expect(error).toBe('');
    expect(out).toContain('noise 0.005 V, common practice, no source: write `noise` where you know');
    expect(out).toContain('main.slack: ');
    const input = await call(['fit', '-'], { files: { 'bench.csv': CSV }, input: fromFile });
    expect(input.out).toContain('main.slack: ');
  });

  it.each([
    ['bare/car', 'There is no file `bench.csv` beside this one'],
    ['bad/car', '`bench.csv`, line 3, column 4: `NaN` is no reading'],
    ['folder/car', '`bench.csv` is a folder, not a file'],
    ['latin/car', '`bench.csv` is not UTF-8 text; save it as UTF-8'],
  ])('%s: says what is wrong with the CSV file where it is named, and ends with 2', async (file, words) => {
    const { code, out, error } = await call(['fit', file], { files });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error.replace(/\s+/g, ' ')).toContain(words);
    expect(error).toMatch(/:29:19: error\[/);
    expect(error.split('error').length).toBe(2);
  });

  it('ends with 2 where there is nothing to find', async () => {
    const { code, error } = await call(['fit', 'plain'], { files });
    expect(code).toBe(2);
    expect(error).toBe('error: The file has no `measured` block\n');
    expect((await call(['fit', 'empty'], { files })).code).toBe(2);
    expect((await call(['fit', 'missing'], { files })).code).toBe(2);
  });

  it('writes JSON, also of what could not be fitted', async () => {
    const { code, out } = await call(['fit', 'told', '--format', 'json'], { files });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: 1, file: 'told', verdict: { outcome: 'sound' } });
    const none = await call(['fit', 'bare/car', '--format', 'json'], { files });
    expect(none.code).toBe(2);
    expect(JSON.parse(none.out)).toMatchObject({ verdict: { outcome: 'unusable' }, problems: [{ code: 'unknown-name' }] });
  });

  it('refuses what it does not know, and explains itself', async () => {
    expect((await call(['fit'], { files })).error).toContain('A file is missing');
    expect((await call(['fit', 'told', 'plain'], { files })).error).toContain('One file at a time');
    expect((await call(['fit', 'told', '--format', 'sarif'], { files })).error).toContain('There is no format `sarif`');
    expect((await call(['fit', 'told', '--seed', '1'], { files })).error).toContain('`--seed` belongs to');
    expect((await call(['fit', '--help'])).out).toMatch(/^Usage: pedal-to-plate fit FILE/);
  });
});
