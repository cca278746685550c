/** What was found, as SARIF results: problems of the text, findings about the linkage, requirements that are not passed. */
import type { Replacement, Problem } from '../../definition/problem.ts';
import type { Finding } from '../../findings/finding.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import type { Answers } from '../../solve.ts';
import { jsonCompared, jsonFigure, jsonMend, jsonRange, jsonTravel } from '../json/figures.ts';
import { marksOf, type Mark } from '../marks.ts';
import { answerText } from '../requirementText.ts';
import type { SarifTarget } from './artifacts.ts';
import type { SarifFix, SarifLocation, SarifResult } from './log.ts';
import { sarifMessage } from './message.ts';
import type { RuleBook, RuleId } from './rules.ts';

/** Of one file, what is worst first. */
export function resultsOf(answers: Answers, target: SarifTarget, book: RuleBook): SarifResult[] {
  const open = answers.requirements.filter(({ outcome }) => outcome !== 'passed');
  return [
    ...marksOf(answers).map((mark) => markResult(mark, answers, target, book)),
    ...open.map((answer) => requirementResult(answer, target, book)),
  ];
}

function markResult(mark: Mark, answers: Answers, target: SarifTarget, book: RuleBook): SarifResult {
  const isFinding = 'part' in mark;
  const related = (mark.related ?? []).map(({ span, message }, index): SarifLocation => ({
    id: index,
    ...target.location(span),
    message: sarifMessage(message),
  }));
  return {
    ...ruled(mark.code, book),
    level: mark.severity,
    message: sarifMessage(mark.message, mark.cure),
    locations: [target.location(mark.span, isFinding ? mark.part : undefined)],
    ...(related.length > 0 && { relatedLocations: related }),
    ...(isFinding ? { properties: findingProperties(mark, answers) } : fixesOf(mark, target)),
  };
}

/** As in the JSON of a check; what there is none of is left out, as property bags are wont to. */
function findingProperties({ part, ranges, worst, limit, mend }: Finding, answers: Answers): Readonly<Record<string, unknown>> {
  return {
    part,
    ...(ranges && { pedalRanges: ranges.map(jsonRange) }),
    ...(worst && { worst: { ...jsonFigure(worst), travel: jsonTravel(worst.travel) } }),
    ...(limit && { limit: { ...jsonFigure(limit), from: limit.from } }),
    ...(mend && { mend: jsonMend(mend, answers) }),
  };
}

function fixesOf({ cure, replacements }: Problem, target: SarifTarget): { readonly fixes?: readonly SarifFix[] } {
  if (replacements === undefined || replacements.length === 0) return {};
  const change = ({ span, text }: Replacement): SarifFix['artifactChanges'][number]['replacements'][number] => ({
    deletedRegion: target.region(span),
    ...(text !== '' && { insertedContent: { text } }),
  });
  return {
    fixes: [
      {
        description: sarifMessage(cure ?? 'Write it as it is meant'),
        artifactChanges: [{ artifactLocation: target.artifact, replacements: replacements.map(change) }],
      },
    ],
  };
}

/**
 * A requirement that cannot be decided would be of the kind `open` by its name (3.27.9), which takes its level away (3.27.10) and with it
 * the eyes of most who read the log. It counts as not passed here and ends the program with 1, so it is an error like one that fails.
 */
function requirementResult(answer: RequirementAnswer, target: SarifTarget, book: RuleBook): SarifResult {
  const { requirement, outcome, comparisons } = answer;
  const failed = outcome === 'failed';
  const told = answerText(answer);
  return {
    ...ruled(failed ? 'requirement-failed' : 'requirement-undecided', book),
    level: 'error',
    message: sarifMessage(`Requirement \`${requirement.name}\` ${failed ? 'fails' : 'cannot be decided'}${told === '' ? '' : `: ${told}`}`),
    locations: [target.location(requirement.expressionSpan)],
    properties: {
      requirement: requirement.name,
      outcome,
      comparisons: comparisons.map(({ text, operator, actual, demanded, margin, travel }) => ({
        text,
        operator,
        ...(actual && { actual: jsonCompared(actual) }),
        ...(demanded && { demanded: jsonCompared(demanded) }),
        ...(margin && { margin: jsonCompared(margin) }),
        ...(travel !== undefined && { travel: jsonTravel(travel) }),
      })),
    },
  };
}

function ruled(id: RuleId, book: RuleBook): { readonly ruleId: RuleId; readonly ruleIndex: number } {
  return { ruleId: id, ruleIndex: book.indexOf(id) };
}
