import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { compareJson } from '../../src/outputs/compareJson.ts';
import { solve } from '../../src/solve.ts';
import { BASE, CLOSED_BY_TWO, edited, without } from '../studies/compareFiles.ts';

interface Side {
  readonly text: string;
  readonly value: number;
  readonly unit: string;
  readonly writtenUnit: string;
  readonly place: { readonly line: number; readonly column: number };
}

interface Document {
  readonly format: number;
  readonly was: object;
  readonly is: object;
  readonly caution: string;
  readonly verdict: object;
  readonly file: {
    readonly values: readonly {
      readonly path: string;
      readonly was: Side | null;
      readonly is: Side | null;
      readonly follows: readonly string[];
    }[];
    readonly rewritten: readonly { readonly path: string; readonly was: Side; readonly is: Side }[];
  };
  readonly outcomes: readonly {
    readonly part: string;
    readonly key: string;
    readonly was: { readonly figure: object } | null;
    readonly difference: object | null;
  }[];
  readonly findings: {
    readonly added: readonly { readonly code: string; readonly place: { readonly line: number } }[];
    readonly gone: readonly object[];
  };
  readonly requirements: readonly object[];
  readonly curves: readonly { readonly column: string; readonly stations: readonly number[]; readonly was: readonly number[] }[];
}

const json = (was: string, is: string): Document => {
  const text = compareJson(compareTexts(was, is), { was: { name: 'old.yaml', text: was }, is: { name: 'new.yaml', text: is } });
  expect(text.endsWith('\n')).toBe(true);
  return JSON.parse(text) as Document;
};

describe('a comparison as JSON', () => {
  const wider = edited(['open: 68 deg', 'open: 66 deg'], ['max: 100 mm', 'max: 90 mm']);
  const document = json(BASE, wider);

  it('names both files, their states, the verdict and the caution', () => {
    expect(document).toMatchObject({
      ...{ format: 1, was: { file: 'old.yaml', state: 'solved' }, is: { file: 'new.yaml', state: 'solved' }, caution: CAUTION },
      verdict: { worse: true, newErrors: 1, lostRequirements: 1, lostSolution: false },
    });
  });

  it('has values in the unit of their place, with the place on each side', () => {
    const open = document.file.values.find(({ path }) => path === 'levers.shaft.stops.open');
    expect(open?.was).toMatchObject({ text: '68 deg', value: expect.closeTo(68, 12) as number, unit: 'deg' });
    const lines = BASE.split('\n');
    const { line, column } = open?.was?.place ?? { line: 0, column: 0 };
    expect(lines[line - 1]?.slice(column - 1)).toMatch(/^68 deg/);
  });

  it('has every digit of the figures', () => {
    const curve = document.curves.find(({ column }) => column === 'shaft.opening');
    const { stations } = compareTexts(BASE, wider, { columns: ['shaft.opening'] }).curves[0] ?? { stations: [] };
    expect(curve?.stations).toEqual(stations.map((at) => at * 100));
    expect(curve?.was).toEqual(solve(BASE).table(stations, ['shaft.opening']).columns[0]?.values);
    const half = document.outcomes.find(({ part, key }) => part === 'shaft' && key === 'travel-at-50');
    expect(half?.was?.figure).toMatchObject({ unit: '%' });
  });

  it('has null for what is not there', () => {
    expect(json(edited(['slack: 1 mm, ', '']), BASE).file.values[0]?.was).toBeNull();
  });

  it('tells a figure that is rewritten in another unit', () => {
    const [was, is] = [edited(['slack: 1 mm', 'slack: 2.54 mm']), edited(['slack: 1 mm', 'slack: 0.1 inch'])];
    const { file, outcomes } = json(was, is);
    expect(file.values).toEqual([]);
    expect(outcomes).toEqual([]);
    expect(file.rewritten).toMatchObject([{ path: 'cables.main.slack', was: { writtenUnit: 'mm' }, is: { writtenUnit: 'inch' } }]);
  });

  it('has what can no longer be judged and what closes less in the verdict, and how the other file stands to what is gone', () => {
    expect(json(CLOSED_BY_TWO, without(CLOSED_BY_TWO, 'springs'))).toMatchObject({
      verdict: { worse: true, unjudged: [{ part: 'shaft' }], closesLess: [] },
      notChecked: {
        gone: [
          { part: 'a', elsewhere: 'not-looked-at' },
          { part: 'b', elsewhere: 'not-looked-at' },
        ],
      },
    });
    expect(json(CLOSED_BY_TWO, CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 80'))).toMatchObject({
      verdict: { worse: true, closesLess: [{ part: 'shaft', is: { value: expect.closeTo(160, 9) as number, unit: 'N·mm' } }] },
    });
  });

  it('is empty where nothing changed', () => {
    const same = json(BASE, BASE);
    expect(same.file).toEqual({ values: [], words: [], added: [], gone: [], renamed: [], unread: [], rewritten: [] });
    expect([same.outcomes, same.requirements, same.curves, same.findings]).toEqual([[], [], [], { added: [], gone: [], kept: [] }]);
  });
});
