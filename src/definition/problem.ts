/**
 * What is wrong with the text itself. A problem never stops the reading: whatever does not depend on the
 * broken place is still understood.
 */
import type { ProblemCode } from './codes.ts';
import type { Span } from './span.ts';

/** A warning leaves nothing unread. An error leaves its part unread, or says that plates never open. */
export type Severity = 'error' | 'warning';

/** A text edit that would mend a problem. An empty `text` deletes the span. */
export interface Replacement {
  readonly span: Span;
  readonly text: string;
}

export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  /** The offending characters, no more. */
  readonly span: Span;
  /** What is wrong, with the person's own words quoted; a sentence without a full stop. */
  readonly message: string;
  /** What to write instead, where that is known; a sentence without a full stop. */
  readonly cure?: string;
  /** Edits that carry out the cure, where it can be done without asking. */
  readonly replacements?: readonly Replacement[];
  /** Other places that explain the problem, such as the first of two equal keys. */
  readonly related?: readonly { readonly span: Span; readonly message: string }[];
}
