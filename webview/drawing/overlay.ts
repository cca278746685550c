/** What is written over the drawing, in pixels of the screen: names, where a part has no position and why, and the scale. */
import { describeStops } from './describe.ts';
import { placeLabels, type Label } from './labels.ts';
import { attribute, SVG } from './paper.ts';
import type { Pose } from './pose.ts';
import { onPaper } from './projection.ts';
import type { Scene } from './scene.ts';
import type { Size, Viewport } from './viewport.ts';

export interface Over {
  readonly scene: Scene;
  readonly pose: Pose;
  readonly travel: number;
  readonly viewport: Viewport;
  readonly size: Size;
  readonly isNamed: boolean;
  /** Where each name stands about its part; emptied when the picture or what is seen of it changes. */
  readonly ways: Map<string, number>;
}

export function drawOverlay(group: SVGGElement, over: Over): void {
  const texts: Text[] = [];
  texts.push(...(over.isNamed ? names(over) : platesCounts(over)), ...stops(over));
  writeTexts(group, texts);
  drawScale(group, over);
}

interface Text {
  readonly look: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** px; of the font that `drawing.css` gives. */
const LINE_PX = 14;
const LETTER_PX = 6.4;

function names({ scene, pose, viewport, size, ways }: Over): readonly Text[] {
  const spot = { x: 0, y: 0 };
  const labels = scene.symbols.flatMap((symbol): readonly Label[] => {
    symbol.anchor(pose, spot);
    const name = symbol.part?.name ?? symbol.marks[0]?.name;
    const count = symbol.part?.kind === 'plates' ? scene.sheet.picture.plates.find((plates) => plates.name === name)?.count : undefined;
    const text = count === undefined || count === 1 ? name : `${name}, ${count} ×`;
    if (text === undefined || Number.isNaN(spot.x)) return [];
    return [{ key: symbol.key, text, x: viewport.scale * spot.x + viewport.x, y: viewport.scale * spot.y + viewport.y }];
  });
  return placeLabels(labels, LINE_PX, size.width, (text) => text.length * LETTER_PX, ways).map(({ text, left, baseline }) => ({
    look: 'name',
    text,
    x: left,
    y: baseline,
  }));
}

/** At the lower left, over the scale, in as many lines as the breadth needs. */
function stops({ scene, travel, size }: Over): readonly Text[] {
  const lines = describeStops(scene.sheet.picture, travel).flatMap(({ text }) => wrapped(text, (size.width - 28) / LETTER_PX));
  return lines.map((text, i) => ({ look: 'stopped', text, x: 14, y: size.height - 42 - (lines.length - 1 - i) * LINE_PX }));
}

/** At spaces, to so many letters a line. */
function wrapped(text: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.pop();
    if (last === undefined) lines.push(word);
    else if (last.length + 1 + word.length <= letters) lines.push(`${last} ${word}`);
    else lines.push(last, word);
  }
  return lines;
}

/** How many plates the one in section stands for; where names are shown it is with the name. */
function platesCounts({ scene, viewport }: Over): readonly Text[] {
  const { picture, view } = scene.sheet;
  return picture.plates
    .filter(({ count }) => count > 1)
    .map(({ count, bore, lever }) => {
      const { x, y } = onPaper(view, picture.levers[lever]!.pivot);
      const half = 500 * bore;
      return {
        look: 'count',
        text: `${count} ×`,
        x: viewport.scale * (x + half) + viewport.x + 8,
        y: viewport.scale * (y - 1.4 * half) + viewport.y,
      };
    });
}

function writeTexts(group: SVGGElement, texts: readonly Text[]): void {
  const elements = [...group.querySelectorAll('text:not(.scale)')];
  for (const [i, { look, text, x, y }] of texts.entries()) {
    const element = elements[i] ?? group.appendChild(document.createElementNS(SVG, 'text'));
    attribute(element, 'class', look);
    attribute(element, 'x', x.toFixed(1));
    attribute(element, 'y', y.toFixed(1));
    if (element.textContent !== text) element.textContent = text;
  }
  for (const element of elements.slice(texts.length)) element.remove();
}

/** A bar of a round length at the lower left. */
function drawScale(group: SVGGElement, { viewport, size }: Over): void {
  const length = roundLength(SCALE_PX / viewport.scale);
  const [x, y] = [14, size.height - 14];
  const end = x + length * viewport.scale;
  const path = group.querySelector('path.scale') ?? group.appendChild(created('path'));
  const label = group.querySelector('text.scale') ?? group.appendChild(created('text'));
  attribute(path, 'd', `M${x} ${y - 4}V${y}H${end.toFixed(1)}V${y - 4}`);
  attribute(label, 'x', String(x + 4));
  attribute(label, 'y', String(y - 6));
  const text = `${length} mm`;
  if (label.textContent !== text) label.textContent = text;
}

function created(tag: 'path' | 'text'): SVGElement {
  const element = document.createElementNS(SVG, tag);
  element.setAttribute('class', 'scale');
  return element;
}

const SCALE_PX = 120;

/** The greatest of 1, 2 and 5 times a power of ten that is not above `length`; mm. */
export function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length));
  const factor = [5, 2, 1].find((candidate) => candidate * power <= length) ?? 1;
  return Number((factor * power).toPrecision(1));
}
