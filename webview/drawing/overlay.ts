/** What is written over the drawing, in pixels of the screen: names, where a part has no position and why, and the scale. */
import { describeStops, percent } from './describe.ts';
import { placeLabels, type Label, type Rect, type Way } from './labels.ts';
import { attribute, SVG } from './paper.ts';
import type { Pose } from './pose.ts';
import { onPaper } from './projection.ts';
import type { Scene } from './scene.ts';
import { keyOfPart } from './sheet.ts';
import { isHere, kindOf } from './symbols/gaps.ts';
import type { Size, Viewport } from './viewport.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface Over {
  readonly scene: Scene;
  readonly pose: Pose;
  readonly travel: number;
  readonly viewport: Viewport;
  readonly size: Size;
  /** The buttons, which nothing is to be written under; undefined where there are none. */
  readonly buttons: Rect | undefined;
  readonly isNamed: boolean;
  /** Family of the font that names are written in. */
  readonly family: string;
  /** Key of the part that lights up, as `keyOfPart` says; undefined for none. */
  readonly litKey: string | undefined;
  /** Where each name stands about its part; emptied when the scale or the room changes. */
  readonly ways: Map<string, Way>;
}

export function drawOverlay(group: SVGGElement, over: Over): void {
  const bar = scaleBar(over);
  const stopped = stops(over, bar);
  const gaps = gapFigures(over);
  const named = over.isNamed ? names(over, bar, stopped, gaps) : { texts: platesCounts(over), leaders: '' };
  writeTexts(group, [...named.texts, ...gaps, ...stopped]);
  writePath(group, 'leader', named.leaders);
  writeScale(group, bar);
}

