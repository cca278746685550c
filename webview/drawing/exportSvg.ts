/**
 * The drawing as a file of its own: what is seen, one millimetre of the file one millimetre of paper, colours and lines written out, no
 * script and nothing from elsewhere.
 */
import { SVG } from './paper.ts';

/** What the page's style says of a mark, and what stands for it in the file. */
const STYLED = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-opacity',
  'opacity',
  'paint-order',
] as const;
const WRITTEN = ['font-family', 'font-size', 'font-weight', 'text-anchor'] as const;

/** @param pixel size of a pixel on the paper, mm */
export function standaloneSvg(svg: SVGSVGElement, title: string, pixel: number): string {
  const { width, height } = svg.getBoundingClientRect();
  const out = document.createElementNS(SVG, 'svg');
  out.setAttribute('width', `${short(width * pixel)}mm`);
  out.setAttribute('height', `${short(height * pixel)}mm`);
  out.setAttribute('viewBox', `0 0 ${short(width)} ${short(height)}`);
  const name = document.createElementNS(SVG, 'title');
  name.textContent = title;
  const ground = document.createElementNS(SVG, 'rect');
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', groundOf(svg));
  out.append(name, ground);
  for (const selector of ['defs', '.paper', '.overlay']) {
    const group = svg.querySelector(selector);
    if (group !== null) out.append(copied(group, selector === '.overlay' ? 1 : pixel));
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(out)}\n`;
}

/** @param unit what a pixel of a line's width is in the group's own measure: lines of the page do not grow with its zoom, those of the file do */
function copied(element: Element, unit: number): Element {
  const copy = element.cloneNode(false) as Element;
  for (const name of copy.getAttributeNames()) if (/^(?:class|style|role|tabindex|aria-.*|data-.*)$/.test(name)) copy.removeAttribute(name);
  if (element.tagName === 'path' || element.tagName === 'circle' || element.tagName === 'text') {
    const style = getComputedStyle(element);
    const isStroked = style.stroke !== 'none';
    for (const property of [...STYLED, ...(element.tagName === 'text' ? WRITTEN : [])]) {
      const value = style.getPropertyValue(property);
      copy.setAttribute(property, property === 'stroke-dasharray' ? scaledDashes(value, unit) : plainColour(value.replaceAll('"', "'")));
    }
    if (isStroked) copy.setAttribute('stroke-width', short(parseFloat(style.strokeWidth) * unit));
  }
  for (const child of element.childNodes) {
    if (child instanceof Element) copy.append(copied(child, unit));
    else if (child instanceof Text) copy.append(child.data);
  }
  return copy;
}

const scaledDashes = (value: string, unit: number): string =>
  value.replaceAll(/[\d.]+(?:px)?/g, (length) => short(parseFloat(length) * unit));

/** A mixed colour is computed as `color(srgb 0.1 0.2 0.3)`, which most readers of SVG do not know. */
const plainColour = (value: string): string =>
  value.replace(/^color\(srgb ([\d.]+) ([\d.]+) ([\d.]+)\)$/, (_, ...parts: string[]) => {
    return `rgb(${parts
      .slice(0, 3)
      .map((part) => Math.round(255 * Number(part)))
      .join(', ')})`;
  });

/** Five figures are a hundredth of a pixel in a thousand. */
const short = (value: number): string => Number(value.toPrecision(5)).toString();

/** The first ground behind it that can be seen. */
function groundOf(element: Element): string {
  for (let at: Element | null = element; at !== null; at = at.parentElement) {
    const { backgroundColor } = getComputedStyle(at);
    if (backgroundColor !== 'transparent' && backgroundColor !== 'rgba(0, 0, 0, 0)') return backgroundColor;
  }
  return 'white';
}
