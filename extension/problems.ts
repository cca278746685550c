/** Problems and findings as the editor shows them: at the characters that cause them, with the cure in the same message. */
import { Diagnostic, DiagnosticRelatedInformation, DiagnosticSeverity, Location, Range } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Span } from '../src/definition/span.ts';

/** What problems of the text and findings about the linkage have in common. */
export interface Remark {
  /** Stable; fixes and pages go by it. */
  readonly code: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly span: Span;
  /** A sentence without a full stop. */
  readonly message: string;
  /** What would mend it, a sentence without a full stop; undefined where that is not known. */
  readonly cure?: string | undefined;
  readonly related?: readonly { readonly span: Span; readonly message: string }[];
}

export function toDiagnostic(document: TextDocument, remark: Remark): Diagnostic {
  const rangeOf = (span: Span): Range => new Range(document.positionAt(span.start), document.positionAt(span.end));
  const message = remark.cure === undefined ? remark.message : `${remark.message}. ${remark.cure}.`;
  const diagnostic = new Diagnostic(rangeOf(remark.span), message, severityOf(remark.severity));
  diagnostic.source = 'pedal-to-plate';
  diagnostic.code = remark.code;
  if (remark.related !== undefined) {
    diagnostic.relatedInformation = remark.related.map(
      (other) => new DiagnosticRelatedInformation(new Location(document.uri, rangeOf(other.span)), other.message),
    );
  }
  return diagnostic;
}

function severityOf(severity: Remark['severity']): DiagnosticSeverity {
  switch (severity) {
    case 'error':
      return DiagnosticSeverity.Error;
    case 'warning':
      return DiagnosticSeverity.Warning;
    case 'note':
      return DiagnosticSeverity.Information;
  }
}
