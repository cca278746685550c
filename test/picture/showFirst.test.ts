/** What goes first and what follows are together what is shown at once, and nothing is in both. */
import { describe, expect, test } from 'vitest';
import { showAnswers, showFirst, showRest, type Piece } from '../../src/picture/showAnswers.ts';
import { CHART_IDS, type ChartId } from '../../src/protocol/charts.ts';
import { solve } from '../../src/solve.ts';
import { FILES } from './shown.ts';

type Whole = Exclude<Piece, undefined | { readonly kind: 'seen' }>;

const seen = (...ids: readonly ChartId[]): ReadonlySet<ChartId> => new Set(ids);
const isWhole = (piece: Piece): piece is Whole => piece !== undefined && piece.kind !== 'seen';
const nameOf = (piece: Exclude<Piece, undefined>) => (piece.kind === 'chart' ? piece.id : piece.kind);

describe('what is shown in parts', () => {
  test.each(FILES)('of $name is what is shown at once, whatever is in sight', ({ text }) => {
    for (const [inSight, withReport] of [
      [seen(), true],
      [seen('torques', 'angles'), false],
      [seen(...CHART_IDS), false],
    ] as const) {
      // Solved by itself each time, so that neither knows what the other has worked out.
      const all = showAnswers(solve(text))!;
      const answers = solve(text);
      const { coming, ...first } = showFirst(answers, withReport)!;
      expect(first.charts).toEqual([]);
      expect(first.report === undefined).toBe(coming.includes('report'));
      const pieces = [...showRest(answers, coming, () => inSight)].filter(isWhole);
      expect(pieces.map(nameOf).sort()).toEqual([...coming].sort());
      const charts = pieces.flatMap((piece) => (piece.kind === 'chart' && piece.chart !== undefined ? [piece.chart] : []));
      const facts = pieces.flatMap((piece) => (piece.kind === 'facts' ? piece.facts : []));
      const report = first.report ?? pieces.find((piece) => piece.kind === 'report')?.report;
      expect(report!.facts).toEqual(answers.study === undefined ? all.report.facts : []);
      const inOrder = charts.toSorted((one, other) => CHART_IDS.indexOf(one.id) - CHART_IDS.indexOf(other.id));
      expect({ ...first, charts: inOrder, report: { ...report, facts } }).toEqual(all);
    }
  });

  test('has what can be seen and the report before the rest, and says when that is all, once', () => {
    const answers = solve(FILES.find(({ name }) => name.startsWith('two-banks'))!.text);
    const { coming } = showFirst(answers, false)!;
    const names = [...showRest(answers, coming, () => seen('torques', 'ratio'))].flatMap((piece) =>
      piece === undefined ? [] : nameOf(piece),
    );
    expect(names).toEqual(['ratio', 'torques', 'report', 'seen', 'progression', 'angles', 'signal', 'margins', 'effort', 'facts']);
  });

  test('has first what comes into sight while the rest is worked out', () => {
    const answers = solve(FILES.find(({ name }) => name.startsWith('two-banks'))!.text);
    const { coming } = showFirst(answers, true)!;
    let inSight = seen();
    const rest = showRest(answers, coming, () => inSight);
    const names: (string | undefined)[] = [];
    for (const piece of rest) {
      if (isWhole(piece)) names.push(nameOf(piece));
      if (names.length > 0) inSight = seen('effort');
    }
    expect(names).toEqual(['progression', 'effort', 'ratio', 'angles', 'signal', 'torques', 'margins', 'facts']);
  });

  test('of a file that is not solved has nothing to follow', () => {
    const answers = solve('format: 1\nlevers:\n  a:\n    pivot: [0, 0]\n    arms: {out: {at: [10, 0]}}\n');
    const { coming, ...first } = showFirst(answers, false)!;
    expect(coming).toEqual([]);
    expect(first).toEqual(showAnswers(answers));
  });

  test('of a file of which nothing can be drawn is nothing', () => {
    expect(showFirst(solve('format: 1\n'), false)).toBeUndefined();
  });
});
