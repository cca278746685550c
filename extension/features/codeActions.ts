/**
 * Quick fixes: edits that mend a problem of the text, and figures that mend what was found about the linkage.
 *
 * A figure takes long to solve for. For what is under the cursor that is done ahead while the editor rests, and every title of a fix that
 * is solved says what comes of it. When a person opens the menu before, as many are solved as fit into a moment; a title of the rest
 * says what will be solved for. The one that is chosen is solved then. The editor shows no title that comes as late as that, so the
 * result is told in the status bar.
 */
import { CodeAction, CodeActionKind, CodeActionTriggerKind, commands, Disposable, l10n, languages, window, WorkspaceEdit } from 'vscode';
import type { CancellationToken, CodeActionContext, Diagnostic, TextDocument } from 'vscode';
import type { Replacement } from '../../src/definition/problem.ts';
import type { Span } from '../../src/definition/span.ts';
import { textFixes } from '../../src/language/fixes.ts';
import { offeredFixes, type OfferedFix } from '../../src/language/offeredFixes.ts';
import type { SolvedFix } from '../../src/language/solvedFix.ts';
import type { Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf, spanOf } from '../places.ts';
import { whyReadOnly } from '../readOnly.ts';
import { codeOf } from './diagnostic.ts';
import { editsOfAll } from './fixAll.ts';
import { keepFixWorks } from './fixWorks.ts';
import { sayingWhenLong } from './longWork.ts';
import { chosenSeverities } from './severities.ts';
import { solveAhead } from './solveAhead.ts';
import { solveInTurns } from './solveInTurns.ts';

export const FIX_ALL = CodeActionKind.SourceFixAll.append('pedalToPlate');

export function provideCodeActions(documentAnswers: DocumentAnswers): Disposable {
  const { solved } = documentAnswers;
  const works = keepFixWorks();
  const waiting = new WeakMap<CodeAction, Offer>();

  const figureFixes = async (
    document: TextDocument,
    answers: Answers,
    span: Span,
    context: CodeActionContext,
    token: CancellationToken,
  ) => {
    const { version } = document;
    const isInvoked = context.triggerKind === CodeActionTriggerKind.Invoke;
    const until = Date.now() + MOMENT_MS;
    const isWanted = (): boolean => !token.isCancellationRequested && document.version === version && Date.now() < until;
    const actions: CodeAction[] = [];
    const severities = chosenSeverities(document);
    for (const offer of offeredFixes(answers, span)) {
      if (severities.get(offer.code) === 'off') continue;
      const action = new CodeAction(offer.title, CodeActionKind.QuickFix);
      action.diagnostics = diagnosticsAt(document, context.diagnostics, offer.code, [offer.span]);
      const work = works(answers, offer);
      const fix = isInvoked ? await solveInTurns(work, isWanted) : work.result;
      // A result of a text that has changed meanwhile has no places in the new one.
      if (fix === undefined || document.version !== version) waiting.set(action, { document, offer });
      else showResult(action, document, fix);
      actions.push(action);
    }
    return actions;
  };

  return Disposable.from(
    languages.registerCodeActionsProvider(
      THROTTLE_FILES,
      {
        async provideCodeActions(document, range, context, token): Promise<CodeAction[] | undefined> {
          const readOnly = context.triggerKind === CodeActionTriggerKind.Invoke ? await whyReadOnly(document) : undefined;
          const answers = await solved(document, token);
          if (answers === undefined) return undefined;
          // Undefined asks for what the menu of the lamp shows, in which the editor leaves source actions out.
          const wants = (kind: CodeActionKind): boolean => context.only?.contains(kind) ?? kind.value === CodeActionKind.QuickFix.value;
          const span = spanOf(document, range);
          const actions = [
            ...(wants(CodeActionKind.QuickFix) ? mendingActions(document, answers, span, context) : []),
            ...(wants(CodeActionKind.QuickFix) ? await figureFixes(document, answers, span, context, token) : []),
            ...(wants(FIX_ALL) ? actionForAll(document, answers) : []),
          ];
          return readOnly === undefined ? actions : actions.map((action) => refused(action, readOnly));
        },
        async resolveCodeAction(action, token) {
          const offered = waiting.get(action);
          if (offered === undefined) return action;
          const { document, offer } = offered;
          const answers = await solved(document, token);
          if (answers === undefined) return action;
          const { version } = document;
          const title = l10n.t('Solving: {0}', offer.title);
          const fix = await sayingWhenLong(title, token, (isWanted) =>
            solveInTurns(works(answers, offer), () => isWanted() && document.version === version),
          );
          if (fix === undefined || document.version !== version) return action;
          waiting.delete(action);
          if (fix.kind === 'solved') showResult(action, document, fix);
          action.command = {
            command: TELL_RESULT,
            title: offer.title,
            arguments: [fix.kind === 'solved' ? { told: fix.title } : { why: fix.reason }],
          };
          return action;
        },
      },
      { providedCodeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] },
    ),
    commands.registerCommand(TELL_RESULT, tellResult),
    solveAhead(documentAnswers, works),
  );
}

