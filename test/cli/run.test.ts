import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from './csv.ts';
import { call, type Outcome, FAULTY_FILE, SOUND_FILE } from './support.ts';

const files = { good: SOUND_FILE, broken: FAULTY_FILE };

interface JsonTable {
  readonly columns: readonly { readonly name: string; readonly unit: string; readonly values: readonly (number | null)[] }[];
}

const jsonTable = async (argv: readonly string[]): Promise<JsonTable> => {
  const { code, out } = await call(['table', 'good', '--format', 'json', ...argv], { files });
  expect(code).toBe(0);
  return JSON.parse(out) as JsonTable;
};

describe('help and version', () => {
  it.each([[['--help']], [['-h']], [['help']], [['--help', '--nonsense']]])('%j tells everything', async (argv) => {
    const { code, out, error } = await call(argv);
    expect({ code, error }).toEqual({ code: 0, error: '' });
    expect(out).toContain('pedal-to-plate check FILE…');
    expect(out).toContain('Exit code: 0');
  });

  it.each([[['table', '--help']], [['help', 'table']], [['table', '-h', '--count']]])('%j tells of the command', async (argv) => {
    const { code, out } = await call(argv);
    expect(code).toBe(0);
    expect(out).toMatch(/^Usage: pedal-to-plate table FILE/);
  });

  it('tells the version', async () => {
    expect(await call(['--version'])).toEqual({ code: 0, out: '1.2.3\n', error: '' });
    expect(await call(['-v'])).toEqual({ code: 0, out: '1.2.3\n', error: '' });
  });
});

describe('check', () => {
  it('ends with 0 where nothing is an error', async () => {
    const { code, out, error } = await call(['check', 'good'], { files });
    expect({ code, error }).toEqual({ code: 0, error: '' });
    expect(out).toMatch(/good: no errors/);
    expect(out).toContain('Load path');
    expect(out).toContain('Caution.');
  });

  it('gives findings the severity that is asked for, in every format', async () => {
    const binding = readFileSync(new URL('../../examples/binding-broken.throttle.yaml', import.meta.url), 'utf8');
    const checked = (...options: readonly string[]): Promise<Outcome> => call(['check', 'a', ...options], { files: { a: binding } });
    // What follows from it and is worse comes forth where it is made milder.
    const milder = await checked('--severity', 'toggle-opening=note');
    expect(milder.code).toBe(1);
    expect(milder.out).toContain('error[not-assembled]');
    const asNotes = ['toggle-opening', 'not-assembled', 'transmission-angle', 'opening-missed'].map((code) => `${code}=note`).join(',');
    const noted = await checked('--severity', asNotes);
    expect(noted.code).toBe(0);
    expect(noted.out).toContain('note[toggle-opening]');
    expect(noted.out).toContain('a: no errors, 1 warning, 1 note');
    // What it explains comes in its place where it is off, each as severe as is asked.
    const off = await checked('--severity', 'toggle-opening=off,not-assembled=off', '--severity=transmission-angle=warning');
    expect(off.code).toBe(0);
    expect([...off.out.matchAll(/ (\w+\[[a-z-]+\])/g)].map(([, mark]) => mark)).toEqual([
      'warning[opening-missed]',
      'warning[transmission-angle]',
      'warning[single-return-spring]',
    ]);
    for (const format of ['json', 'sarif', 'markdown']) expect((await checked('--severity', asNotes, '--format', format)).code).toBe(0);
    const { files: one } = JSON.parse((await checked('--severity', asNotes.replaceAll('note', 'warning'), '--format', 'json')).out) as {
      readonly files: readonly { readonly findings: readonly { readonly code: string; readonly severity: string }[] }[];
    };
    expect(one[0]?.findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'warning toggle-opening',
      'warning single-return-spring',
    ]);
  });

  it('ends with 1 where something is, and shows where', async () => {
    const { code, out } = await call(['check', 'broken'], { files });
    expect(code).toBe(1);
    expect(out).toMatch(/^broken:19:\d+: error\[unknown-name\]/m);
    expect(out).toContain('19 |   return: {lever: shfat, rate: 2 N*mm/deg}\n     |                   ^^^^^\n');
  });

  it.each([
    ['a format alone', 'format: 1\n'],
    ['a format and what is required of nothing', 'format: 1\nrequire: {it holds: 1 > 0}\n'],
    ['a title and a value', 'format: 1\ntitle: to come\nlet: {reach: 38 mm}\n'],
  ])('ends with 1 where nothing can be solved and nothing is an error, and says so, as `return` does: %s', async (_, text) => {
    const { code, out } = await call(['check', 'a'], { files: { a: text } });
    expect(code).toBe(1);
    expect(out).toMatch(/\na: no errors, no warnings, no notes.*; nothing in it can be solved\n$/);
    expect((await call(['return', 'a'], { files: { a: text } })).code).toBe(1);
    const { out: json } = await call(['check', 'a', '--format', 'json'], { files: { a: text } });
    expect(JSON.parse(json)).toMatchObject({ files: [{ verdict: { outcome: 'wrong', errors: 0 } }] });
  });

  it.each([
    ['passed', 'max(shaft.opening) >= 3 deg', 0],
    ['failed', 'max(shaft.opening) >= 300 deg', 1],
    ['not decidable', 'shaft.opening >= 3 deg', 1],
  ])('with a requirement that is %s ends as it must', async (word, line, wanted) => {
    const { code, out } = await call(['check', '-'], { input: `${SOUND_FILE}require: {it opens: '${line}'}\n` });
    expect(code).toBe(wanted);
    expect(out).toMatch(new RegExp(`\\n {2}it opens {2}${word} {2}`));
    expect(out).toMatch(new RegExp(`no errors, .*; 1 requirement ${word}`));
  });

  it('reads standard input', async () => {
    const { code, out } = await call(['check', '-'], { input: FAULTY_FILE });
    expect(code).toBe(1);
    expect(out).toMatch(/^<stdin>:19:/m);
  });

  it('takes each of several files in turn, and ends with the worst code', async () => {
    const { code, out, error } = await call(['check', 'good', 'missing', 'broken'], { files });
    expect(code).toBe(2);
    expect(error).toContain('missing: there is no such file');
    expect(out.indexOf('\ngood: ')).toBeLessThan(out.indexOf('\nbroken: '));
    expect(out).toMatch(
      /\n3 files: 1 without error, 1 with errors, with requirements that are not passed or with nothing to solve, 1 that cannot be used\n$/,
    );
    expect((await call(['check', 'broken', 'good'], { files })).code).toBe(1);
  });
});

