/** One quiet item of the status bar, for the throttle file that has the focus: how it stands, and on hover the rest. */
import { Disposable, l10n, MarkdownString, StatusBarAlignment, window, workspace } from 'vscode';
import type { StatusBarItem, TextDocument } from 'vscode';
import { statusLine, type StatusLine } from '../src/language/statusLine.ts';
import type { DocumentAnswers } from './answers.ts';
import { asChosen, SEVERITY_SETTING } from './features/severities.ts';
import { isThrottleFile } from './language.ts';

/** Shows it while a throttle file has the focus, until disposed of. */
export function showStatus(answers: DocumentAnswers): Disposable {
  const item = window.createStatusBarItem('pedalToPlate.status', StatusBarAlignment.Right, BESIDE_THE_LANGUAGE);
  item.name = l10n.t('Throttle Linkage');
  item.command = { command: 'workbench.actions.view.problems', title: l10n.t('Show Problems') };

  const show = (document: TextDocument | undefined): void => {
    const known = document !== undefined && isThrottleFile(document) ? answers.latestWhole(document) : undefined;
    if (document === undefined || known === undefined) return item.hide();
    fill(item, statusLine(asChosen(document, known)));
    item.show();
  };
  const showIfActive = (document: TextDocument): void => {
    if (document === window.activeTextEditor?.document) show(document);
  };

  show(window.activeTextEditor?.document);
  return Disposable.from(
    item,
    window.onDidChangeActiveTextEditor((editor) => show(editor?.document)),
    answers.onDidSolve(({ document }) => showIfActive(document)),
    answers.onDidLookAtFailures(({ document }) => showIfActive(document)),
    workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(SEVERITY_SETTING)) show(window.activeTextEditor?.document);
    }),
    answers.onDidForget((document) => {
      if (document === window.activeTextEditor?.document) item.hide();
    }),
  );
}

/** Left of what the editor itself says of the file. */
const BESIDE_THE_LANGUAGE = 101;

const ICONS: Readonly<Record<NonNullable<StatusLine['severity']>, string>> = { error: 'error', warning: 'warning', note: 'info' };

function fill(item: StatusBarItem, { text, severity, tooltip }: StatusLine): void {
  item.text = `$(${severity === undefined ? 'check' : ICONS[severity]}) ${text}`;
  item.tooltip = tooltipOf(tooltip);
  item.accessibilityInformation = { label: l10n.t('Throttle linkage: {0}', text), role: 'button' };
}

function tooltipOf({ verdict, requirements, notChecked, caution }: StatusLine['tooltip']): MarkdownString {
  const page = new MarkdownString();
  const section = (heading: string, lines: readonly string[]): void => {
    if (lines.length === 0) return;
    page.appendMarkdown(`\n\n**${heading}**\n`);
    for (const line of lines) page.appendMarkdown('\n- ').appendText(line);
  };
  page.appendText(verdict);
  section(l10n.t('Requirements'), requirements);
  section(l10n.t('Not checked'), notChecked);
  page.appendMarkdown('\n\n---\n\n').appendText(caution);
  return page;
}
