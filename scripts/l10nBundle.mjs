/** What is to be translated of the extension's texts at run time: each text of `l10n.t`, and each of the view, is its own key. */

const CALL = /\bl10n\.t\(/g;
const CALL_WITH_TEXT = /\bl10n\.t\(\s*'((?:[^'\\\n]|\\.)*)'/g;

/**
 * @param {Readonly<Record<string, string>>} sources by path, what stands in each
 * @param {object} [words] those of the view, in groups
 * @returns {string} the file `bundle.l10n.json`, from which a translation into another language is made
 */
export function l10nBundle(sources, words = {}) {
  const texts = Object.entries(sources).flatMap(([path, source]) => {
    const found = [...source.matchAll(CALL_WITH_TEXT)].map(([, text]) => text.replaceAll(/\\(.)/g, '$1'));
    if (found.length !== [...source.matchAll(CALL)].length)
      throw new Error(`${path} gives l10n.t something else than a text in single quotes`);
    return found;
  });
  const inOrder = [...new Set([...texts, ...textsIn(words)])].sort();
  return `${JSON.stringify(Object.fromEntries(inOrder.map((text) => [text, text])), undefined, 2)}\n`;
}

/** @returns {readonly string[]} */
function textsIn(words) {
  return Object.values(words).flatMap((entry) => (typeof entry === 'string' ? [entry] : textsIn(entry)));
}
