/** What the docs say of a code, in plain sentences, for outputs that take their readers no further. */
import type { ProblemCode } from '../definition/codes.ts';
import { PROBLEM_DOCS } from '../definition/problemDocs.ts';
import type { FindingCode } from '../findings/codes.ts';
import { FINDING_DOCS } from './findingDocs.ts';

export interface CodeDoc {
  /** One sentence or two. */
  readonly title: string;
  /** Why it matters, and the limit with its source; empty for problems. Paragraphs parted by an empty line. */
  readonly text: string;
  /** What to do. */
  readonly cure: string;
}

/** Links are left out: they lead from page to page of the docs. A code without docs says its own name. */
export function codeDoc(code: ProblemCode | FindingCode): CodeDoc {
  const { title, text, cure } = lookUp(code) ?? { title: code, text: '', cure: '' };
  return { title: unlinked(title), text: unlinked(text), cure: unlinked(cure) };
}

function lookUp(code: ProblemCode | FindingCode): CodeDoc | undefined {
  if (!isProblem(code)) return FINDING_DOCS[code];
  const { what, cure } = PROBLEM_DOCS[code];
  return { title: what, text: '', cure };
}

function isProblem(code: ProblemCode | FindingCode): code is ProblemCode {
  return Object.hasOwn(PROBLEM_DOCS, code);
}

function unlinked(text: string): string {
  return text.replace(/\[([^\]]*)\]\([^)]*\)/g, '$1');
}
