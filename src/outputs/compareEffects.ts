/** What changes in a throttle file have done to what is found and required, in words, worst first. */
import type { FindingSeverity } from '../findings/finding.ts';
import { isSame } from '../studies/compare.ts';
import type {
  Comparison,
  FindingMark,
  MarkChanges,
  ProblemMark,
  RequirementChange,
  RequirementSide,
} from '../studies/compare/comparison.ts';
import type { ChangeRow } from './compareFile.ts';
import { countText, figureText } from './figure.ts';
import { notCheckedText } from './marks.ts';
import type { Style } from './paint.ts';
import { comparisonText, OUTCOMES } from './requirementText.ts';

/** Empty where nothing that was found or is required stands otherwise. */
export function effectRows(comparison: Comparison): readonly ChangeRow[] {
  const { findings, problems, notChecked, requirements } = comparison;
  const rows = [
    ...solutionRows(comparison),
    ...markRows(problems),
    ...markRows(findings),
    ...requirements.map(requirementRow),
    ...notChecked.added.map(({ part, message }) => ranked(RANK.unchecked, 'not checked', undefined, part, notCheckedText(message))),
    ...notChecked.gone.map(({ part, message }) =>
      ranked(RANK.better, 'settled', 'quiet', part, `was not checked: ${notCheckedText(message)}`),
    ),
  ];
  return rows.sort((a, b) => a.rank - b.rank).map(({ row }) => row);
}

/** How the second file stands to the first, in one sentence without its full stop. */
export function compareVerdict(comparison: Comparison): string {
  const { was, is, verdict } = comparison;
  if (was === 'unusable' || is === 'unusable') {
    return `not compared: ${was === is ? 'neither file' : was === 'unusable' ? 'the old file' : 'the new file'} can${was === is ? '' : 'not'} be used`;
  }
  const worse = [
    ...(verdict.lostSolution ? ['it was solved and is not now'] : []),
    ...(verdict.newErrors > 0 ? [countText(verdict.newErrors, 'new error')] : []),
    ...(verdict.lostRequirements > 0
      ? [
          `${countText(verdict.lostRequirements, 'requirement')} that ${verdict.lostRequirements === 1 ? 'was' : 'were'} passed and ${verdict.lostRequirements === 1 ? 'is' : 'are'} not now`,
        ]
      : []),
  ];
  if (worse.length > 0) return `worse: ${worse.join(', ')}`;
  if (isSame(comparison)) return 'no difference';
  return 'not worse: no new error, and no requirement that was passed and is not now';
}

/** What could not be compared, and why; empty where all was. */
export function compareLimits({ was, is }: Pick<Comparison, 'was' | 'is'>): readonly string[] {
  if (was === 'unusable' || is === 'unusable')
    return ['Nothing of the text can be understood on one side, so that only its problems are told'];
  if (was === 'solved' && is === 'solved') return [];
  const which = was === is ? 'Neither file is' : was === 'solved' ? 'The new file is not' : 'The old file is not';
  return [`${which} solved: the texts are compared, and what the changes do to the linkage cannot be told`];
}

interface Ranked {
  readonly rank: number;
  readonly row: ChangeRow;
}

const RANK = { unsolved: 0, error: 1, lost: 2, failing: 3, warning: 4, still: 5, unchecked: 6, other: 7, note: 8, better: 9 } as const;

function ranked(rank: number, status: string, style: Style | undefined, subject: string, text: string): Ranked {
  return { rank, row: { status, style, subject, text } };
}

function solutionRows({ was, is }: Comparison): readonly Ranked[] {
  if (was === 'solved' && is === 'unsolved') return [ranked(RANK.unsolved, 'unsolved', 'error', 'linkage', 'was solved and is not now')];
  return was === 'unsolved' && is === 'solved' ? [ranked(RANK.better, 'solved', 'quiet', 'linkage', 'was not solved and is now')] : [];
}

type Mark = FindingMark | ProblemMark;

function markRows<M extends Mark>({ added, gone, kept }: MarkChanges<M>): readonly Ranked[] {
  return [
    ...added.map((mark) => ranked(rankOf(mark.severity), `new ${mark.severity}`, mark.severity, subjectOf(mark), markText(mark))),
    ...kept.map((pair) => keptRow(pair.was, pair.is)),
    ...gone.map((mark) => ranked(RANK.better, `${mark.severity} gone`, 'quiet', subjectOf(mark), `was ${markText(mark)}`)),
  ];
}

function keptRow(was: Mark, is: Mark): Ranked {
  const [before, after] = [SEVERITY.indexOf(was.severity), SEVERITY.indexOf(is.severity)];
  const text = `${markText(is)}${worstText(was, is)}`;
  if (before === after) return ranked(RANK.still + after / SEVERITY.length, `still ${is.severity}`, is.severity, subjectOf(is), text);
  return ranked(
    after < before ? rankOf(is.severity) : RANK.better,
    `now ${is.severity}`,
    is.severity,
    subjectOf(is),
    `was ${was.severity}: ${text}`,
  );
}

const SEVERITY: readonly FindingSeverity[] = ['error', 'warning', 'note'];

function rankOf(severity: FindingSeverity): number {
  return severity === 'error' ? RANK.error : severity === 'warning' ? RANK.warning : RANK.note;
}

function subjectOf(mark: Mark): string {
  if ('part' in mark) return mark.part;
  return mark.path === '' ? 'file' : mark.path;
}

function markText({ code, message }: Mark): string {
  return `[${code}] ${message}`;
}

function worstText(was: Mark, is: Mark): string {
  const pair = (word: 'worst' | 'limit'): string => {
    const [before, after] = [figureOf(was, word), figureOf(is, word)];
    return before === undefined || after === undefined || before === after ? '' : `; ${word} ${before} → ${after}`;
  };
  return pair('worst') + pair('limit');
}

function figureOf(mark: Mark, word: 'worst' | 'limit'): string | undefined {
  const figure = 'part' in mark ? mark[word] : undefined;
  return figure && figureText(figure, 1);
}

function requirementRow({ name, was, is }: RequirementChange): Ranked {
  if (is === undefined) return ranked(RANK.other, 'not required', undefined, name, `was ${was === undefined ? '' : outcomeText(was)}`);
  const { word, style } = OUTCOMES[is.outcome];
  const passes = is.outcome === 'passed';
  if (was === undefined) return ranked(passes ? RANK.other : RANK.failing, `new, ${word}`, style, name, detailText(is));
  if (was.outcome === is.outcome)
    return ranked(passes ? RANK.other : RANK.still, `still ${word}`, style, name, `${detailText(was)} → ${detailText(is)}`);
  const rank = passes ? RANK.better : was.outcome === 'passed' ? RANK.lost : RANK.still;
  return ranked(rank, `now ${word}`, style, name, `was ${outcomeText(was)}; is ${detailText(is)}`);
}

function outcomeText(side: RequirementSide): string {
  return `${OUTCOMES[side.outcome].word}: ${detailText(side)}`;
}

function detailText({ reason, comparisons }: RequirementSide): string {
  const items = comparisons.length === 0 ? [reason ?? ''] : comparisons.map(comparisonText);
  return [...new Set(items)].join(', ');
}
