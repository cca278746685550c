/** Names beside their parts: where each stands so that none lies on another, on the screen. */
import type { Size } from './viewport.ts';

export interface Label {
  readonly key: string;
  readonly text: string;
  /** Place of the part, px. */
  readonly x: number;
  readonly y: number;
}

export interface PlacedLabel extends Label {
  /** Left end of the text's baseline, px. */
  readonly left: number;
  readonly baseline: number;
  /** Where a line from the part meets the text, px; undefined where the text stands beside its part. */
  readonly leader: { readonly x: number; readonly y: number } | undefined;
}

/** px */
export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** From a part to the upper left of its name, px; `none` where no place was free for it. */
export type Way = { readonly dx: number; readonly dy: number } | 'none';

export interface Room {
  readonly size: Size;
  /** Height of a line of text, px. */
  readonly height: number;
  /** Breadth of a text, px. */
  readonly measure: (text: string) => number;
  /** What is written there already. */
  readonly taken: readonly Rect[];
  /**
   * Where each name stands about its part, by its key: it stays there while its part moves, unless it would lie on something. One that had
   * no place is not looked for again until it is taken out.
   */
  readonly ways: Map<string, Way>;
}

/**
 * Each at the nearest place where it is all on the screen and meets neither another nor, if that can be had, the place of another part.
 *
 * @returns in the same order, without those for which there is no such place
 */
export function placeLabels(labels: readonly Label[], { size, height, measure, taken, ways }: Room): readonly PlacedLabel[] {
  const texts = [...taken];
  return labels.flatMap((label): readonly PlacedLabel[] => {
    const before = ways.get(label.key);
    if (before === 'none') return [];
    const width = measure(label.text);
    const rectAt = (dx: number, dy: number): Rect => ({
      left: label.x + dx,
      top: label.y + dy,
      right: label.x + dx + width,
      bottom: label.y + dy + height,
    });
    const isFree = (rect: Rect) => isWithin(rect, size) && !texts.some((other) => meet(rect, other));
    const isClear = (rect: Rect) => isFree(rect) && !labels.some((other) => other !== label && isOn(rect, other));
    const stays = before !== undefined && isFree(rectAt(before.dx, before.dy));
    const tries = stays ? [] : triesFor(label, width, height, size);
    const way = stays
      ? before
      : (tries.find(({ dx, dy }) => isClear(rectAt(dx, dy))) ?? tries.find(({ dx, dy }) => isFree(rectAt(dx, dy))));
    ways.set(label.key, way ?? 'none');
    if (way === undefined) return [];
    const rect = rectAt(way.dx, way.dy);
    texts.push(rect);
    return [{ ...label, left: rect.left, baseline: rect.bottom - height * DESCENT, leader: leaderTo(rect, label) }];
  });
}

/** Those that had no place are looked for again. */
export function forgetNone(ways: Map<string, Way>): void {
  for (const [key, way] of ways) if (way === 'none') ways.delete(key);
}

interface Try {
  readonly dx: number;
  readonly dy: number;
}

/** Places for a name, the nearest first; at the edge of the screen those that would be cut are moved in. */
function triesFor({ x, y }: Label, width: number, height: number, size: Size): readonly Try[] {
  const tries = NEAR.map(([right, down, share]): Try => ({ dx: right - share * width, dy: down - height / 2 }));
  const within = (at: number, room: number) => Math.max(0, Math.min(at, room));
  for (let ring = 1; ring <= RINGS; ring++) {
    for (let i = 0; i < TURNS; i++) {
      const angle = -Math.PI / 2 + (2 * Math.PI * i) / TURNS;
      // An ellipse, because a text is broader than it is high.
      const left = x + Math.cos(angle) * (width / 2 + RING_PX * ring) - width / 2;
      const top = y + Math.sin(angle) * RING_PX * (ring + 1) - height / 2;
      tries.push({ dx: within(left, size.width - width) - x, dy: within(top, size.height - height) - y });
    }
  }
  return tries;
}

/** From the part, px, to the middle of a text's height, and the share of the text that lies to the left of that. */
const NEAR: readonly (readonly [number, number, number])[] = [
  [10, -12, 0],
  [-10, -12, 1],
  [12, 12, 0],
  [-12, 12, 1],
  [0, -26, 0.5],
  [0, 26, 0.5],
];
const RINGS = 16;
const RING_PX = 14;
const TURNS = 24;

const isWithin = ({ left, top, right, bottom }: Rect, { width, height }: Size): boolean =>
  left >= 0 && top >= 0 && right <= width && bottom <= height;

const meet = (a: Rect, b: Rect): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a text would lie on the pin or pivot of a part. */
const isOn = ({ left, top, right, bottom }: Rect, { x, y }: Label): boolean =>
  x > left - PIN_PX && x < right + PIN_PX && y > top - PIN_PX && y < bottom + PIN_PX;

const PIN_PX = 4;

function leaderTo({ left, top, right, bottom }: Rect, { x, y }: Label): PlacedLabel['leader'] {
  const at = { x: Math.min(Math.max(x, left), right), y: Math.min(Math.max(y, top), bottom) };
  return Math.hypot(at.x - x, at.y - y) > BESIDE_PX ? at : undefined;
}

/** Nearer than this a text needs no line to its part, px. */
const BESIDE_PX = 22;

const DESCENT = 0.25;
