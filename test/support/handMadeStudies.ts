/** Studies for tests of the page, made by hand: every kind of block and every stage is there. */
import type { ChartCurve } from '../../src/protocol/charts.ts';
import type { StudyFound, StudyKind, StudyStage, ToldStudy } from '../../src/protocol/studies.ts';
import type { ToView } from '../../src/protocol/messages.ts';
import { handMadeShow } from './handMadeShown.ts';

const CAUTION = 'A throttle that does not close kills. Check the finished linkage by hand.';

const curve = (label: string, values: readonly number[]): ChartCurve => ({
  column: `shaft.opening ${label}`,
  label,
  part: 'shaft',
  values: Float64Array.from(values),
  digits: 1,
});

export function handMadeTune(): StudyFound {
  return {
    kind: 'tune',
    verdict: 'one answer keeps everything and lies on the curve within 0.1°',
    standing: 'passed',
    blocks: [
      { kind: 'lines', title: '', lines: [{ text: 'as the file stands it is up to 4° off', sign: undefined, place: undefined }] },
      {
        kind: 'answer',
        title: 'Answer 1',
        standing: 'passed',
        lines: [{ text: 'keeps transmission, drive', sign: 'passed', place: undefined }],
        diff: [
          { line: 8, was: 'crank_reach: 38 mm ± 0.1 mm', is: 'crank_reach: 40 mm ± 0.1 mm' },
          { line: 9, was: 'shaft_reach: 32 mm', is: 'shaft_reach: 32.8 mm' },
        ],
        writes: [{ path: 'let.crank_reach', value: 0.04 }],
      },
      {
        kind: 'answer',
        title: 'Answer 2',
        standing: 'failed',
        lines: [
          { text: 'gives up drive: 34° where 40° are wanted', sign: 'failed', place: undefined },
          { text: 'closing torque was not checked', sign: 'undecided', place: undefined },
        ],
        diff: [{ line: 8, was: 'crank_reach: 38 mm ± 0.1 mm', is: 'crank_reach: 43.5 mm ± 0.1 mm' }],
        writes: [{ path: 'let.crank_reach', value: 0.0435 }],
      },
      {
        kind: 'charts',
        stations: Float64Array.from([0, 0.5, 1]),
        charts: [
          {
            id: 'tune-curve',
            title: 'shaft.opening, wanted and found',
            unit: 'deg',
            curves: [curve('wanted', [0, 38, 82]), curve('as written', [0, 42, 82]), curve('answer 1', [0, 38.05, 82])],
            bands: [],
            straight: false,
          },
        ],
      },
    ],
    spread: undefined,
    caution: CAUTION,
  };
}

export function handMadeTolerance(): StudyFound {
  return {
    kind: 'tolerance',
    verdict: '10000 builds from 2 toleranced dimensions; everything checked is kept by 97.3 % of the builds',
    standing: 'failed',
    blocks: [
      {
        kind: 'table',
        title: 'What varies, and how far',
        hint: 'Worst case: everything against it at once.',
        columns: ['Outcome', 'Middle', 'Worst case', 'RSS', 'Builds', 'Kept by'],
        rows: [
          {
            name: 'opening of shaft at full pedal',
            place: undefined,
            cells: ['82°', '81.2° to 82.4°', '± 0.4°', '81.4° to 82.3°', '97.3 %'],
            share: undefined,
          },
          {
            name: 'signal of tps at rest',
            place: undefined,
            cells: ['0.936 V', 'does not vary', '–', '–', 'not checked'],
            share: undefined,
          },
        ],
      },
      {
        kind: 'table',
        title: 'What moves the opening of shaft at full pedal',
        hint: '',
        columns: ['Dimension', 'Its tolerance does', 'Of the spread', 'Half of it wins'],
        rows: [
          { name: 'crank_reach', place: { start: 3, end: 9 }, cells: ['± 0.3°', '60 %', '25.6 %'], share: 0.6 },
          { name: 'shaft_reach', place: { start: 12, end: 20 }, cells: ['± 0.2°', '40 %', '16.5 %'], share: 0.4 },
        ],
      },
      { kind: 'lines', title: 'Not checked', lines: [{ text: 'friction in the effort', sign: 'undecided', place: undefined }] },
    ],
    spread: handMadeSpread(),
    caution: CAUTION,
  };
}

/** About the first curve of the first chart, one unit to either side; without a figure at full travel. */
function handMadeSpread(): NonNullable<StudyFound['spread']> {
  const { charts, picture } = handMadeShow();
  const { column, values } = charts[0]!.curves[0]!;
  const around = (by: number) => values.map((value, i) => (i === values.length - 1 ? NaN : value + by));
  return {
    words: 'Shaded beside a curve: 5 % of 1000 random builds lie below, as many above.',
    stations: picture.stations,
    columns: [{ column, low: around(-1), high: around(1) }],
  };
}

export function handMadeSolve(): StudyFound {
  return {
    kind: 'solve',
    verdict: '2 values of crank_reach found',
    standing: 'passed',
    blocks: ['36.2 mm', '41.7 mm'].map((value) => ({
      kind: 'answer',
      title: `crank_reach: ${value}`,
      standing: 'passed',
      lines: [{ text: 'besides: no requirement, error or warning changes', sign: undefined, place: undefined }],
      diff: [{ line: 8, was: 'crank_reach: 38 mm', is: `crank_reach: ${value}` }],
      writes: [{ path: 'let.crank_reach', value: 0.04 }],
    })),
    spread: undefined,
    caution: CAUTION,
  };
}

/** The message that tells of a study, of the text that `handMadeShow` shows. */
export function tellStudy(kind: StudyKind, now: StudyStage, of: Partial<ToldStudy> = {}): ToView {
  return { type: 'study', kind, source: handMadeShow().source, now, isOutrun: false, show: false, ...of };
}

export const found = (study: StudyFound): StudyStage => ({ stage: 'found', found: study });
