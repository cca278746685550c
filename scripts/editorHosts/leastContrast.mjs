/** How well the texts of a page can be read: the contrast of the one that is hardest to read. */

/**
 * Contrast by the definition of WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio. What is disabled or hidden is left aside, as there.
 *
 * @param {import('playwright-core').Frame} frame of a view
 * @returns {Promise<readonly string[]>} its kind of theme, how many texts there are, the least contrast and where that is
 */
export function leastContrast(frame) {
  return frame.evaluate(() => {
    const { document, getComputedStyle } = globalThis;
    const parsed = (colour) => {
      const [red = 0, green = 0, blue = 0, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
      return { channels: [red, green, blue], alpha };
    };
    const over = ({ channels, alpha }, below) => channels.map((value, index) => alpha * value + (1 - alpha) * below[index]);
    const luminance = (channels) => {
      const [red, green, blue] = channels.map((value) => {
        const part = value / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const lineage = (element) => (element === null ? [] : [...lineage(element.parentElement), element]);
    const behind = (element) =>
      lineage(element).reduce((below, each) => over(parsed(getComputedStyle(each).backgroundColor), below), [255, 255, 255]);
    const opacity = (element) => lineage(element).reduce((product, each) => product * Number(getComputedStyle(each).opacity), 1);

    const found = [];
    for (const element of document.querySelectorAll('body *')) {
      const text = [...element.childNodes].filter(({ nodeType }) => nodeType === 3).map(({ nodeValue }) => nodeValue.trim());
      if (text.join('') === '' || element.matches(':disabled, option, script, style, title, .unseen')) continue;
      if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      const isDrawn = element.namespaceURI.endsWith('/svg');
      const ground = behind(isDrawn ? element.closest('svg') : element);
      const ink = parsed(getComputedStyle(element)[isDrawn ? 'fill' : 'color']);
      const [light, dark] = [ground, over({ ...ink, alpha: ink.alpha * opacity(element) }, ground)].map(luminance).sort((a, b) => b - a);
      found.push({ text: text.join(' '), contrast: (light + 0.05) / (dark + 0.05) });
    }
    const [worst] = found.sort((a, b) => a.contrast - b.contrast);
    return [
      `kind ${document.body.dataset.vscodeThemeKind}`,
      `texts ${found.length}`,
      `contrast ${worst === undefined ? 0 : worst.contrast.toFixed(2)}`,
      `at ${worst?.text}`,
    ];
  });
}
