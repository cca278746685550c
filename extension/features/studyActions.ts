/** Solving for the figure, or the requirement, under the cursor, as what the editor offers for a place. */
import { CodeAction, CodeActionKind, l10n, languages } from 'vscode';
import type { Disposable } from 'vscode';
import { askableDemands, changeableFigures, standingAt } from '../../src/language/figureQuestions.ts';
import type { DocumentAnswers } from '../answers.ts';
import { SETTINGS, THROTTLE_FILES } from '../language.ts';
import { spanOf } from '../places.ts';
import type { StudyPlace } from '../view/studyPlace.ts';

export const SOLVE_KIND = CodeActionKind.Refactor.append('pedalToPlate.solve');

export function provideStudyActions({ solved }: DocumentAnswers): Disposable {
  return languages.registerCodeActionsProvider(
    THROTTLE_FILES,
    {
      async provideCodeActions(document, range, context, token) {
        if (context.only !== undefined && !context.only.contains(SOLVE_KIND) && !SOLVE_KIND.contains(context.only)) return [];
        const answers = await solved(document, token);
        if (answers?.study === undefined) return [];
        const { start } = spanOf(document, range);
        const figure = standingAt(changeableFigures(answers), start);
        const demand = standingAt(askableDemands(answers), start);
        const action = (title: string, place: Partial<StudyPlace>): CodeAction => {
          const made = new CodeAction(title, SOLVE_KIND);
          made.command = { command: `${SETTINGS}.solveFigure`, title, arguments: [{ uri: document.uri.toString(), ...place }] };
          return made;
        };
        return [
          ...(figure === undefined ? [] : [action(l10n.t('Solve for {0}…', figure.change), { change: figure.change })]),
          ...(demand === undefined
            ? []
            : [action(l10n.t('Solve for a figure that just meets “{0}”…', demand.name), { demand: demand.name })]),
        ];
      },
    },
    { providedCodeActionKinds: [SOLVE_KIND] },
  );
}
