/** What the view tells of figures that are tried: the report about the edited text, with places of the text as it stands. */
import type { Replacement } from '../definition/problem.ts';
import type { Report } from '../protocol/report.ts';
import { spanIn } from './compose.ts';

/** @param edits what is tried @param tried the report about the text with these edits */
export function trialReport(edits: readonly Replacement[], tried: Report): Report {
  const back = <T extends { readonly place: { readonly start: number; readonly end: number } }>(each: T): T => ({
    ...each,
    place: spanIn(edits, each.place),
  });
  return {
    ...tried,
    parts: tried.parts.map(back),
    marks: tried.marks.map(back),
    requirements: tried.requirements.map(back),
  };
}
