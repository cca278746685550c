import { describe, expect, it } from 'vitest';
import { tableCsv } from '../../src/outputs/tableCsv.ts';
import { tableJson } from '../../src/outputs/tableJson.ts';
import { tableText } from '../../src/outputs/tableText.ts';
import type { Table } from '../../src/table/column.ts';

const table: Table = {
  stations: [0, 0.5, 1],
  columns: [
    { name: 'pedal.travel', unit: '%', values: [0, 50, 100] },
    { name: 'shaft.opening', unit: 'deg', values: [-1e-17, 81.2345678901234, null] },
    { name: 'shaft.ratio', unit: '', values: [0.1 + 0.2, 2, null] },
  ],
};

describe('a table as JSON', () => {
  it('has every digit, and null where there is no value', () => {
    expect(JSON.parse(tableJson(table))).toEqual({ columns: table.columns });
    expect(tableJson(table)).toContain('0.30000000000000004');
  });

  it('is what a reader expects to the letter', () => {
    const small: Table = { stations: [0], columns: [{ name: 'a.b', unit: 'mm', values: [1.5] }] };
    expect(tableJson(small)).toBe('{"columns":[\n{"name":"a.b","unit":"mm","values":[1.5]}\n]}\n');
    expect(JSON.parse(tableJson({ stations: [], columns: [] }))).toEqual({ columns: [] });
  });
});

describe('a table as CSV', () => {
  it('has a header with units, CRLF line ends, every digit, and empty fields where there is no value', () => {
    expect(tableCsv(table)).toBe(
      'pedal.travel [%],shaft.opening [deg],shaft.ratio\r\n0,-1e-17,0.30000000000000004\r\n50,81.2345678901234,2\r\n100,,\r\n',
    );
  });

  it('quotes a field that needs it, as RFC 4180 wants', () => {
    expect(tableCsv({ stations: [], columns: [{ name: 'a,"b"', unit: '', values: [] }] })).toBe('"a,""b"""\r\n');
  });
});

describe('a table as text', () => {
  it('stands in line, with few digits and a dash where there is no value', () => {
    expect(tableText(table)).toBe(
      [
        'pedal.travel  shaft.opening  shaft.ratio',
        '           %            deg',
        '         0.0           0.00        0.300',
        '        50.0          81.23        2.000',
        '       100.0              –            –',
        '',
      ].join('\n'),
    );
  });

  it('is folded to a width, with the first column again in each part', () => {
    const lines = tableText(table, { width: 30 }).split('\n');
    expect(lines.filter((line) => line.startsWith('pedal.travel'))).toEqual(['pedal.travel  shaft.opening', 'pedal.travel  shaft.ratio']);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(30);
  });

  it('is empty without columns', () => {
    expect(tableText({ stations: [0, 1], columns: [] })).toBe('');
  });
});
