/** How wide a text comes out in the chart's type, px; as it is when its curve is lit, which is the wider way. */
import { signal } from '@preact/signals';

/** As in view.css: chart text is so much smaller than the rest. */
const SHARE = 0.85;

/** A way to measure texts, px; another one whenever the type of the page is. */
export type TextWidth = (text: string) => number;

/** Without a canvas: as wide as letters are on the average. */
export const textWidth = signal<TextWidth>((text) => 6 * text.length);

/**
 * Keeps `textWidth` up with the type that the editor gives the page. It is read here alone, and only when it may be another: to ask for a
 * style makes the browser work out all styles that have changed, in the midst of drawing seven times a picture.
 */
export function watchType(): void {
  const context = document.createElement('canvas').getContext('2d');
  if (context === null) return;
  let type = '';
  const look = () => {
    const { fontFamily, fontSize } = getComputedStyle(document.body);
    const font = `600 ${SHARE * Number.parseFloat(fontSize)}px ${fontFamily}`;
    if (font === type) return;
    type = font;
    textWidth.value = measureIn(context, font);
  };
  look();
  const observer = new MutationObserver(look);
  observer.observe(document.documentElement, { attributeFilter: ['style', 'class'] });
  observer.observe(document.body, { attributeFilter: ['style', 'class'] });
}

/** Texts come back at each picture, so their widths are kept. */
function measureIn(context: CanvasRenderingContext2D, font: string): TextWidth {
  const known = new Map<string, number>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    if (known.size > MANY) known.clear();
    context.font = font;
    const { width } = context.measureText(text);
    known.set(text, width);
    return width;
  };
}

/** More texts than the largest file shows; what is kept is dropped then. */
const MANY = 2000;
