/** What the view shows of a file: the linkage with its motion, the charts, and the report in words, all from the answers about the text. */
import type { Shown } from '../protocol/messages.ts';
import type { Answers } from '../solve.ts';
import { drawCharts } from './charts/charts.ts';
import { drawableOf } from './drawable.ts';
import { drawPicture } from './picture.ts';
import { reportOf } from './report.ts';

/**
 * Undefined where nothing can be drawn: no lever of the text has a place. A file that is not solved yet is drawn as it stands, without
 * charts. Nothing is solved again: the stations are those at which the answers were found. Never throws.
 */
export function showAnswers(answers: Answers): Shown | undefined {
  const drawable = drawableOf(answers);
  if (drawable === undefined) return undefined;
  return {
    picture: drawPicture(drawable),
    charts: answers.study === undefined ? [] : drawCharts(answers.study),
    report: reportOf(answers),
  };
}
