/** The page of the docs that stands in the doc comment of a rule; Markdown, paragraphs on one line each. */
export interface RuleDoc {
  /** One sentence. */
  readonly title: string;
  readonly text: string;
  /** A whole throttle file with its findings as carets under its lines. */
  readonly example: string;
  readonly cure: string;
  /** What follows the cure, where nothing belongs. */
  readonly rest: string;
}

/** @param source text of a rule's file; a part that is not there is empty */
export function takeDocApart(source: string): RuleDoc;

/** The name of the rule and of its file, e.g. `rodEndTilt` for `rod-end-tilt`. */
export function ruleNameOf(code: string): string;
