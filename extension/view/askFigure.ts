/**
 * Asks a person what one figure is to be solved for: which one may change, what is to be met, and between which bounds. What stands under the
 * cursor comes first.
 */
import { l10n, window } from 'vscode';
import type { QuickPickItem } from 'vscode';
import {
  askableDemands,
  changeableFigures,
  standingAt,
  type AskableDemand,
  type ChangeableFigure,
} from '../../src/language/figureQuestions.ts';
import { readBounds, usualBounds } from '../../src/figureBounds.ts';
import type { Answers } from '../../src/solve.ts';
import type { FigureQuestion } from '../../src/solveFigure.ts';

/** What is known of the question beforehand. */
export interface HalfAsked {
  readonly change?: string;
  readonly demand?: string;
  /** Of the cursor in the text. */
  readonly offset?: number;
}

/** Undefined where the person leaves it. */
export async function askFigure(answers: Answers, { change, demand, offset = -1 }: HalfAsked): Promise<FigureQuestion | undefined> {
  const figures = changeableFigures(answers);
  const demands = askableDemands(answers);
  const onDemand = demand ?? standingAt(demands, offset)?.name;
  const changed = change ?? (await askChange(figures, standingAt(figures, offset)));
  if (changed === undefined) return undefined;
  const met = onDemand ?? (await askDemand(demands, changed));
  if (met === undefined) return undefined;
  const bounds = await askBounds(answers, changed);
  return bounds === undefined ? undefined : { change: changed, demand: met, ...bounds };
}

async function askChange(figures: readonly ChangeableFigure[], at: ChangeableFigure | undefined): Promise<string | undefined> {
  const ordered = at === undefined ? figures : [at, ...figures.filter((each) => each !== at)];
  const items = ordered.map(({ change, written }) => ({ label: change, description: written, change }));
  const placeHolder = l10n.t('Which figure may change?');
  return (await window.showQuickPick(items, { title: l10n.t('Solve for a Figure'), placeHolder, matchOnDescription: true }))?.change;
}

type DemandItem = QuickPickItem & { readonly demand: string | undefined };

async function askDemand(demands: readonly AskableDemand[], changed: string): Promise<string | undefined> {
  const title = l10n.t('Solve for {0}', changed);
  const items: readonly DemandItem[] = [
    ...demands.map(({ name, condition, standing }) => ({ label: name, description: condition, detail: standing, demand: name })),
    { label: l10n.t('Another condition…'), description: '', demand: undefined },
  ];
  const placeHolder = l10n.t('What shall just be met?');
  const picked = demands.length === 0 ? items[0] : await window.showQuickPick(items, { title, placeHolder, matchOnDescription: true });
  if (picked === undefined || picked.demand !== undefined) return picked?.demand;
  const prompt = l10n.t('A comparison as in `require`, such as {0}', 'at(25%, shaft.opening) == 8 deg');
  return (await window.showInputBox({ title, prompt }))?.trim();
}

/** The usual ones stand there already. Nothing is asked of a figure that cannot be looked for: the study says why. */
async function askBounds({ study }: Answers, changed: string): Promise<Pick<FigureQuestion, 'from' | 'to'> | undefined> {
  const usual = study && usualBounds(study, changed);
  if (study === undefined || usual === undefined) return {};
  const read = (line: string): ReturnType<typeof readBounds> => (line.trim() === usual ? {} : readBounds(study, changed, line));
  const line = await window.showInputBox({
    title: l10n.t('Solve for {0}', changed),
    prompt: l10n.t('Between which values is it looked for?'),
    value: usual,
    validateInput(written) {
      const bounds = read(written);
      if (!('kind' in bounds)) return undefined;
      return bounds.cure === undefined ? bounds.why : `${bounds.why}. ${bounds.cure}`;
    },
  });
  const bounds = line === undefined ? undefined : read(line);
  return bounds === undefined || 'kind' in bounds ? undefined : bounds;
}
