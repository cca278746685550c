/** Readings that cannot tell two dimensions apart: cases whose opening is known in closed form. */
import { describe, expect, test } from 'vitest';
import { withFailures } from '../../src/outputs/withFailures.ts';
import { solve } from '../../src/solve.ts';

/** A cable on a drum: the shaft opens by the pull over the radius, so that only their ratio shows. */
function drum({ fit = 'full, wheel', columns = 'shaft.opening', rows = '[50 %, 35.8 deg], [75 %, 53.6 deg], [100 %, 71.5 deg]' } = {}) {
  return `format: 1
let:
  full: 30 mm
  wheel: 24 mm
levers:
  shaft:
    pivot: [100, 0]
    drums: {groove: {radius: wheel, wraps: counterclockwise}}
pedal: {cable: main, pull: full}
cables:
  main: {enters: [40, 24], to: shaft.groove}
measured:
  fit: [${fit}]
  runs:
    bench:
      columns: [pedal.travel, ${columns}]
      rows: [${rows}]
`;
}

const told = (text: string) =>
  withFailures(solve(text))
    .findings.filter(({ code }) => code === 'not-told-apart')
    .map(({ severity, span, related, message }) => ({
      severity,
      at: text.slice(span.start, span.end),
      related: related?.map((each) => text.slice(each.span.start, each.span.end)),
      message,
    }));

const open = (text: string): readonly string[] =>
  withFailures(solve(text))
    .notChecked.filter(({ part }) => part === 'measured')
    .map(({ message }) => message);

describe('not-told-apart', () => {
  test('two dimensions of which only the ratio shows', () => {
    expect(told(drum())).toEqual([
      {
        severity: 'warning',
        at: 'full',
        related: ['wheel'],
        message: 'These readings cannot tell full from wheel: they would be the same with both changed together',
      },
    ]);
  });

  test('one of them alone is told', () => {
    expect(told(drum({ fit: 'wheel' }))).toEqual([]);
  });

  test('readings of the cable itself tell the pull, and so both', () => {
    const rows = '[50 %, 35.8 deg, 15 mm], [75 %, 53.6 deg, 22.5 mm], [100 %, 71.5 deg, 30 mm]';
    const text = drum({ columns: 'shaft.opening, main.pull', rows });
    expect(solve(text).problems).toEqual([]);
    expect(told(text)).toEqual([]);
    // Read so roughly, it holds the ratio to the pull by far less than the opening tells the ratio.
    const rough = `${text}      noise: {main.pull: 4 mm}\n`;
    expect(solve(rough).problems).toEqual([]);
    expect(told(rough)).toMatchObject([{ severity: 'note', at: 'full', related: ['wheel'] }]);
    expect(told(rough)[0]!.message).toMatch(/^These readings hardly tell full from wheel: their difference /);
  });

  test('nothing is said of rows in a file beside, which may tell more, nor of a block that is not understood', () => {
    const text = drum();
    const beside = `${text}    road: {file: road.csv}\n`;
    expect(solve(beside).problems).toEqual([]);
    expect(told(beside)).toEqual([]);
    expect(open(beside)).toEqual([
      'Not checked: whether the built car is as the file has it, and what its readings can tell, since some stand in road.csv; `pedal-to-plate fit` tells',
    ]);
    expect(open(text)).toEqual(['Not checked: whether the built car is as the file has it; `pedal-to-plate fit` tells']);
    expect(open(text.replace(/measured:[^]*/, ''))).toEqual([]);
    expect(told(text.replace('71.5 deg', '71.5 furlongs'))).toEqual([]);
  });

  test('is told late, not at every key press', () => {
    const answers = solve(drum());
    expect(answers.findings.map(({ code }) => code)).not.toContain('not-told-apart');
    expect(answers.failures()!.late.map(({ code }) => code)).toContain('not-told-apart');
  });
});
