/** What has been found out about a file, in words, as the view shows it beside the drawing. */
import type { Fact } from '../findings/finding.ts';
import { statusLine } from '../language/statusLine.ts';
import { factText, isTravel, withGuidance } from '../outputs/factText.ts';
import { figureText } from '../outputs/figure.ts';
import { notCheckedText } from '../outputs/marks.ts';
import { printable } from '../outputs/paint.ts';
import { answerText } from '../outputs/requirementText.ts';
import type { Report, ReportedFigure, ReportedRequirement } from '../protocol/report.ts';
import type { RequirementAnswer } from '../requirements/requirement.ts';
import type { Answers } from '../solve.ts';
import { keyFactsFirst, leastTransmission } from './keyFigures.ts';
import { reportMarks } from './marks.ts';
import { reportFigure, reportParts } from './parts.ts';
import { placeIn } from './place.ts';

/** @param withFacts whether the facts are in it, which take as long as all the rest */
export function reportOf(answers: Answers, withFacts = true): Report {
  const { text, definition, requirements, notChecked } = answers;
  const { severity, tooltip } = statusLine(answers);
  return {
    title: definition?.title === undefined ? undefined : printable(definition.title),
    verdict: tooltip.verdict,
    severity,
    caution: tooltip.caution,
    parts: reportParts(answers),
    marks: reportMarks(answers),
    requirements: requirements.map((answer) => reportRequirement(text, answer)),
    facts: withFacts ? reportFacts(answers) : [],
    notChecked: notChecked.map(({ part, message }) => printable(`${part}: ${notCheckedText(message)}`)),
  };
}

/** Those that are looked for first before the others: a view shows the first few until it is asked for more. */
export function reportFacts({ facts, parts }: Answers): readonly ReportedFigure[] {
  const { first, others } = keyFactsFirst(facts);
  const least = leastTransmission(parts);
  const angle = least === undefined ? [] : [{ ...reportFigure(least.angle), label: printable(`${least.part}: ${least.angle.label}`) }];
  return [...first.map(reportFact), ...angle, ...others.map(reportFact)];
}

function reportRequirement(text: string, answer: RequirementAnswer): ReportedRequirement {
  const { requirement, outcome, comparisons } = answer;
  const told = comparisons.filter(({ travel }) => travel !== undefined);
  return {
    name: printable(requirement.name),
    outcome,
    text: answerText(answer),
    place: placeIn(text, requirement.span),
    travel: (told.find(({ holds }) => holds !== true) ?? told[0])?.travel,
  };
}

/** The figure stands by itself: where it holds is `travel`, but where the travel is the figure. */
function reportFact(fact: Fact): ReportedFigure {
  const { part, label, figure, travel } = fact;
  const isAlone = figure !== undefined && travel !== undefined && !isTravel(fact);
  return {
    label: printable(label.includes(part) ? label : `${part}: ${label}`),
    text: printable(isAlone ? withGuidance(figureText(figure), fact) : factText(fact)),
    travel,
  };
}
