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
  UncheckedMark,
} from '../studies/compare/comparison.ts';
import type { ChangeRow } from './compareFile.ts';
import { headlines, type Headline } from './compareHeadlines.ts';
import { countText, figureText } from './figure.ts';
import { notCheckedText } from './marks.ts';
import { withMinus } from './minus.ts';
import type { Style } from './paint.ts';
import { comparisonText, OUTCOMES } from './requirementText.ts';

/** Empty where nothing that was found or is required stands otherwise. */
export function effectRows(comparison: Comparison): readonly ChangeRow[] {
  const { findings, problems, notChecked, requirements, outcomes, verdict } = comparison;
  const rows = [
    ...verdict.unjudged.map(({ part, message }) => ranked(RANK.unjudged, 'worse', 'error', part, `can no longer be judged: ${message}`)),
    ...headlines(outcomes, verdict).map(headlineRow),
    ...solutionRows(comparison),
    ...markRows(problems),
    ...markRows(findings, new Set(verdict.unjudged.map(({ message }) => message))),
    ...requirements.map(requirementRow),
    ...notChecked.added.map(({ part, message }) => ranked(RANK.unchecked, 'not checked', undefined, part, notCheckedText(message))),
    ...notChecked.gone.map(uncheckedGoneRow),
  ];
  return rows.sort((a, b) => a.rank - b.rank).map(({ row }) => ({ ...row, text: withMinus(row.text) }));
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
    ...(verdict.unjudged.length > 0 ? [`${partsText(verdict.unjudged)} can no longer be judged`] : []),
    ...(verdict.closesLess.length > 0 ? [`the least closing torque of ${partsText(verdict.closesLess)} fell by more than half`] : []),
  ];
  if (worse.length > 0) return `worse: ${worse.join(', ')}`;
  if (isSame(comparison)) return 'no difference';
  const less = headlines(comparison.outcomes, verdict).some(({ kind, isFall }) => kind === 'closing' && isFall);
  return `not worse: no new error, and no requirement that was passed and is not now${less ? '; but closing torque fell' : ''}`;
}

/** The parts that are told of, each once. */
function partsText(told: readonly { readonly part: string }[]): string {
  return [...new Set(told.map(({ part }) => part))].join(', ');
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

const RANK = {
  unjudged: -2,
  closing: -1,
  unsolved: 0,
  error: 1,
  lost: 2,
  failing: 3,
  figure: 3.5,
  warning: 4,
  still: 5,
  unchecked: 6,
  other: 7,
  note: 8,
  better: 9,
} as const;

function ranked(rank: number, status: string, style: Style | undefined, subject: string, text: string): Ranked {
  return { rank, row: { status, style, subject, text } };
}

function solutionRows({ was, is }: Comparison): readonly Ranked[] {
  if (was === 'solved' && is === 'unsolved') return [ranked(RANK.unsolved, 'unsolved', 'error', 'linkage', 'was solved and is not now')];
  return was === 'unsolved' && is === 'solved' ? [ranked(RANK.better, 'solved', 'quiet', 'linkage', 'was not solved and is now')] : [];
}

type Mark = FindingMark | ProblemMark;

/** @param told what has been told already of those that are gone */
function markRows<M extends Mark>({ added, gone, kept }: MarkChanges<M>, told: ReadonlySet<string> = new Set()): readonly Ranked[] {
  return [
    ...added.map((mark) => ranked(rankOf(mark.severity), `new ${mark.severity}`, mark.severity, subjectOf(mark), markText(mark))),
    ...kept.map((pair) => keptRow(pair.was, pair.is)),
    ...gone.filter((mark) => !told.has(`was ${markText(mark)}`)).map(goneRow),
  ];
}

/** What is mended, as against what is not there any more to be looked at; a fault of the second kind is told among the first lines. */
function goneRow(mark: Mark): Ranked {
  const row = (rank: number, status: string, text: string): Ranked => ranked(rank, status, 'quiet', subjectOf(mark), text);
  const elsewhere = 'elsewhere' in mark ? mark.elsewhere : 'judged';
  if (elsewhere === 'not-judged') return row(RANK.other, 'not judged', `no longer looked at: was ${mark.severity} ${markText(mark)}`);
  return row(RANK.better, `${mark.severity} gone`, `${elsewhere === 'no-part' ? 'with its part: ' : ''}was ${markText(mark)}`);
}

function uncheckedGoneRow({ part, message, elsewhere }: UncheckedMark): Ranked {
  const text = `was not checked: ${notCheckedText(message)}`;
  switch (elsewhere) {
    case 'checked':
      return ranked(RANK.better, 'settled', 'quiet', part, text);
    case 'checked-in-part':
      return ranked(RANK.better, 'settled in part', 'quiet', part, text);
    default:
      return ranked(RANK.other, 'no longer looked at', undefined, part, text);
  }
}

function headlineRow({ kind, part, isFall, isWorse, text }: Headline): Ranked {
  const rank = kind === 'closing' ? RANK.closing : RANK.figure;
  return ranked(rank, isWorse ? 'worse' : isFall ? 'fell' : 'rose', isWorse ? 'error' : undefined, part, text);
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