interface Text {
  readonly look: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** px; of the font that `drawing.css` gives. */
const LINE_PX = 14;
const FONT_PX = 12;
const LETTER_PX = 6.4;

function names(
  over: Over,
  bar: Bar,
  stopped: readonly Text[],
  gaps: readonly Text[],
): { readonly texts: readonly Text[]; readonly leaders: string } {
  const labels = labelsOf(over);
  const { size, ways, buttons } = over;
  const taken = [bar.rect, ...[...stopped, ...gaps].map(rectOf), ...(buttons === undefined ? [] : [buttons])];
  const room = { size, height: LINE_PX, measure: measureIn(over.family), ways };
  const first = placeLabels(labels, { ...room, taken });
  const noteOf = (left: number): readonly Text[] => lowerLeft(over, bar, [WORDS.namesWithoutRoom(left)], 'unnamed', stopped.length);
  const isWhole = first.length === labels.length;
  // What says that some have none takes room itself, from others it may be: those are counted too.
  const placed = isWhole ? first : placeLabels(labels, { ...room, taken: [...taken, ...noteOf(labels.length).map(rectOf)] });
  const note = isWhole ? [] : noteOf(labels.length - placed.length);
  const texts = placed.map(({ text, left: x, baseline: y }): Text => ({ look: 'name', text, x, y }));
  return {
    texts: [...texts, ...note],
    leaders: placed
      .map(({ x, y, leader }) =>
        leader === undefined ? '' : `M${x.toFixed(1)} ${y.toFixed(1)}L${leader.x.toFixed(1)} ${leader.y.toFixed(1)}`,
      )
      .join(''),
  };
}

/** Of all parts that are on the screen. */
function labelsOf({ scene, pose, viewport, size }: Over): readonly Label[] {
  const spot = { x: 0, y: 0 };
  return scene.symbols.flatMap((symbol): readonly Label[] => {
    symbol.anchor(pose, spot);
    const name = symbol.part?.name ?? symbol.marks[0]?.name;
    if (name === undefined || Number.isNaN(spot.x)) return [];
    const x = viewport.scale * spot.x + viewport.x;
    const y = viewport.scale * spot.y + viewport.y;
    if (x < 0 || y < 0 || x > size.width || y > size.height) return [];
    const count = symbol.part?.kind === 'plates' ? scene.sheet.picture.plates.find((plates) => plates.name === name)?.count : undefined;
    return [{ key: symbol.key, text: count === undefined || count === 1 ? name : WORDS.nameAndCount(name, count), x, y }];
  });
}

const widths = new Map<string, number>();
let context: CanvasRenderingContext2D | null | undefined;

/** px, with room for the halo; measured once for each font and text. */
function measureIn(family: string): (text: string) => number {
  const font = `${FONT_PX}px ${family}`;
  return (text) => {
    const known = widths.get(font + text);
    if (known !== undefined) return known;
    context ??= document.createElement('canvas').getContext('2d');
    if (context !== null) context.font = font;
    const width = (context?.measureText(text).width ?? text.length * LETTER_PX) + 4;
    widths.set(font + text, width);
    return width;
  };
}

/** Beside the dimension line of each least gap that is seen. */
function gapFigures({ scene, travel, viewport, litKey }: Over): readonly Text[] {
  const { picture, view } = scene.sheet;
  return picture.gaps
    .filter((gap) => isHere(gap, travel) || gap.between.some((part) => keyOfPart(picture, part) === litKey))
    .map((gap): Text => {
      const [a, b] = [onPaper(view, gap.from), onPaper(view, gap.to)];
      const x = viewport.scale * ((a.x + b.x) / 2) + viewport.x;
      const y = viewport.scale * ((a.y + b.y) / 2) + viewport.y;
      const text = isHere(gap, travel) ? gap.text : WORDS.gapAt(gap.text, percent(gap.travel));
      return { look: `gap-figure ${kindOf(gap)}`, text, x: x + 8, y: y - 6 };
    });
}

/** Why what stands still does not move. */
const stops = (over: Over, bar: Bar): readonly Text[] =>
  lowerLeft(
    over,
    bar,
    describeStops(over.scene.sheet.picture, over.travel).map(({ text }) => text),
    'stopped',
    0,
  );

/** At the lower left, over the scale and so many lines above it, in as many lines as the breadth needs. */
function lowerLeft({ size }: Over, { y }: Bar, texts: readonly string[], look: string, above: number): readonly Text[] {
  const lines = texts.flatMap((text) => wrapped(text, (size.width - 28) / LETTER_PX));
  return lines.map((text, i) => ({ look, text, x: LEFT_PX, y: y - 28 - (above + lines.length - 1 - i) * LINE_PX }));
}

const rectOf = ({ text, x, y }: Text): Rect => ({ left: x, top: y - LINE_PX + 3, right: x + text.length * LETTER_PX, bottom: y + 3 });

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
        text: WORDS.platesCount(count),
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

/** A bar of a round length at the lower left, over the buttons where these reach so far. */
interface Bar {
  readonly length: number;
  readonly end: number;
  /** Of its foot, px. */
  readonly y: number;
  readonly rect: Rect;
}

function scaleBar({ viewport, size, buttons }: Over): Bar {
  const length = roundLength(SCALE_PX / viewport.scale);
  const end = LEFT_PX + length * viewport.scale;
  const y = size.height - LEFT_PX - liftOver(buttons, size);
  return { length, end, y, rect: { left: LEFT_PX, top: y - 20, right: Math.max(end, LEFT_PX + 60), bottom: y + 2 } };
}

/** How much higher the scale stands than at the lower edge, px. */
export const liftOver = (buttons: Rect | undefined, { height }: Size): number =>
  buttons !== undefined && buttons.left < LEFT_PX + SCALE_PX + 8 ? Math.max(0, height - LEFT_PX - buttons.top + 8) : 0;

function writeScale(group: SVGGElement, { length, end, y }: Bar): void {
  writePath(group, 'scale', `M${LEFT_PX} ${y - 4}V${y}H${end.toFixed(1)}V${y - 4}`);
  const label = group.querySelector('text.scale') ?? group.appendChild(created('text', 'scale'));
  attribute(label, 'x', String(LEFT_PX + 4));
  attribute(label, 'y', String(y - 6));
  const text = WORDS.scale(length);
  if (label.textContent !== text) label.textContent = text;
}

function writePath(group: SVGGElement, look: string, d: string): void {
  // In front come the texts, so that no line crosses one.
  const path = group.querySelector(`path.${look}`) ?? group.insertBefore(created('path', look), group.firstChild);
  attribute(path, 'd', d);
}

function created(tag: 'path' | 'text', look: string): SVGElement {
  const element = document.createElementNS(SVG, tag);
  element.setAttribute('class', look);
  return element;
}

const SCALE_PX = 120;
const LEFT_PX = 14;

/** The greatest of 1, 2 and 5 times a power of ten that is not above `length`; mm. */
export function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length));
  const factor = [5, 2, 1].find((candidate) => candidate * power <= length) ?? 1;
  return Number((factor * power).toPrecision(1));
}
