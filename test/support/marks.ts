/** Throttle files annotated with carets: `# ^^^^ error[code]: words` under the line that it is about. */

export interface Mark {
  /** `line:from-to severity[code]`, lines from 1, characters from 0. */
  readonly place: string;
  readonly words: string;
}

/** The file without its annotations, and what they expect, each with its place. */
export function takeApart(annotated: string): { readonly text: string; readonly expected: readonly Mark[] } {
  const kept: string[] = [];
  const expected: Mark[] = [];
  for (const line of annotated.split('\n')) {
    const mark = /^(\s*)#(\s*)(\^+|<) (error|warning|note)\[([a-z-]+)\](?:: (.*))?$/.exec(line.replace(/\r$/, ''));
    if (mark === null) {
      kept.push(line);
      continue;
    }
    const [, indent = '', gap = '', run = '', severity = '', code = '', words = ''] = mark;
    const touching = gap === '';
    const start = indent.length + (touching ? 0 : 1 + gap.length);
    const end = start + (run === '<' ? 1 : run.length + (touching ? 1 : 0));
    expected.push({ place: `${kept.length}:${start}-${end} ${severity}[${code}]`, words });
  }
  return { text: kept.join('\n'), expected };
}
