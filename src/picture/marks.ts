/** What is wrong or worth knowing, as the view lists it. */
import { isMendable } from '../language/offeredFixes.ts';
import { marksOf, type Mark } from '../outputs/marks.ts';
import { printable } from '../outputs/paint.ts';
import type { ReportedMark } from '../protocol/report.ts';
import type { Answers } from '../solve.ts';
import { placeIn } from './place.ts';

/** Mistakes in the text first, then findings; of each the worst first, then in the order of the file. */
export function reportMarks({ text, problems, findings }: Answers): readonly ReportedMark[] {
  return [...marksOf({ problems, findings: [] }).map((mark) => reportMark(text, mark)), ...reportFindings(text, findings)];
}

/** Findings alone, worst first. */
export function reportFindings(text: string, findings: Answers['findings']): readonly ReportedMark[] {
  return marksOf({ problems: [], findings }).map((mark) => reportMark(text, mark));
}

function reportMark(text: string, mark: Mark): ReportedMark {
  const { severity, code, message, cure, span } = mark;
  const finding = 'part' in mark ? mark : undefined;
  return {
    severity,
    code,
    part: finding?.part,
    message: printable(message),
    following: finding?.following?.map((each) => ({ part: each.part, message: printable(each.message) })) ?? [],
    cure: cure === undefined ? undefined : printable(cure),
    isMendable: finding === undefined ? 'replacements' in mark : isMendable(finding),
    place: placeIn(text, span),
    ranges: finding?.ranges?.map(({ from, to }) => ({ from: fraction(from), to: fraction(to) })) ?? [],
    worst: finding?.worst === undefined ? undefined : fraction(finding.worst.travel),
  };
}

const fraction = (travel: number): number => Math.min(1, Math.max(0, travel));
