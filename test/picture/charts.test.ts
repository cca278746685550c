/** The charts, against the table at the same stations and against what the file says. */
import { describe, expect, it } from 'vitest';
import type { Chart, ChartCurve, ChartId } from '../../src/protocol/charts.ts';
import { SOUND_FILE } from '../support/soundFile.ts';
import { chainText } from './chain.ts';
import { FILES, fileNamed, shownOf } from './shown.ts';

const chartOf = (charts: readonly Chart[], id: ChartId): Chart => {
  const found = charts.find((chart) => chart.id === id);
  if (found === undefined) throw new Error(`There is no chart ${id}`);
  return found;
};
const curveOf = ({ curves }: Chart, column: string): ChartCurve => {
  const found = curves.find((curve) => curve.column === column);
  if (found === undefined) throw new Error(`There is no curve ${column}`);
  return found;
};
/** The margins over friction are no columns of the table. */
const ofColumns = ({ id }: Chart): boolean => id !== 'margins';
const columnsOf = (chart: Chart): readonly string[] => chart.curves.map(({ column }) => column);

describe.each(FILES)('the charts of $name', ({ text }) => {
  const { charts, answers, picture } = shownOf(text);
  const stations = [...picture.stations];

  it('hold the figures of the table at the stations of the picture', () => {
    for (const { curves, id } of charts.filter(ofColumns)) {
      for (const { column, values } of curves) {
        if (id === 'progression' && column.endsWith('.opening')) continue;
        const table = answers.table(stations, [column]).columns[0]!.values;
        expect([...values].map((value) => (Number.isNaN(value) ? null : value))).toEqual(table);
      }
    }
  });

  it('are in the unit of their columns', () => {
    for (const { curves, id, unit } of charts.filter(ofColumns)) {
      for (const { column } of curves) {
        if (id === 'progression' && column.endsWith('.opening')) continue;
        expect(answers.table([0], [column]).columns[0]!.unit).toBe(unit);
      }
    }
  });

  it('tell the opening as a share of the full one that the file gives', () => {
    const progression = chartOf(charts, 'progression');
    const shafts = [...new Set(answers.definition!.plates.map(({ lever }) => lever.name))];
    expect(progression.straight).toBe(true);
    for (const shaft of shafts) {
      const full = answers.definition!.levers.find(({ name }) => name === shaft)!.stops!.open!.nominal;
      const opening = answers.table(stations, [`${shaft}.opening`]).columns[0]!.values;
      curveOf(progression, `${shaft}.opening`).values.forEach((share, i) => {
        const wanted = opening[i];
        if (wanted === null || wanted === undefined) expect(share).toBeNaN();
        else expect(share).toBeCloseTo((wanted * Math.PI) / 1.8 / full, 9);
      });
    }
  });
});

describe('a chart', () => {
  const { charts } = shownOf(fileNamed('four-barrel'));

  it('is there for each question that the file can answer, in their order', () => {
    expect(charts.map(({ id }) => id)).toEqual(['progression', 'ratio', 'angles', 'signal', 'torques', 'margins', 'effort']);
    expect(shownOf(SOUND_FILE).charts.map(({ id }) => id)).toEqual(['progression', 'ratio', 'angles']);
  });

  it('names its curves, their parts and their digits', () => {
    expect(charts.map(({ curves }) => curves.map(({ label, part, digits }) => `${label} (${part}) ${digits}`))).toEqual([
      ['shaft opening (shaft) 1', 'bank area (bank) 1'],
      ['shaft (shaft) 2'],
      ['main drive (main) 1', 'link transmission (link) 1', 'link drive (link) 1'],
      ['position (position) 3'],
      ['shaft closing (shaft) 0', 'return_front (return_front) 0', 'return_rear (return_rear) 0'],
      [
        'pedal (pedal) 1',
        'pedal (return_front off) (return_front) 1',
        'pedal (return_rear off) (return_rear) 1',
        'shaft (shaft) 1',
        'shaft (return_front off) (return_front) 1',
        'shaft (return_rear off) (return_rear) 1',
      ],
      ['effort (pedal) 1', 'release (pedal) 1'],
    ]);
  });

  it('of effort says where friction is left out, and where the force acts', () => {
    expect(chartOf(charts, 'effort').title).toBe('Force at the pad');
    const cable = `${SOUND_FILE}springs: {return: {lever: shaft, rate: 2 N*mm/deg, preload: 200 N*mm}}\n`;
    expect(chartOf(shownOf(cable).charts, 'effort').title).toBe('Force at the cable, friction left out: pressing and releasing alike');
  });

  it('of a cable that is the pedal has its ratio per millimetre', () => {
    const ratio = chartOf(shownOf(SOUND_FILE).charts, 'ratio');
    expect([ratio.unit, ratio.title]).toEqual(['deg/mm', 'Opening for each mm of pull']);
  });

  it('of ratio takes the last levers where the file has no plates', () => {
    const bare = SOUND_FILE.replace(/plates:\n.*\n/, '');
    expect(columnsOf(chartOf(shownOf(bare).charts, 'ratio'))).toEqual(['shaft.ratio']);
    expect(shownOf(bare).charts.map(({ id }) => id)).not.toContain('progression');
  });

  it('leaves out ends on drums, which are always pulled square', () => {
    expect(columnsOf(chartOf(charts, 'angles'))).not.toContain('main.transmission');
  });

  it('is left out where it would be empty', () => {
    for (const { text } of FILES) for (const { curves } of shownOf(text).charts) expect(curves.length).toBeGreaterThan(0);
  });
});

