/** How wide a text comes out in the chart's type, px; as it is when its curve is lit, which is the wider way. */

/** As in view.css: chart text is so much smaller than the rest. */
const SHARE = 0.85;

let context: CanvasRenderingContext2D | null | undefined;

export function textWidth(text: string): number {
  context ??= document.createElement('canvas').getContext('2d');
  // Without a canvas: as wide as letters are on the average.
  if (context === null) return text.length * 6;
  const { fontFamily, fontSize } = getComputedStyle(document.body);
  context.font = `600 ${SHARE * Number.parseFloat(fontSize)}px ${fontFamily}`;
  return context.measureText(text).width;
}
