/** The Problems list, as far as it is ours. */
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag, languages, type TextDocument, type Uri, workspace } from 'vscode';
import { until } from './wait.ts';

/** A problem in words: `line:from-to code`, lines from 1 and characters from 0. */
export function shownProblems(uri: Uri): readonly string[] {
  return ours(uri).map(inWords);
}

/**
 * What a bundled example says of itself: a comment of carets stands under what a problem is about, with severity and code after it.
 */
export function writtenProblems(text: string): readonly string[] {
  const lines = text.split(/\r?\n/);
  return lines.flatMap((line, index) => {
    const [, before, carets, code] = MARK.exec(line) ?? [];
    if (before === undefined || carets === undefined || code === undefined) return [];
    const about = lines.slice(0, index).findLastIndex((each) => !MARK.test(each)) + 1;
    return [`${about}:${before.length}-${before.length + carets.length} ${code}`];
  });
}

const MARK = /^(\s*#\s*)(\^+) \w+\[([a-z-]+)\]/;

export function ours(uri: Uri): readonly Diagnostic[] {
  return languages.getDiagnostics(uri).filter(({ source, severity }) => source === SOURCE && severity !== DiagnosticSeverity.Hint);
}

/** Waits until just these places of a document are faded, which is in no list; each as its text and why. */
export async function untilFaded(document: TextDocument, expected: readonly string[]): Promise<void> {
  const faded = (): readonly string[] =>
    languages
      .getDiagnostics(document.uri)
      .filter(({ source, tags }) => source === SOURCE && tags?.includes(DiagnosticTag.Unnecessary))
      .map(({ range, message }) => `${document.getText(range)}: ${message}`);
  const read = (): true | undefined => (sorted(faded()) === sorted(expected) ? true : undefined);
  await until('names to be faded', languages.onDidChangeDiagnostics, read, () => `found ${sorted(faded())}`);
}

/** Waits until just these stand there, in any order. */
export async function untilProblems(uri: Uri, expected: readonly string[]): Promise<void> {
  const wanted = sorted(expected);
  const read = (): true | undefined => (sorted(shownProblems(uri)) === wanted ? true : undefined);
  const state = (): string => `expected ${wanted}\nfound    ${sorted(shownProblems(uri))}`;
  await until(`the problems of ${uri.path}`, languages.onDidChangeDiagnostics, read, state);
}

/** Waits until one of the code stands there, and gives it. */
export function untilProblem(uri: Uri, code: string): Promise<Diagnostic> {
  const read = (): Diagnostic | undefined => ours(uri).find((problem) => codeOf(problem) === code);
  return until(`${code} in ${uri.path}`, languages.onDidChangeDiagnostics, read, () => `found ${sorted(shownProblems(uri))}`);
}

/** Waits until none of the code stands there, or none as severe as that. */
export async function untilNoProblem(uri: Uri, code: string, least = DiagnosticSeverity.Hint): Promise<void> {
  const isLeft = (problem: Diagnostic): boolean => codeOf(problem) === code && problem.severity <= least;
  const read = (): true | undefined => (ours(uri).some(isLeft) ? undefined : true);
  await until(`${code} to go from ${uri.path}`, languages.onDidChangeDiagnostics, read, () => `found ${sorted(shownProblems(uri))}`);
}

/** Waits until a document reads so. @param again what would make it so is asked once more by this */
export async function untilText(document: TextDocument, expected: string, again?: () => void): Promise<void> {
  const read = (): true | undefined => (document.getText() === expected ? true : undefined);
  await until(`the text of ${document.uri.path}`, workspace.onDidChangeTextDocument, read, () => `it is\n${document.getText()}`, again);
}

/** The code alone, also where it carries a link to its page. */
export function codeOf({ code }: Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

const SOURCE = 'pedal-to-plate';

function inWords(problem: Diagnostic): string {
  const { start, end } = problem.range;
  return `${start.line + 1}:${start.character}-${end.character} ${codeOf(problem)}`;
}

const sorted = (problems: readonly string[]): string => JSON.stringify([...problems].sort());
