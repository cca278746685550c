/** What the view shows of figures that are tried: the picture of the edited text, with places of the text as it stands. */
import type { Replacement } from '../definition/problem.ts';
import { dialsOf } from '../picture/dials.ts';
import { showFirst, type ShownFirst } from '../picture/showAnswers.ts';
import type { ChartId } from '../protocol/charts.ts';
import type { Answers } from '../solve.ts';
import { spanIn } from './compose.ts';

/**
 * Dials say what is written, and turn between the ends that they had.
 * @param written answers about the text as it stands
 * @param edits what is tried
 * @param tried answers about the text with these edits
 * @param inSight the charts that go with the drawing
 */
export function shownTrial(
  written: Answers,
  edits: readonly Replacement[],
  tried: Answers,
  inSight: ReadonlySet<ChartId>,
): ShownFirst | undefined {
  const shown = showFirst(tried, inSight);
  if (shown === undefined) return undefined;
  const back = <T extends { readonly place: { readonly start: number; readonly end: number } }>(each: T): T => ({
    ...each,
    place: spanIn(edits, each.place),
  });
  const { report } = shown;
  return {
    ...shown,
    report: {
      ...report,
      parts: report.parts.map(back),
      marks: report.marks.map(back),
      requirements: report.requirements.map(back),
      dials: written.definition === undefined ? [] : dialsOf(written.text, written.definition),
    },
  };
}