describe('the margins over friction', () => {
  /** Drag of 50 N·mm against 2 springs of 2 N·mm/deg and 200 N·mm: by hand. */
  const text = `${SOUND_FILE.replace('pivot: [90, 10]', 'pivot: [90, 10]\n    friction: 50 N*mm')}springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 200 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 40 N*mm}
  in_sensor: {lever: shaft, rate: 2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}
limits: {closing_margin: [3, 1.5]}
`;
  const { charts, answers, picture } = shownOf(text);
  const margins = chartOf(charts, 'margins');

  it('are told with all springs and with each return spring off', () => {
    expect(margins.curves.map(({ label, part }) => `${label} (${part})`)).toEqual(['shaft (shaft)', 'one off (one)', 'two off (two)']);
    const opening = answers.table([...picture.stations], ['shaft.opening']).columns[0]!.values.map((value) => value ?? NaN);
    const springs: readonly (readonly [number, number])[] = [
      [250, 6],
      [50, 4],
      [210, 4],
    ];
    for (const [i, [preload, rate]] of springs.entries()) {
      margins.curves[i]!.values.forEach((value, station) =>
        expect(value).toBeCloseTo(Math.min(10, (preload + rate * opening[station]!) / 50), 9),
      );
    }
  });

  it('have the limits of the file as bands', () => {
    expect(margins.bands).toEqual([
      { severity: 'error', from: undefined, to: 1.5, label: 'under 1.5 times the friction' },
      { severity: 'warning', from: 1.5, to: 3, label: 'under 3 times the friction' },
    ]);
  });

  it('are left out where the file gives no friction', () => {
    const bare = `${SOUND_FILE}springs: {return: {lever: shaft, rate: 2 N*mm/deg, preload: 200 N*mm}}\n`;
    expect(shownOf(bare).charts.map(({ id }) => id)).not.toContain('margins');
  });
});

describe('the bands of the angles', () => {
  const bandsOf = (limits: string) => chartOf(shownOf(`${SOUND_FILE}${limits}`).charts, 'angles').bands;

  it('are the usual limits where the file gives none (textbook minimum and common practice, as in docs of the findings)', () => {
    expect(bandsOf('').map(({ severity, label }) => `${severity} ${label}`)).toEqual([
      'error transmission below 25°',
      'warning transmission below 40°',
      'error drive below 10°',
      'warning drive below 20°',
    ]);
    const [error, warning] = bandsOf('');
    expect([error!.from, warning!.from]).toEqual([undefined, error!.to]);
    expect(error!.to).toBeCloseTo(25, 12);
    expect(warning!.to).toBeCloseTo(40, 12);
  });

  it('are those of the file', () => {
    const [transmission, second] = bandsOf('limits: {transmission: [50 deg, 30 deg], drive: 15 deg}\n').filter(
      ({ severity }) => severity === 'warning',
    );
    expect(transmission!.to).toBeCloseTo(50, 12);
    expect(second!.to).toBeCloseTo(15, 12);
    expect(second!.from).toBeUndefined();
    expect(bandsOf('limits: {drive: 15 deg}\n').some(({ label, severity }) => label.startsWith('drive') && severity === 'error')).toBe(
      false,
    );
  });
});

describe('the charts of 64 loops', () => {
  const { charts, picture } = shownOf(chainText(64));
  const angles = chartOf(charts, 'angles');

  it('hold every curve', () => {
    expect(picture.rods).toHaveLength(64);
    expect(angles.curves).toHaveLength(128);
    expect(new Set(columnsOf(angles)).size).toBe(128);
  });

  it('begin with what comes nearest to its limit', () => {
    const margins = angles.curves.map(({ column, values }) => {
      const least = Math.min(...values.filter((value) => !Number.isNaN(value)));
      return least - (column.endsWith('.drive') ? 20 : 40);
    });
    for (let i = 1; i < margins.length; i++) expect(margins[i]).toBeGreaterThanOrEqual(margins[i - 1]! - 1e-9);
  });

  it('keep load-path order where there are few', () => {
    expect(columnsOf(chartOf(shownOf(chainText(4)).charts, 'angles'))).toEqual(
      [0, 1, 2, 3].flatMap((i) => [`rod_${i}.transmission`, `rod_${i}.drive`]),
    );
  });
});
