/** The values of one figure at which a demand is just met, for the view: each to be chosen, with what it gives and what else it does. */
import type { Study } from '../../findings/study.ts';
import { CAUTION } from '../../outputs/caution.ts';
import { answerText } from '../../outputs/requirementText.ts';
import {
  boundsWords,
  effectsText,
  gives,
  holdingWords,
  nearestWords,
  searchWords,
  shown,
  verdictWords,
} from '../../outputs/solvedFigureText.ts';
import type { StudyAnswer, StudyFound } from '../../protocol/studies.ts';
import type { FigureSolved } from '../../solveFigure.ts';
import { diffOf, line, lines, standingOf } from './blocks.ts';

/** @param text that was studied @param study of it */
export function solvePage(text: string, study: Study, solved: FigureSolved): StudyFound {
  const { change, demand, now, choices } = solved;
  return {
    kind: 'solve',
    verdict: verdictWords(solved),
    // A value at which one part of a demand is just met need not meet the rest of it.
    standing: standingOf(choices.some(({ answer }) => answer.outcome === 'passed')),
    blocks: [
      ...lines('', [
        line(`Changed is ${change.name}, now ${shown(solved, change.present)}, within ${boundsWords(solved)}`),
        line(`For ${demand.name === undefined ? '' : `${demand.name}: `}${demand.text}`),
        line(`As the file stands: ${answerText(now)}`),
      ]),
      ...choices.map((choice): StudyAnswer => {
        const writes = [{ path: change.path, value: choice.value }];
        return {
          kind: 'answer',
          title: `${change.name}: ${shown(solved, choice.value)}`,
          standing: choice.answer.outcome,
          lines: [
            ...gives(solved, choice).map((words) => line(words, choice.answer.outcome)),
            line(`besides: ${effectsText(choice.effects, demand.name)}`),
          ],
          diff: diffOf(text, study, writes),
          writes,
        };
      }),
      ...(choices.length > 0
        ? []
        : lines(
            'No value',
            nearestWords(solved).map((words) => line(words, 'note')),
          )),
      ...lines('Where it holds', [line(holdingWords(solved))]),
      ...lines(
        'How it was looked for',
        searchWords(solved).map((words) => line(words)),
      ),
    ],
    spread: undefined,
    caution: CAUTION,
  };
}
