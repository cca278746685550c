import { expect, test } from 'vitest';
import type * as vscode from 'vscode';
import { provideStudyActions, SOLVE_KIND } from '../../../extension/features/studyActions.ts';
import { FOUR_BARREL, openThrottle, PATIENT, providerOf, serveEach } from '../../support/editorRequests.ts';

serveEach(provideStudyActions);

async function actionsAt(wanted: string, only?: unknown): Promise<readonly vscode.CodeAction[]> {
  const document = openThrottle(FOUR_BARREL);
  const at = document.positionAt(FOUR_BARREL.indexOf(wanted));
  const provider = providerOf('registerCodeActionsProvider');
  const context = { only, diagnostics: [], triggerKind: 1 } as unknown as vscode.CodeActionContext;
  return (await provider.provideCodeActions(document, { start: at, end: at } as never, context, PATIENT)) as vscode.CodeAction[];
}

test('a figure under the cursor can be solved for, and a requirement met', async () => {
  const [figure] = await actionsAt('38 mm');
  expect(figure?.title).toBe('Solve for crank_reach…');
  expect(figure?.command).toMatchObject({ command: 'pedalToPlate.solveFigure', arguments: [{ change: 'crank_reach' }] });
  const [demand] = await actionsAt('opens fully:', SOLVE_KIND);
  expect(demand?.command).toMatchObject({ command: 'pedalToPlate.solveFigure', arguments: [{ demand: 'opens fully' }] });
});

test('nothing is offered where neither stands', async () => {
  expect(await actionsAt('levers:')).toEqual([]);
});
