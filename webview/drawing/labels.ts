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

/** From a part to the upper left of its name, px, and whether the name lay on nothing there. */
export interface Way {
  readonly dx: number;
  readonly dy: number;
  readonly isFree: boolean;
}

export interface Room {
  readonly size: Size;
  /** Height of a line of text, px. */
  readonly height: number;
  /** Breadth of a text, px. */
  readonly measure: (text: string) => number;
  /** What is written there already. */
  readonly taken: readonly Rect[];
  /** Where each name stands about its part, by its key: it stays there while its part moves, unless it would lie on something. */
  readonly ways: Map<string, Way>;
}

/**
 * Each at the nearest place where it is all on the screen and meets neither another nor, if that can be had, the place of another part.
 * Where there is no such place it stands beside its part, on the screen, over what is there.
 */
export function placeLabels(labels: readonly Label[], { size, height, measure, taken, ways }: Room): readonly PlacedLabel[] {
  const texts = [...taken];
  return labels.map((label) => {
    const width = measure(label.text);
    const rectAt = (dx: number, dy: number): Rect => ({
      left: label.x + dx,
      top: label.y + dy,
      right: label.x + dx + width,
      bottom: label.y + dy + height,
    });
    const isFree = (rect: Rect) => isWithin(rect, size) && !texts.some((other) => meet(rect, other));
    const isClear = (rect: Rect) => isFree(rect) && !labels.some((other) => other !== label && isOn(rect, other));
    const before = ways.get(label.key);
    const stays = before !== undefined && (!before.isFree || isFree(rectAt(before.dx, before.dy)));
    const way = stays
      ? before
      : (found(width, height, (dx, dy) => isClear(rectAt(dx, dy))) ?? found(width, height, (dx, dy) => isFree(rectAt(dx, dy))));
    const { dx, dy, isFree: free } = way ?? beside(label, width, height, size);
    ways.set(label.key, { dx, dy, isFree: free });
    const rect = rectAt(dx, dy);
    texts.push(rect);
    return { ...label, left: rect.left, baseline: rect.bottom - height * DESCENT, leader: leaderTo(rect, label) };
  });
}

function found(width: number, height: number, holds: (dx: number, dy: number) => boolean): Way | undefined {
  for (const [x, y, share] of NEAR) {
    const [dx, dy] = [x - share * width, y - height / 2];
    if (holds(dx, dy)) return { dx, dy, isFree: true };
  }
  for (let ring = 1; ring <= RINGS; ring++) {
    for (let i = 0; i < TURNS; i++) {
      const angle = -Math.PI / 2 + (2 * Math.PI * i) / TURNS;
      // An ellipse, because a text is broader than it is high.
      const dx = Math.cos(angle) * (width / 2 + RING_PX * ring) - width / 2;
      const dy = Math.sin(angle) * RING_PX * (ring + 1) - height / 2;
      if (holds(dx, dy)) return { dx, dy, isFree: true };
    }
  }
  return undefined;
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

function beside({ x, y }: Label, width: number, height: number, size: Size): Way {
  const left = Math.max(0, Math.min(x + 10, size.width - width));
  const top = Math.max(0, Math.min(y - 12 - height / 2, size.height - height));
  return { dx: left - x, dy: top - y, isFree: false };
}

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
