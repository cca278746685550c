/**
 * Saves a drawing by itself: a copy in which every colour, stroke and type that came from the page's style stands as an attribute, on the
 * editor's background. As PNG it has twice the pixels.
 */
import { saveFile } from '../send.ts';
import { complaint } from '../state.ts';
import { WORDS } from '../words.ts';
import { fileNameFor } from './fileNameFor.ts';

/** What a style may say of a drawing; each is an attribute of SVG too. */
const STYLED = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-opacity',
  'opacity',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'paint-order',
  'text-anchor',
  'vector-effect',
  'visibility',
] as const;

const SVG = 'http://www.w3.org/2000/svg';
const PIXELS = 2;

/** A chart. `what`: for the name of the file; `title`: what it shows, in words. */
export async function saveDrawn(drawing: SVGSVGElement, kind: 'svg' | 'png', what: string, title: string): Promise<void> {
  const { text, width, height } = standalone(drawing, title);
  await saveAs(kind, what, text, width, height);
}

/** The drawing of the mechanism, which comes as the text of an SVG file. */
export async function saveDrawing(text: string, kind: 'svg' | 'png'): Promise<void> {
  const box = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement.getAttribute('viewBox') ?? '';
  const [, , width = 0, height = 0] = box.split(' ').map(Number);
  await saveAs(kind, 'drawing', text, width, height);
}

async function saveAs(kind: 'svg' | 'png', what: string, text: string, width: number, height: number): Promise<void> {
  const name = fileNameFor(what, kind);
  if (kind === 'svg') return saveFile({ name, kind, content: text });
  try {
    await saveFile({ name, kind, content: await rendered(text, width, height) });
  } catch {
    complaint.value = WORDS.notDrawn;
  }
}

/** The drawing as a file of its own. Parts that follow the slider alone (`data-live`) and what is hidden are left out. */
export function standalone(
  drawing: SVGSVGElement,
  title: string,
): { readonly text: string; readonly width: number; readonly height: number } {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  inlineStyles(drawing, copy);
  const { width, height } = drawing.getBoundingClientRect();
  const box = drawing.viewBox.baseVal;
  const [x, y, w, h] = box.width > 0 ? [box.x, box.y, box.width, box.height] : [0, 0, width, height];
  copy.setAttribute('xmlns', SVG);
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  copy.setAttribute('viewBox', `${x} ${y} ${w} ${h}`);
  const ground = document.createElementNS(SVG, 'rect');
  for (const [key, value] of Object.entries({ x, y, width: w, height: h, fill: backgroundOf(drawing) }))
    ground.setAttribute(key, String(value));
  const name = document.createElementNS(SVG, 'title');
  name.textContent = title;
  copy.prepend(name, ground);
  return { text: new XMLSerializer().serializeToString(copy), width, height };
}

function inlineStyles(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  for (const name of STYLED) {
    const value = style.getPropertyValue(name);
    if (value !== '') to.setAttribute(name, value);
  }
  for (const name of to.getAttributeNames()) {
    if (name === 'class' || name === 'style' || name === 'tabindex' || name === 'role' || /^(?:aria|data)-/.test(name))
      to.removeAttribute(name);
  }
  const copies = [...to.children];
  [...from.children].forEach((child, index) => {
    const copy = copies[index]!;
    if (child.hasAttribute('data-live') || getComputedStyle(child).display === 'none') copy.remove();
    else inlineStyles(child, copy);
  });
}

/** The first ground behind it that can be seen. */
function backgroundOf(element: Element | null): string {
  for (let at = element; at !== null; at = at.parentElement) {
    const { backgroundColor } = getComputedStyle(at);
    if (backgroundColor !== '' && backgroundColor !== 'transparent' && !/^rgba\(.*, 0\)$/.test(backgroundColor)) return backgroundColor;
  }
  return 'white';
}

async function rendered(text: string, width: number, height: number): Promise<Uint8Array> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(PIXELS * width);
  canvas.height = Math.ceil(PIXELS * height);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('No canvas');
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (blob === null) throw new Error('No image');
  return new Uint8Array(await blob.arrayBuffer());
}
