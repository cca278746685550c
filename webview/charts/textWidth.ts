/** How wide a text comes out in the chart's type, px; as it is when its curve is lit, which is the wider way. */

/** As in view.css: chart text is so much smaller than the rest. */
const SHARE = 0.85;

/** A way to measure in the type that the page has at present. Texts come back at each picture, so their widths are kept. */
export function textMeasure(): (text: string) => number {
  context ??= document.createElement('canvas').getContext('2d');
  const { fontFamily, fontSize } = getComputedStyle(document.body);
  const font = `600 ${SHARE * Number.parseFloat(fontSize)}px ${fontFamily}`;
  if (font !== type || known.size > MANY) known.clear();
  type = font;
  if (context !== null) context.font = font;
  return (text) => {
    let width = known.get(text);
    // Without a canvas: as wide as letters are on the average.
    if (width === undefined) known.set(text, (width = context?.measureText(text).width ?? text.length * 6));
    return width;
  };
}

/** More texts than the largest file shows; what is kept is dropped then. */
const MANY = 2000;

let context: CanvasRenderingContext2D | null | undefined;
let type = '';
const known = new Map<string, number>();
