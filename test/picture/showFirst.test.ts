/** What goes first and what follows are together what is shown at once, and nothing is in both. */
import { describe, expect, test } from 'vitest';
import { showAnswers, showFirst, showRest, type Piece } from '../../src/picture/showAnswers.ts';
import { CHART_IDS, type ChartId } from '../../src/protocol/charts.ts';
import { solve } from '../../src/solve.ts';
import { FILES } from './shown.ts';

const seen = (...ids: readonly ChartId[]): ReadonlySet<ChartId> => new Set(ids);
const whole = (pieces: Iterable<Piece>) => [...pieces].filter((piece) => piece !== undefined);

describe('what is shown in parts', () => {
  test.each(FILES)('of $name is what is shown at once, whatever is in sight', ({ text }) => {
    for (const inSight of [seen(), seen('torques', 'angles'), seen(...CHART_IDS)]) {
      // Solved by itself each time, so that neither knows what the other has worked out.
      const all = showAnswers(solve(text))!;
      const answers = solve(text);
      const { coming, ...first } = showFirst(answers, inSight)!;
      expect(first.charts.map(({ id }) => id)).toEqual(all.charts.map(({ id }) => id).filter((id) => inSight.has(id)));
      expect(first.report.facts).toEqual([]);
      const pieces = whole(showRest(answers, coming, () => inSight));
      expect(pieces.map((piece) => (piece.kind === 'facts' ? 'facts' : piece.id)).sort()).toEqual([...coming].sort());
      const charts = [
        ...first.charts,
        ...pieces.flatMap((piece) => (piece.kind === 'chart' && piece.chart !== undefined ? [piece.chart] : [])),
      ];
      const facts = pieces.flatMap((piece) => (piece.kind === 'facts' ? piece.facts : []));
      const inOrder = charts.toSorted((one, other) => CHART_IDS.indexOf(one.id) - CHART_IDS.indexOf(other.id));
      expect({ ...first, charts: inOrder, report: { ...first.report, facts } }).toEqual(all);
    }
  });

  test('has first what comes into sight while the rest is worked out', () => {
    const answers = solve(FILES.find(({ name }) => name.startsWith('two-banks'))!.text);
    const { coming } = showFirst(answers, seen('progression'))!;
    let inSight = seen();
    const rest = showRest(answers, coming, () => inSight);
    const names: (string | undefined)[] = [];
    for (const piece of rest) {
      if (piece !== undefined) names.push(piece.kind === 'facts' ? 'facts' : piece.id);
      inSight = seen('effort');
    }
    expect(names).toEqual(['ratio', 'effort', 'angles', 'signal', 'torques', 'margins', 'facts']);
  });

  test('of a file that is not solved has nothing to follow', () => {
    const answers = solve('format: 1\nlevers:\n  a:\n    pivot: [0, 0]\n    arms: {out: {at: [10, 0]}}\n');
    const { coming, ...first } = showFirst(answers, seen('angles'))!;
    expect(coming).toEqual([]);
    expect(first).toEqual(showAnswers(answers));
  });

  test('of a file of which nothing can be drawn is nothing', () => {
    expect(showFirst(solve('format: 1\n'), seen())).toBeUndefined();
  });
});
