/** Names beside their parts: where each stands so that none lies on another, on the screen. */

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
}

/**
 * The first of eight places around the part where it meets no other and is all on the screen; else the first.
 *
 * @param height of a text, px
 * @param room breadth of the drawing, px
 * @param measure breadth of a text, px
 * @param ways which of the eight each label has taken, by its key; a label that has one keeps it, so that none jumps while its part moves
 */
export function placeLabels(
  labels: readonly Label[],
  height: number,
  room: number,
  measure: (text: string) => number,
  ways: Map<string, number>,
): readonly PlacedLabel[] {
  const taken: Rect[] = [];
  return labels.map((label) => {
    const width = measure(label.text);
    const rectOf = ([dx, dy, share]: (typeof WAYS)[number]): Rect => ({
      left: label.x + dx - share * width,
      top: label.y + dy - height / 2,
      right: label.x + dx + (1 - share) * width,
      bottom: label.y + dy + height / 2,
    });
    const isFree = (rect: Rect) => rect.left >= 0 && rect.right <= room && !taken.some((other) => meet(rect, other));
    const way =
      ways.get(label.key) ??
      Math.max(
        WAYS.findIndex((candidate) => isFree(rectOf(candidate))),
        0,
      );
    ways.set(label.key, way);
    const rect = rectOf(WAYS[way]!);
    taken.push(rect);
    return { ...label, left: rect.left, baseline: rect.bottom - height * DESCENT };
  });
}

interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const meet = (a: Rect, b: Rect): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** From the part, px, and the share of the text that lies to the left of that. */
const WAYS: readonly (readonly [number, number, number])[] = [
  [10, -12, 0],
  [-10, -12, 1],
  [12, 12, 0],
  [-12, 12, 1],
  [0, -26, 0.5],
  [0, 26, 0.5],
  [16, -38, 0],
  [-16, 38, 1],
];

const DESCENT = 0.25;
