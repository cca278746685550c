/**
 * Takes the doc comment of a rule apart: it is the page of the docs on that finding. The comment stands first in the file, in this form:
 *
 *     One sentence, the title.
 *
 *     Paragraphs: what it is, why it matters, the limit and where it comes from.
 *
 *     ```yaml
 *     a whole throttle file that raises it, its findings as carets under the lines
 *     ```
 *
 *     Cure: what to do.
 */

/**
 * @param {string} source text of a rule's file
 * @returns {import('./ruleDocs.d.mts').RuleDoc} a part that is not there is empty
 */
export function takeDocApart(source) {
  const comment = /^\/\*\*\n([\s\S]*?)\n \*\//.exec(source)?.[1] ?? '';
  const lines = comment.split('\n').map((line) => line.replace(/^ \* ?/, ''));
  const opening = lines.indexOf('```yaml');
  const closing = lines.indexOf('```', opening + 1);
  const [title = '', ...paragraphs] = paragraphsOf(opening < 0 ? lines : lines.slice(0, opening));
  const [cure = '', ...rest] = paragraphsOf(closing < 0 ? [] : lines.slice(closing + 1));
  return {
    title,
    text: paragraphs.join('\n\n'),
    example: opening < 0 || closing < 0 ? '' : `${lines.slice(opening + 1, closing).join('\n')}\n`,
    cure: cure.startsWith(CURE) ? capital(cure.slice(CURE.length)) : '',
    rest: rest.join('\n\n'),
  };
}

const CURE = 'Cure: ';

/** @param {string} code e.g. `rod-end-tilt` @returns {string} e.g. `rodEndTilt` */
export function ruleNameOf(code) {
  return code.replace(/-(.)/g, (_, letter) => letter.toUpperCase());
}

/** Paragraphs, each on one line. */
function paragraphsOf(lines) {
  return lines
    .join('\n')
    .split(/\n{2,}/)
    .map((paragraph) => paragraph.trim().replaceAll('\n', ' '))
    .filter((paragraph) => paragraph !== '');
}

function capital(sentence) {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
