/** The block `measured`: what it reads, what it refuses and where. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { readCsv } from '../../src/studies/fit/csvReadings.ts';
import { checkOneProblem } from '../support/checkOneProblem.ts';
import { checkProblems } from '../support/checkProblems.ts';

const LINKAGE = `format: 1
let:
  reach: 30 mm ± 0.1 mm
points:
  hub: [320, 80]
levers:
  pedal: {pivot: [0, 0], arms: {clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: hub, arms: {arm: {radius: reach, angle: 200}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 15}
rods:
  link: {from: pedal.clevis, to: shaft.arm}
sensors:
  tps: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
`;
const RUNS = `  runs: {a: {columns: [pedal.travel, tps.signal], rows: [[0, 1], [50 %, 2], [100 %, 3]]}}
`;
const run = (keys: string): string => `${LINKAGE}measured:\n  runs:\n    a: {${keys}}`;
const measuredOf = (text: string) => {
  const measured = checkProblems(text).definition?.measured;
  if (measured === undefined) throw new Error('There is no measured');
  return measured;
};

describe('a sound block', () => {
  it('is read with its readings in SI, and `~` where none was taken', () => {
    const measured = measuredOf(`${LINKAGE}measured:
  fit: [reach, link.length, tps.at_closed, shaft.arm.angle, hub.x, pedal.travel]
  runs:
    bench:
      columns: [pedal.travel, tps.signal, shaft.opening]
      rows:
        - [0 %, 620 mV, 0 deg]
        - [10 %, 0.71, ~]
        - [0.2, ~, 3]
        - [100 %, 4 V, 30 deg]
      noise: {tps.signal: 10 mV}
`);
    expect(measured.unread).toEqual([]);
    expect(measured.fit?.map(({ path }) => path)).toEqual([
      'let.reach',
      'rods.link.length',
      'sensors.tps.at_closed',
      'levers.shaft.arms.arm.angle',
      'points.hub.0',
      'pedal.travel',
    ]);
    const [bench] = measured.runs;
    if (bench?.readings.kind !== 'rows') throw new Error('There are no rows');
    const degrees = (value: number): unknown => expect.closeTo((value * Math.PI) / 180, 12);
    expect(bench.readings.rows.map(({ values }) => values.map((value) => value?.nominal))).toEqual([
      [0, 0.62, 0],
      [0.1, 0.71, undefined],
      [0.2, undefined, degrees(3)],
      [1, 4, degrees(30)],
    ]);
    expect(bench.noise.map(({ column, deviation }) => [column.column, deviation.nominal])).toEqual([['signal', 0.01]]);
  });

  it('takes a file beside it, with or without the columns that count', () => {
    const measured = measuredOf(`${LINKAGE}measured:
  runs:
    a: {file: bench run.csv}
    b: {file: other.csv, columns: [pedal.travel, shaft.opening]}
`);
    expect(measured.runs.map(({ readings }) => readings.kind)).toEqual(['file', 'file']);
    expect(measured.fit).toBeUndefined();
  });
});

describe('dimensions to be found', () => {
  it('are there, are no formulas, and stand once', () => {
    const measured = measuredOf(`${LINKAGE}measured:
  fit: [reach, rech, link.lenth, shaft.arm.radius, shaft, reach]
#              ^^^^ error[unknown-name]: Did you mean \`reach\`?
#                    ^^^^^^^^^^ error[unknown-name]: Did you mean \`link.length\`?
#                                ^^^^^^^^^^^^^^^^ error[not-free]: Write \`reach\`, from which it follows
#                                                  ^^^^^ error[wrong-value]: is a lever
#                                                         ^^^^^ error[wrong-value]: stands twice
${RUNS}`);
    expect(measured.fit?.map(({ name }) => name)).toEqual(['reach']);
    expect(measured.unread.length).toBe(5);
  });

  it('are not called unknown where their part could not be read', () => {
    checkProblems(`${LINKAGE}springs:
  back: {lever: shaft, rate: 3 deg, preload: 3 N*mm}
#                              ^^^ error[wrong-unit]: torsional rate
measured:
  fit: [back.preload]
${RUNS}`);
  });

  it('are no more than there are readings', () => {
    checkProblems(`${LINKAGE}measured:
#^^^^^^^ error[too-few-readings]: 2 readings cannot tell 3 dimensions
  fit: [reach, link.length, tps.at_closed]
  runs: {a: {columns: [pedal.travel, tps.signal, shaft.opening], rows: [[0 %, 1, ~], [50 %, ~, 3]]}}
`);
  });

  it('must be named where nothing has a tolerance', () => {
    checkProblems(`${LINKAGE.replace(' ± 0.1 mm', '')}measured:
#^^^^^^^ error[missing-key]: does not say what is to be found
${RUNS}`);
  });
});

describe('runs', () => {
  it('take readings and noise as they stand: a tolerance is told once for each column', () => {
    const rows = 'columns: [pedal.travel, tps.signal], rows: [[0 %, 1.15 V TOL], [50 %, 1.2 V ± 0.01 V], [100 %, 3 V]]';
    checkOneProblem(`${run(rows.replace('TOL', '«± 0.01 V»'))}\n`, 'warning[bad-tolerance]', 'as in `noise: {tps.signal: …}`');
    checkOneProblem(
      `${run(`${rows.replace(/ TOL| ± 0.01 V/g, '')}, noise: {tps.signal: 10 mV «± 1 mV»}`)}\n`,
      'warning[bad-tolerance]',
      'one standard deviation',
    );
    checkOneProblem(
      `${run('columns: [pedal.travel, shaft.opening], rows: [[0 %, 1], [50 %, «1e300»], [100 %, 3]]')}\n`,
      'error[out-of-range]',
      '`shaft.opening` is larger',
    );
  });

  it('begin with the position of the pedal, and have each column once', () => {
    checkOneProblem(
      `${run('columns: [«tps.signal», pedal.travel], rows: [[1, 0]]')}\n`,
      'error[wrong-value]',
      'does not say where the pedal is',
    );
    checkOneProblem(
      `${run('columns: [pedal.travel, tps.signal, «tps.signal»], rows: [[0, 1, 1]]')}\n`,
      'error[wrong-value]',
      'stands twice',
    );
    checkOneProblem(`${run('columns: «[pedal.travel]», rows: [[0]]')}\n`, 'error[wrong-shape]', '2 columns or more');
    checkOneProblem(`${run('columns: [pedal.travel, tps.«volts»], rows: [[0, 1]]')}\n`, 'error[unknown-name]', 'has no column');
  });

  it('give rows or a file, not both and not neither', () => {
    checkOneProblem(
      `${run('columns: [pedal.travel, tps.signal], rows: [[0, 1]], «file»: a.csv')}\n`,
      'error[wrong-shape]',
      'does not go with `rows`',
    );
    checkOneProblem(`${run('columns: [pedal.travel, tps.signal]').replace('    a:', '    «a»:')}\n`, 'error[missing-key]', 'no `rows`');
    checkOneProblem(`${run('noise: {tps.signal: 1 V}').replace('    a:', '    «a»:')}\n`, 'error[missing-key]', 'where its readings are');
    const withoutRuns = `${LINKAGE}«measured»: {fit: [reach]}\n`;
    checkOneProblem(withoutRuns, 'error[missing-key]', 'has no `runs`');
    // The block is there, and what is not understood is told.
    expect(solve(withoutRuns.replace(/[«»]/g, '')).definition?.measured?.unread).toHaveLength(1);
    checkOneProblem(`${LINKAGE}measured: {«runs»: {}}\n`, 'error[missing-key]', 'has no readings');
  });

  it('name a file of the same folder', () => {
    for (const name of ['../bench.csv', '/bench.csv', 'sub\\\\bench.csv', 'c:bench.csv', 'https://a.b/c.csv', '.csv', 'bench.xlsx']) {
      const { problems, definition } = solve(`${run(`file: "${name}"`)}\n`);
      expect(problems.map(({ code }) => code)).toEqual(['wrong-value']);
      expect(definition?.measured?.runs).toEqual([]);
      expect(definition?.measured?.unread.map(({ path }) => path)).toEqual(['measured.runs.a']);
    }
  });

  it('keep the rows that can be read, and note the others', () => {
    const measured = measuredOf(`${LINKAGE}measured:
  runs:
    a:
      columns: [pedal.travel, tps.signal]
      rows:
        - [0 %, 1 V]
        - [10 %, 0,8 V]
#         ^^^^^^^^^^^^^ error[bad-quantity]: decimal commas
        - [20 %, .nan]
#                ^^^^ error[bad-quantity]: not a quantity
        - [30 %, 1 mm]
#                  ^^ error[wrong-unit]: a voltage
        - [~, 1 V]
#          ^ error[wrong-shape]: must be known
        - [40 %]
#         ^^^^^^ error[wrong-shape]: 2 readings in each line, not 1
        - [50, 1 V]
#          ^^ error[out-of-range]: Write \`50 %\`
        - [60 %, 2 V]
`);
    const [{ readings } = { readings: undefined }] = measured.runs;
    expect(readings?.kind === 'rows' ? readings.rows.map(({ values }) => values[1]?.nominal) : []).toEqual([1, 2]);
    expect(measured.unread.map(({ path }) => path)).toEqual([1, 2, 3, 4, 5, 6].map((index) => `measured.runs.a.rows.${index}`));
  });

  it('of a force may be below 0, as a gauge reads near none, inline as in a CSV file; the curve of `tune` may not', () => {
    const columns = ['pedal.release', 'pedal.effort'];
    const measured = measuredOf(`${LINKAGE}measured:
  runs: {a: {columns: [pedal.travel, ${columns.join(', ')}], rows: [[0, -0.3 N, -0.1 N], [50 %, 4 N, 6 N]]}}
`);
    const [{ readings } = { readings: undefined }] = measured.runs;
    expect(readings?.kind === 'rows' ? readings.rows[0]?.values.map((value) => value?.nominal) : []).toEqual([0, -0.3, -0.1]);
    const csv = readCsv(
      `pedal.travel [%],${columns.map((name) => `${name} [N]`).join(',')}\n0,-0.3,-0.1\n`,
      {},
      solve(LINKAGE).definition!,
    );
    expect(csv.problems).toEqual([]);
    expect(csv.readings?.rows[0]?.values).toEqual([0, -0.3, -0.1]);
    const curve = (from: string): string =>
      `${LINKAGE}tune: {free: {reach: {from: 28 mm, to: 32 mm}}, curve: {of: pedal.effort, through: [[0 %, ${from}], [100 %, 4 N]]}}\n`;
    checkOneProblem(curve('«-1 N»'), 'error[out-of-range]', '0 or more');
  });

  it('have noise of their own columns, above 0', () => {
    const noise = (entry: string): string => `${run(`columns: [pedal.travel, tps.signal], rows: [[0, 1]], noise: {${entry}}`)}\n`;
    checkOneProblem(noise('«pedal.travel»: 1 %'), 'error[wrong-value]', 'counts as exact');
    checkOneProblem(noise('«shaft.opening»: 1 deg'), 'error[wrong-value]', 'no readings of');
    checkOneProblem(noise('tps.signal: «0 V»'), 'error[out-of-range]', 'The noise of `tps.signal` must be greater than 0, not 0 V');
    checkOneProblem(noise('tps.signal: «-4 mV»'), 'error[out-of-range]', 'The noise of `tps.signal` must be greater than 0, not -4 mV');
  });

  it('of a signal are no more than its supply gives, or somewhat more than the sensor does where none is given', () => {
    const rows = (read: string): string => `${run(`columns: [pedal.travel, tps.signal], rows: [[0, 1], [50 %, ${read}]]`)}\n`;
    const supplied = (read: string): string => rows(read).replace('4.5 V]', '4.5 V], supply: 5 V');
    checkProblems(rows('6.7 V'));
    checkOneProblem(rows('«6.8 V»'), 'error[out-of-range]', 'than its sensor gives, 4.5 V at most');
    checkProblems(supplied('5.2 V'));
    const words = '`tps.signal` cannot have read 9.9 V: that is more than the supply of its sensor gives, 5 V';
    checkOneProblem(supplied('«9.9 V»'), 'error[out-of-range]', words);
    expect(solve(supplied('9.9 V')).definition?.measured?.unread.map(({ path }) => path)).toEqual(['measured.runs']);
  });

  it('are cut at ten thousand lines', () => {
    const rows = Array.from({ length: 10_001 }, () => '[0,1]').join(',');
    const { problems, definition } = solve(`${run(`columns: [pedal.travel, tps.signal], rows: [${rows}]`)}\n`);
    expect(problems.map(({ code, message }) => [code, message.includes('10000')])).toEqual([['out-of-range', true]]);
    expect(definition?.measured?.runs).toEqual([]);
  });
});

it.each(['measured: 3', 'measured:', 'measured: {runs: 3}', 'measured: {runs: {a: {rows: 3}}}', 'measured: {fit: {}, runs: {a: }}'])(
  'does not stop the linkage from being solved: %s',
  (block) => {
    const answers = solve(`${LINKAGE}${block}\n`);
    expect(answers.problems.length).toBeGreaterThan(0);
    expect(answers.table([0, 1]).columns.map(({ values }) => values)).toEqual(
      solve(LINKAGE)
        .table([0, 1])
        .columns.map(({ values }) => values),
    );
  },
);