describe('colour', () => {
  const coloured = async (argv: readonly string[], terminal: boolean, environment: Record<string, string> = {}): Promise<boolean> => {
    const { out, error } = await call(argv, { files, terminal, environment });
    return (out + error).includes('\u001b');
  };

  it('is for terminals only', async () => {
    expect(await coloured(['check', 'broken'], true)).toBe(true);
    expect(await coloured(['check', 'broken'], false)).toBe(false);
    expect(await coloured(['nonsense'], true)).toBe(true);
    expect(await coloured(['nonsense'], false)).toBe(false);
  });

  it('stays away where NO_COLOR is set to anything but nothing, on a dumb terminal, and where told to', async () => {
    expect(await coloured(['check', 'broken'], true, { NO_COLOR: '1' })).toBe(false);
    expect(await coloured(['check', 'broken'], true, { NO_COLOR: '' })).toBe(true);
    expect(await coloured(['check', 'broken'], true, { TERM: 'dumb' })).toBe(false);
    expect(await coloured(['check', 'broken', '--no-color'], true)).toBe(false);
  });

  it('comes into a pipe where asked for by name', async () => {
    expect(await coloured(['check', 'broken', '--color'], false, { NO_COLOR: '1' })).toBe(true);
  });

  it('never gets into csv and json', async () => {
    expect((await call(['table', 'good', '--format', 'csv', '--color'], { files, terminal: true })).out).not.toContain('\u001b');
    expect((await call(['table', 'good', '--format', 'json', '--color'], { files, terminal: true })).out).not.toContain('\u001b');
  });
});

describe('table', () => {
  it('has a row a station, in the order given', async () => {
    const { columns } = await jsonTable(['--stations', '100, 0,50 %', '--columns', 'pedal.travel']);
    expect(columns).toEqual([{ name: 'pedal.travel', unit: '%', values: [100, 0, 50] }]);
  });

  it('spaces a count of stations evenly, 101 for files and 21 for the eye where none is given', async () => {
    expect((await jsonTable(['--count', '5', '--columns', 'pedal.travel'])).columns[0]?.values).toEqual([0, 25, 50, 75, 100]);
    expect((await jsonTable([])).columns[0]?.values).toHaveLength(101);
    const { out } = await call(['table', 'good'], { files });
    expect(out.trimEnd().split('\n')).toHaveLength(2 + 21);
  });

  it('gives columns in the order asked for, and all of a part by its name', async () => {
    const names = async (columns: string): Promise<string[]> => (await jsonTable(['--columns', columns])).columns.map(({ name }) => name);
    expect(await names('shaft.opening,pedal.travel')).toEqual(['shaft.opening', 'pedal.travel']);
    expect(await names('shaft')).toEqual(['shaft.rotation', 'shaft.opening', 'shaft.ratio']);
  });

  it('says the same in all three formats', async () => {
    const ask = async (format: string): Promise<string> =>
      (await call(['table', 'good', '--count', '7', '--columns', 'pedal.travel,shaft.opening', '--format', format], { files })).out;
    const json = JSON.parse(await ask('json')) as JsonTable;
    const [header, ...rows] = parse(await ask('csv'));
    expect(header).toEqual(['pedal.travel [%]', 'shaft.opening [deg]']);
    expect(rows.map((row) => row.map(Number))).toEqual(json.columns[0]?.values.map((value, i) => [value, json.columns[1]?.values[i]]));
    const text = (await ask('text')).trimEnd().split('\n').slice(2);
    text.forEach((line, i) => expect(Number(line.trim().split(/ +/)[1])).toBeCloseTo(json.columns[1]?.values[i] ?? NaN, 2));
  });

  it('is folded to the terminal, and not in a pipe', async () => {
    const longest = (text: string): number => Math.max(...text.split('\n').map((line) => line.length));
    expect(longest((await call(['table', 'good', '--no-color'], { files, terminal: true, columns: 60 })).out)).toBeLessThanOrEqual(60);
    expect(longest((await call(['table', 'good'], { files })).out)).toBeGreaterThan(60);
  });

  it('still comes where the text has an error elsewhere, with the problem on standard error and exit code 1', async () => {
    const { code, out, error } = await call(['table', 'broken', '--columns', 'pedal.travel', '--format', 'json'], { files });
    expect(code).toBe(1);
    expect((JSON.parse(out) as JsonTable).columns[0]?.values).toHaveLength(101);
    expect(error).toMatch(/^broken:19:\d+: error\[unknown-name\]/);
  });

  it('does not come where nothing can be solved', async () => {
    const { code, out, error } = await call(['table', '-'], { input: 'format: 1\nlevers: {a: {pivot: [0, 0]}}\n' });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error).toContain('so there is no table');
  });
});
