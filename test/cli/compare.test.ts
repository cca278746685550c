import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { BASE, CLOSED_BY_TWO, SPRUNG_PEDAL, edited, without } from '../studies/compareFiles.ts';
import { call, type Outcome } from './support.ts';

const files = {
  base: BASE,
  short: edited(['max: 100 mm', 'max: 90 mm']),
  narrow: edited(['open: 68 deg', 'open: 66 deg']),
  slack: edited(['slack: 1 mm', 'slack: 1.2 mm']),
  unsolved: edited(['slack: 1 mm', 'slack: 1 mmm']),
  nonsense: 'format: 2\n',
  closed: CLOSED_BY_TWO,
  unsprung: without(CLOSED_BY_TWO, 'springs'),
  weak: CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 80'),
  weaker: CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 100'),
  sprungPedal: SPRUNG_PEDAL,
  pedalUnsprung: without(SPRUNG_PEDAL, 'springs'),
  plateless: without(SPRUNG_PEDAL, 'plates'),
};

const compare = (...argv: readonly string[]): Promise<Outcome> => call(['compare', ...argv], { files });

describe('compare', () => {
  it.each([
    ['nothing changed', 'base', 'base', 0],
    ['a figure changed and nothing is worse', 'base', 'slack', 0],
    ['an error is new', 'base', 'short', 1],
    ['an error is gone', 'short', 'base', 0],
    ['an error is there as before', 'short', 'short', 0],
    ['a requirement is not passed any more', 'base', 'narrow', 1],
    ['a requirement is passed now', 'narrow', 'base', 0],
    ['all springs are taken out', 'closed', 'unsprung', 1],
    ['springs are put in', 'unsprung', 'closed', 0],
    ['the least closing torque fell by more than half', 'closed', 'weak', 1],
    ['the least closing torque fell by less', 'closed', 'weaker', 0],
    ['an error is gone with the springs that it was told of', 'sprungPedal', 'pedalUnsprung', 1],
    ['an error is gone with the plates that it was told of', 'sprungPedal', 'plateless', 1],
    ['the new file is not solved', 'base', 'unsolved', 1],
    ['the old file was not solved', 'unsolved', 'base', 0],
    ['the new file cannot be used', 'base', 'nonsense', 2],
    ['the old file cannot be used', 'nonsense', 'base', 2],
    ['a file is missing', 'base', 'nowhere', 2],
  ])('where %s', async (_, was, is, code) => {
    expect((await compare(was, is)).code).toBe(code);
  });

  it('says in its last line how the new file stands', async () => {
    const last = async (...argv: readonly string[]): Promise<string | undefined> =>
      (await compare(...argv)).out.trimEnd().split('\n').at(-1);
    expect(await last('base', 'base')).toBe('base → base: no difference');
    expect(await last('base', 'short')).toBe('base → short: worse: 1 new error');
    expect(await last('base', 'slack')).toMatch(/^base → slack: not worse/);
  });

  it('tells what changed in the file before what it did', async () => {
    const { out, error } = await compare('base', 'short');
    expect(error).toBe('');
    const places = ['What changed in the file', 'rods.link.adjust.max', 'What it did', '[rod-out-of-adjustment]', 'Caution.'].map((word) =>
      out.indexOf(word),
    );
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it.each([
    ['the old one', ['-', 'short'], 1],
    ['the new one', ['short', '-'], 0],
  ])('reads %s from standard input', async (_, argv, code) => {
    const outcome = await call(['compare', ...argv], { files, input: BASE });
    expect(outcome.code).toBe(code);
    expect(outcome.out).toContain('<stdin>');
  });

  it('writes Markdown and JSON', async () => {
    const markdown = await compare('base', 'short', '--format', 'markdown');
    expect(markdown.code).toBe(1);
    expect(markdown.out).toMatch(/^## base → short\n\n\*\*worse: 1 new error\*\*/);
    const json = await compare('base', 'short', '--format', 'json');
    expect(json.code).toBe(1);
    expect(JSON.parse(json.out)).toMatchObject({
      caution: CAUTION,
      was: { file: 'base' },
      is: { file: 'short' },
      verdict: { worse: true },
    });
  });

  it('shows the curves that are asked for, of the columns of either file', async () => {
    const curves = async (columns: string): Promise<string[]> => {
      const { out } = await compare('base', 'slack', '--format', 'json', '--columns', columns);
      return (JSON.parse(out) as { curves: { column: string }[] }).curves.map(({ column }) => column);
    };
    expect(await curves('link.drive,shaft.opening')).toEqual(['link.drive', 'shaft.opening']);
    expect(await curves('position')).toEqual(['position.angle', 'position.signal', 'position.percent']);
  });

  it('answers a column that neither file has by the nearest one', async () => {
    const { code, out, error } = await compare('base', 'slack', '--columns', 'shaft.openin');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error).toContain('did you mean `shaft.opening`?');
  });

  it('counts a column that both files have once', async () => {
    const { error } = await compare('base', 'slack', '--columns', 'qqqqqq');
    const [, named = '', more = ''] = /there are (.*), and (\d+) more/.exec(error) ?? [];
    expect(named.split(', ').length + Number(more)).toBe(solve(BASE).columns.length);
    const { out } = await compare('base', 'slack', '--columns', 'shaft.opening');
    expect(out.match(/shaft\.opening \[deg\]/g)).toHaveLength(1);
  });

  it('colours on a terminal only', async () => {
    const onTerminal = await call(['compare', 'base', 'short'], { files, terminal: true });
    expect(onTerminal.out).toContain('\u001b[');
    expect((await compare('base', 'short')).out).not.toContain('\u001b[');
  });
});

describe('a mistake with compare', () => {
  it.each([
    [[], 'Two files are missing'],
    [['base'], 'The file to compare `base` with is missing'],
    [['base', 'short', 'slack'], '`slack` is one too many'],
    [['-', '-'], 'can be read once only'],
    [['base', 'short', '--format', 'csv'], 'There is no format `csv`'],
    [['base', 'short', '--stations', '0'], '`--stations` belongs to `table`'],
    [['base', 'short', '--columns', 'a,,b'], '`--columns` has an empty place'],
  ])('%j is told', async (argv, message) => {
    const { code, out, error } = await compare(...argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error).toContain(message);
    expect(error).toContain('Usage: pedal-to-plate compare OLD NEW');
  });

  it('tells both files that are missing', async () => {
    const { error } = await compare('nowhere', 'neither');
    expect(error).toContain('nowhere: there is no such file');
    expect(error).toContain('neither: there is no such file');
  });

  it('is helped by its own help', async () => {
    const { code, out } = await call(['compare', '--help']);
    expect(code).toBe(0);
    expect(out).toMatch(/^Usage: pedal-to-plate compare OLD NEW/);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'fell by more than half, or to nothing (the 5 % and the half are common practice, no source)',
    );
    expect((await call(['--help'])).out).toContain('pedal-to-plate compare OLD NEW');
    expect((await call(['compar', 'a', 'b'])).error).toContain('did you mean `compare`?');
  });
});
