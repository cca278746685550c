/** CSV files of readings: separators, quotes, units, and the place of everything that is wrong. */
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../../src/definition/read.ts';
import { parseCsv } from '../../../src/studies/fit/csv.ts';
import { readCsv } from '../../../src/studies/fit/csvReadings.ts';
import { countReadings, inlineReadings } from '../../../src/studies/fit/readings.ts';
import { solve } from '../../../src/solve.ts';
import { tableCsv } from '../../../src/outputs/tableCsv.ts';

const LINKAGE = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: [320, 80], arms: {arm: {radius: 30 mm, angle: 200}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 15}
rods:
  link: {from: pedal.clevis, to: shaft.arm}
sensors:
  tps: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
`;
const definition = readDefinition(LINKAGE).definition!;
const read = (text: string, columns?: readonly string[]) =>
  readCsv(
    text,
    columns === undefined
      ? {}
      : {
          columns: columns.map((name) => {
            const [owner = '', column = ''] = name.split('.');
            return { owner, column, dimension: 'number' as const, span: { start: 0, end: 0 } };
          }),
        },
    definition,
  );
const values = (text: string, columns?: readonly string[]) => {
  const { readings, problems } = read(text, columns);
  expect(problems).toEqual([]);
  return readings?.rows.map((row) => row.values);
};
const told = (text: string, columns?: readonly string[]) =>
  read(text, columns).problems.map(({ line, column, message, cure }) => `${line}:${column} ${message} | ${cure ?? ''}`);
/** The only problem stands at a place and says these words. */
const checkTold = (text: string, place: string, words: string, columns?: readonly string[]): void => {
  const all = told(text, columns);
  expect(all.length).toBe(1);
  expect(all[0]).toMatch(new RegExp(`^${place} `));
  expect(all[0]).toContain(words);
};

describe('a sound file', () => {
  const SI = [
    [0, 0.62],
    [0.1, 0.71],
  ];
  it.each([
    ['commas', 'pedal.travel [%],tps.signal [V]\n0,0.62\n10,0.71\n'],
    ['semicolons', 'pedal.travel [%];tps.signal [V]\n0;0.62\n10;0.71\n'],
    ['semicolons and decimal commas', 'pedal.travel [%];tps.signal [V]\n0;0,62\n10;0,71\n'],
    ['tabs, decimal commas and no last line end', 'pedal.travel [%]\ttps.signal\n0\t0,62\n10\t0,71'],
    ['a byte order mark, CRLF, quotes and blanks', '\ufeff"pedal.travel [%]" , "tps.signal [mV]"\r\n 0 , "620"\r\n"10", 710 \r\n\r\n'],
    ['units in cells', 'pedal.travel [1],tps.signal\n0,620 mV\n10 %,0.71 V\n'],
    ['empty cells at the ends of lines', 'pedal.travel [%],tps.signal [V]\n0,0.62,,\n10,0.71,,\n,,,\n'],
  ])('with %s is read in SI', (_, text) => {
    const found = values(text);
    expect(found?.length).toBe(2);
    found?.forEach((row, i) => row.forEach((value, j) => expect(value).toBeCloseTo(SI[i]?.[j] ?? NaN, 14)));
  });

  it('may lack readings, by an empty cell or `~`', () => {
    expect(values('pedal.travel [%],tps.signal,shaft.opening [rad]\n0,,0\n100,~,0.5\n50,1\n')).toEqual([
      [0, undefined, 0],
      [1, undefined, 0.5],
      [0.5, 1, undefined],
    ]);
    const { readings } = read('pedal.travel [%],tps.signal,shaft.opening [rad]\n0,,0\n100,~,0.5\n50,1\n');
    expect(readings && countReadings(readings)).toBe(3);
  });

  it('may have other columns where the run says which count, in its order', () => {
    expect(values('time,tps.signal [V],pedal.travel [%]\n17:02,1,50\n', ['pedal.travel', 'tps.signal'])).toEqual([[0.5, 1]]);
  });

  it('can be the table that the program writes', () => {
    const table = solve(LINKAGE).table([0, 0.25, 1], ['pedal.travel', 'shaft.opening', 'tps.signal']);
    const { readings, problems } = read(tableCsv(table));
    expect(problems).toEqual([]);
    const scales = [0.01, Math.PI / 180, 1];
    readings?.rows.forEach((row, i) =>
      row.values.forEach((value, j) => {
        const shown = table.columns[j]?.values[i] ?? null;
        // Where the linkage does not go together the cell is empty.
        if (shown === null) expect(value).toBeUndefined();
        else expect(value).toBeCloseTo(shown * (scales[j] ?? NaN), 12);
      }),
    );
    expect(readings?.rows.length).toBe(3);
  });
});

describe('a mistake has its place', () => {
  it.each([
    ['an empty file', '', '1:1', 'empty'],
    ['a header of one column', 'pedal.travel [%]\n0\n', '1:1', 'one column only'],
    ['no readings', 'pedal.travel [%],tps.signal\n', '2:1', 'no readings'],
    ['a column that is none', 'pedal.travel [%],time\n0,1\n', '1:18', 'no column of this linkage'],
    ['a column that is nearly one', 'pedal.travel [%],tps.signl\n0,1\n', '1:18', 'Did you mean `tps.signal`?'],
    ['a part without a column', 'pedal.travel [%],tps\n0,1\n', '1:18', 'Write one of them: `tps.angle`'],
    ['a column that a part has not', 'pedal.travel [%],tps.zzzzzz\n0,1\n', '1:18', '`tps` has no column `zzzzzz`'],
    ['a unit in round brackets', 'pedal.travel [%],tps.signal (V)\n0,1\n', '1:18', 'in square brackets: `tps.signal [V]`'],
    ['a name in capitals', 'pedal.travel [%],TPS.signal\n0,1\n', '1:18', 'Write `tps.signal`'],
    ['travel alone', 'travel,tps.signal\n0,1\n', '1:1', 'Write `pedal.travel [%]`'],
    ['a column twice', 'pedal.travel [%],tps.signal,tps.signal\n0,1,1\n', '1:29', 'stands twice'],
    ['a share without a unit', 'pedal.travel,tps.signal\n0,1\n', '1:1', 'Write `pedal.travel [%]`'],
    ['a unit of another kind', 'pedal.travel [%],tps.signal [mm]\n0,1\n', '1:18', 'unit of `tps.signal`'],
    ['no position first', 'tps.signal,pedal.travel [%]\n1,0\n', '1:1', 'does not say where the pedal is'],
    ['a decimal comma between commas', 'pedal.travel [%],tps.signal\n0,0,62\n', '2:5', 'decimal comma'],
    ['a quoted decimal comma between commas', 'pedal.travel [%],tps.signal\n0,"0,62"\n', '2:3', 'Write `0.62`'],
    ['a decimal comma beside points', 'pedal.travel [%];tps.signal\n0;0,62\n10;0.71\n', '2:3', 'line 3 a point'],
    ['NaN', 'pedal.travel [%],tps.signal\n0,NaN\n', '2:3', 'is no reading'],
    ['infinity', 'pedal.travel [%],tps.signal\n0,-inf\n', '2:3', 'is no reading'],
    ['too large a figure', 'pedal.travel [%],tps.signal\n0,1e999\n', '2:3', 'too large'],
    ['a signal beyond what its sensor gives', 'pedal.travel [%],tps.signal\n0,620\n', '2:3', 'cannot have read 620 V'],
    ['a word', 'pedal.travel [%],tps.signal\n0,off\n', '2:3', 'is no reading'],
    ['a missing position', 'pedal.travel [%],tps.signal\n,1\n', '2:1', 'is missing'],
    ['a position beyond the travel', 'pedal.travel [%],tps.signal\n101,1\n', '2:1', 'not at 101 %'],
    ['an open quote', 'pedal.travel [%],tps.signal\n0,"1\n', '2:3', 'quote'],
    ['text behind a quote', 'pedal.travel [%],tps.signal\n0,"1"2\n', '2:6', 'quote'],
  ])('%s', (_, text, place, words) => checkTold(text, place, words));

  it('a column that the run names and the file lacks', () => {
    checkTold('pedal.travel [%],volts\n0,1\n', '1:1', 'no column `tps.signal`', ['pedal.travel', 'tps.signal']);
  });

  it('and the other lines are read all the same', () => {
    const { readings, problems } = read('pedal.travel [%],tps.signal\n0,1\n10,NaN\n20,3\n');
    expect(problems.length).toBe(1);
    expect(readings?.rows).toEqual([
      { line: 2, values: [0, 1] },
      { line: 4, values: [0.2, 3] },
    ]);
  });

  it('more than ten thousand lines, and one fewer is read', () => {
    const lines = (count: number): string => `pedal.travel [%],tps.signal\n${'0,1\n'.repeat(count)}`;
    expect(values(lines(10_000))?.length).toBe(10_000);
    checkTold(lines(10_001), '10002:1', 'more than 10000 lines');
  });
});

describe('cells', () => {
  it('in quotes may hold separators, quotes and line ends, and what follows still has its line', () => {
    const { rows } = parseCsv('a,"b, ""c""\nd"\r\ne,f\n', 10);
    expect(rows.map((row) => row.map(({ text }) => text))).toEqual([
      ['a', 'b, "c"\nd'],
      ['e', 'f'],
    ]);
    expect(rows[1]?.map(({ line, column }) => [line, column])).toEqual([
      [3, 1],
      [3, 3],
    ]);
  });

  it('of any text are told apart without an end or a throw', () => {
    const signs = ['"', ',', ';', '\t', '\n', '\r', ' ', 'a', '1', '.', '[', ']', '%', '\ufeff'];
    let seed = 1;
    for (let i = 0; i < 500; i++) {
      let text = '';
      for (let j = 0; j < 30; j++) {
        seed = (seed * 48271) % 2147483647;
        text += signs[seed % signs.length] ?? '';
      }
      const { problems } = read(`pedal.travel [%],tps.signal\n${text}`);
      for (const { line, column } of problems) expect(Math.min(line, column)).toBeGreaterThan(0);
    }
  });
});

it('takes readings from the throttle file as they stand', () => {
  const run = readDefinition(`${LINKAGE}measured:
  fit: [link.length]
  runs: {a: {columns: [pedal.travel, tps.signal], rows: [[0 %, 1], [50 %, ~]]}}
`).definition?.measured?.runs[0];
  if (run === undefined) throw new Error('There is no run');
  expect(inlineReadings(run)?.rows).toEqual([{ values: [0, 1] }, { values: [0.5, undefined] }]);
});
