/** What tolerances do, for the view: of each outcome its range, what it comes from, ranked; rods that would win it back; what was not checked. */
import { CAUTION } from '../../outputs/caution.ts';
import { percentText } from '../../outputs/figure.ts';
import {
  byShare,
  effectWords,
  figureIn,
  figureName,
  freeAloneWords,
  isStillAtMiddle,
  isToldAside,
  isWorthwhile,
  notCheckedWords,
  settingWords,
  stillWords,
  varies,
} from '../../outputs/toleranceText.ts';
import {
  isKeptByAll,
  isOfFreeAlone,
  keptWords,
  requiredWords,
  ruleWords,
  verdictWords,
  yieldWords,
} from '../../outputs/toleranceVerdict.ts';
import type { Standing, StudyBlock, StudyFound, StudyLine, StudyRow, StudySpread, StudyTable } from '../../protocol/studies.ts';
import type { Answers } from '../../solve.ts';
import type { OutcomeTolerance, ToleranceStudy } from '../../studies/tolerance/tolerance.ts';
import { placeIn } from '../place.ts';
import { line, lines, standingOf } from './blocks.ts';

/** @param answers of the text that was studied */
export function tolerancePage(answers: Answers, study: ToleranceStudy, spread: StudySpread | undefined): StudyFound {
  const chosen = study.settings.filter(isWorthwhile).slice(0, MOST_SETTINGS);
  return {
    kind: 'tolerance',
    verdict: verdictWords(study),
    standing: standingIn(answers, study),
    blocks: [
      ...lines('Rules of the check', rulesOf(answers, study)),
      ...lines(
        'Requirements',
        byShare(study.required).map((each) => line(requiredWords(each), standingOf(each.kept.share === 1))),
      ),
      ...(isOfFreeAlone(study)
        ? study.outcomes.flatMap((each) =>
            lines(
              each.outcome.name,
              freeAloneWords(each).map((words) => line(words)),
            ),
          )
        : [rangesOf(study), ...study.outcomes.filter((each) => !isToldAside(each)).flatMap((each) => causesOf(answers, each))]),
      ...lines(
        'Rods set after assembly',
        chosen.map((each) => line(settingWords(each))),
      ),
      ...lines(
        'Not checked',
        notCheckedWords(study).map((words) => line(words, 'undecided')),
      ),
    ],
    spread,
    caution: CAUTION,
  };
}

/** What an error in the text leaves out of the linkage was not looked at. */
function standingIn({ problems }: Answers, study: ToleranceStudy): Standing {
  if (isOfFreeAlone(study)) return 'undecided';
  if (!isKeptByAll(study)) return 'failed';
  return problems.some(({ severity }) => severity === 'error') ? 'undecided' : 'passed';
}

/** What not every build keeps, each at the place that the check would mark in the file, then the others in one line. */
function rulesOf({ text }: Answers, { rules }: ToleranceStudy): readonly StudyLine[] {
  const kept = keptWords(rules);
  return [
    ...rules
      .filter(({ failed }) => failed > 0)
      .map((rule) => line(ruleWords(rule), standingOf(false), rule.worst && placeIn(text, rule.worst.span))),
    ...(kept === undefined ? [] : [line(kept, standingOf(true))]),
  ];
}

const MOST_SETTINGS = 5;
/** Causes told of one outcome. */
const MOST_CAUSES = 8;
/** A fraction; what has a smaller share is left out. */
const LEAST_SHARE = 0.001;

/** All outcomes, one beside the other. */
function rangesOf({ outcomes, options }: ToleranceStudy): StudyTable {
  return {
    kind: 'table',
    title: 'What varies, and how far',
    hint: `Worst case: everything against it at once. RSS: the root of the sum of squares. Builds: between these lie 99.73 % of ${options.builds} built at random.`,
    columns: ['Outcome', 'Middle', 'Worst case', 'RSS', 'Builds', 'Kept by'],
    rows: [...outcomes.filter(isLost), ...outcomes.filter((each) => !isLost(each))].map(rangeRow),
  };
}

/** Whether some build does not keep its limit: told before the others. */
function isLost({ distribution: { kept } }: OutcomeTolerance): boolean {
  return kept !== undefined && kept.share !== 1;
}

function rangeRow(each: OutcomeTolerance): StudyRow {
  const { outcome, middle, stack, corners, distribution } = each;
  const figure = figureIn(each);
  const { percentiles, kept, missing } = distribution;
  const range = (low: number, high: number): string => `${figure(low)} to ${figure(high)}`;
  const isVarying = varies(each);
  const without = missing > 0 ? `; ${missing} have none` : '';
  return {
    name: outcome.name,
    place: undefined,
    cells: [
      figure(middle),
      isVarying
        ? corners !== undefined && corners.least <= corners.most
          ? range(corners.least, corners.most)
          : range(middle + stack.lowest, middle + stack.highest)
        : stillWords(each),
      !isVarying ? '–' : stack.kinked || isStillAtMiddle(each) ? 'means little here' : `± ${figure(stack.rootSumSquare)}`,
      (isVarying ? range(percentiles[0]!, percentiles.at(-1)!) : '–') + without,
      kept === undefined ? 'not checked' : percentText(kept.share, 2),
    ],
    share: undefined,
  };
}

/** Which dimensions an outcome's spread comes from, the greatest first. */
function causesOf({ text }: Answers, each: OutcomeTolerance): readonly StudyBlock[] {
  const { outcome, effects, advice, distribution, stack } = each;
  const told = advice.filter(({ share }) => share >= LEAST_SHARE).slice(0, MOST_CAUSES);
  if (told.length === 0) return [];
  const figure = figureIn(each);
  const notes: readonly StudyLine[] = [
    ...(distribution.kept === undefined
      ? []
      : [
          line(
            `Kept${outcome.limit === undefined ? '' : ` (${outcome.limit})`} by ${yieldWords(distribution.kept)}`,
            standingOf(distribution.kept.share === 1),
          ),
        ]),
    ...(stack.kinked ? [line('A stop or a cable is just met: shares are those of one side and tell little', 'warning')] : []),
  ];
  return [
    {
      kind: 'table',
      title: `What moves ${outcome.name.startsWith('opening') || outcome.name.startsWith('signal') ? 'the ' : ''}${outcome.name}`,
      hint: '',
      columns: ['Dimension', 'Its tolerance does', 'Of the spread', 'Half of it wins'],
      rows: told.map(({ of, share, wonByHalf }): StudyRow => {
        const effect = effects.find((each) => each.of === of)!;
        return {
          name: figureName(of).replace(/^let\./, ''),
          place: placeIn(text, of.span),
          cells: [effectWords(effect, figure).replace(`${figureName(of)} `, ''), percentText(share), percentText(wonByHalf)],
          share: Math.min(1, Math.max(0, share)),
        };
      }),
    },
    ...lines('', notes),
  ];
}
