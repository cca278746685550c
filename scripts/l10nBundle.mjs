/** What is to be translated of the extension's texts at run time: each text of `l10n.t` is its own key. */

const CALL = /\bl10n\.t\(/g;
const CALL_WITH_TEXT = /\bl10n\.t\(\s*'((?:[^'\\\n]|\\.)*)'/g;

/**
 * @param {Readonly<Record<string, string>>} sources by path, what stands in each
 * @returns {string} the file `bundle.l10n.json`, from which a translation into another language is made
 */
export function l10nBundle(sources) {
  const texts = Object.entries(sources).flatMap(([path, source]) => {
    const found = [...source.matchAll(CALL_WITH_TEXT)].map(([, text]) => text.replaceAll(/\\(.)/g, '$1'));
    if (found.length !== [...source.matchAll(CALL)].length)
      throw new Error(`${path} gives l10n.t something else than a text in single quotes`);
    return found;
  });
  const inOrder = [...new Set(texts)].sort();
  return `${JSON.stringify(Object.fromEntries(inOrder.map((text) => [text, text])), undefined, 2)}\n`;
}