/** What would be done, and why it cannot be. */
function refused({ title, kind, diagnostics = [] }: CodeAction, reason: string): CodeAction {
  const action = new CodeAction(title, kind);
  action.diagnostics = diagnostics;
  action.disabled = { reason };
  return action;
}

/** How long a menu may wait for titles with figures; then the rest is only offered. Less is felt as at once, from memory. */
const MOMENT_MS = 100;

/** A fix that is still to be solved, and of what. */
interface Offer {
  readonly document: TextDocument;
  readonly offer: OfferedFix;
}

function showResult(action: CodeAction, document: TextDocument, fix: SolvedFix): void {
  if (fix.kind === 'unsolved') {
    action.disabled = { reason: fix.reason };
    return;
  }
  action.title = fix.title;
  action.edit = editOf(document, fix.edits);
}

function mendingActions(document: TextDocument, answers: Answers, span: Span, { diagnostics }: CodeActionContext): CodeAction[] {
  return textFixes(answers, span).map(({ title, code, problems, edits, preferred }) => {
    const action = new CodeAction(title, CodeActionKind.QuickFix);
    action.edit = editOf(document, edits);
    action.isPreferred = preferred;
    const spans = problems.map((problem) => problem.span);
    action.diagnostics = diagnosticsAt(document, diagnostics, code, spans);
    return action;
  });
}

function actionForAll(document: TextDocument, answers: Answers): CodeAction[] {
  const edits = editsOfAll(answers);
  if (edits.length === 0) return [];
  const action = new CodeAction(l10n.t('Mend everything that has one right answer'), FIX_ALL);
  action.edit = editOf(document, edits);
  return [action];
}

function editOf(document: TextDocument, edits: readonly Replacement[]): WorkspaceEdit {
  const edit = new WorkspaceEdit();
  for (const { span, text } of edits) edit.replace(document.uri, rangeOf(document, span), text);
  return edit;
}

/** Of the diagnostics that the editor asks about, those with the code at one of the places. */
function diagnosticsAt(
  document: TextDocument,
  diagnostics: readonly Diagnostic[],
  code: string | undefined,
  spans: readonly Span[],
): Diagnostic[] {
  if (code === undefined) return [];
  const ranges = spans.map((span) => rangeOf(document, span));
  return diagnostics.filter((diagnostic) => codeOf(diagnostic) === code && ranges.some((range) => range.isEqual(diagnostic.range)));
}

/** Runs behind a fix that was solved only when it was chosen. Not in the palette. */
const TELL_RESULT = 'pedalToPlate.tellFixResult';

/** What was asked for is said once; that it could not be done can be shown nowhere else. */
async function tellResult(result: unknown): Promise<void> {
  if (typeof result !== 'object' || result === null) return;
  if ('told' in result && typeof result.told === 'string') window.setStatusBarMessage(result.told, TOLD_MS);
  if ('why' in result && typeof result.why === 'string') await window.showInformationMessage(result.why);
}

/** Long enough to read a line twice. */
const TOLD_MS = 8000;
