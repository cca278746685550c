/** Problems and findings as the editor shows them: at the characters that cause them, with the cure in the same message. */
import { Diagnostic, DiagnosticRelatedInformation, DiagnosticSeverity, Location } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Mark } from '../../src/outputs/marks.ts';
import { rangeOf } from '../places.ts';
import { linkToCodePage } from './codePages.ts';

/** By which fixes tell our diagnostics from those of other extensions. */
export const SOURCE = 'pedal-to-plate';

export function toDiagnostic(document: TextDocument, mark: Mark): Diagnostic {
  const diagnostic = new Diagnostic(rangeOf(document, mark.span), wordsOf(mark), SEVERITIES[mark.severity]);
  diagnostic.source = SOURCE;
  diagnostic.code = { value: mark.code, target: linkToCodePage(mark.code) };
  if (mark.related !== undefined) {
    diagnostic.relatedInformation = mark.related.map(
      (other) => new DiagnosticRelatedInformation(new Location(document.uri, rangeOf(document, other.span)), other.message),
    );
  }
  return diagnostic;
}

/** A cure may ask, and then ends as a question does. */
function wordsOf({ message, cure }: Mark): string {
  return cure === undefined ? message : `${message}. ${cure}${cure.endsWith('?') ? '' : '.'}`;
}

/** The code of one of our diagnostics, which fixes go by; undefined of those of other extensions. */
export function codeOf({ source, code }: Diagnostic): string | undefined {
  if (source !== SOURCE || code === undefined) return undefined;
  return String(typeof code === 'object' ? code.value : code);
}

const SEVERITIES: Readonly<Record<Mark['severity'], DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};
