/** Marks as elements of an SVG: each mark keeps its element from picture to picture, and an attribute is only written where it changed. */
import type { Mark, Pen } from './mark.ts';
import type { Pose } from './pose.ts';

export const SVG = 'http://www.w3.org/2000/svg';

/** An element with the pen that draws it. */
export interface Drawn {
  readonly element: SVGElement;
  readonly pen: Pen;
  mark: Pick<Mark, 'place' | 'moves' | 'from' | 'title'>;
  /** Where what it follows from is told: what it was placed by. */
  placed: { readonly from: readonly number[]; readonly pixel: number } | undefined;
}

/** Writes its geometry, unless what it follows from is what it was when it was written last. */
export function placeDrawn(drawn: Drawn, pose: Pose): void {
  const { from, place } = drawn.mark;
  const { pixel } = pose;
  const { placed } = drawn;
  if (from !== undefined && placed?.pixel === pixel && from.every((figure, i) => Object.is(figure, placed.from[i]))) return;
  drawn.placed = from && { from, pixel };
  place(pose, drawn.pen);
}

export function penFor(element: SVGElement): Pen {
  let d: string | undefined;
  let isStanding = false;
  let [cx, cy, r] = [NaN, NaN, NaN];
  return {
    path: (text) => {
      if (text === d) return;
      d = text;
      element.setAttribute('d', text);
    },
    circle: (x, y, radius) => {
      if (x !== cx) element.setAttribute('cx', thousandths(x));
      if (y !== cy) element.setAttribute('cy', thousandths(y));
      if (radius !== r) element.setAttribute('r', thousandths(radius));
      [cx, cy, r] = [x, y, radius];
    },
    stands: (yes) => {
      if (yes === isStanding) return;
      isStanding = yes;
      element.classList.toggle('stands', yes);
    },
  };
}

const thousandths = (value: number): string => (Math.round(value * 1000) / 1000).toString();

/**
 * Makes the children of `parent` those of `marks`, in their order, from what is in `known` where the key and the tag are the same.
 *
 * @returns the same elements by key, for the next time
 */
export function drawMarks(parent: Element, marks: readonly Mark[], known: ReadonlyMap<string, Drawn>): Map<string, Drawn> {
  const drawn = new Map<string, Drawn>();
  let next: Node | null = parent.firstChild;
  for (const mark of marks) {
    const before = known.get(mark.key);
    const entry = before?.element.tagName === mark.tag ? before : create(mark.tag);
    if (entry.mark.title !== mark.title) entitle(entry.element, mark.title);
    entry.mark = mark;
    attribute(entry.element, 'class', mark.look);
    attribute(entry.element, 'data-name', mark.name);
    // The class was written anew.
    entry.pen.stands(false);
    if (entry.element === next) next = next.nextSibling;
    else parent.insertBefore(entry.element, next);
    drawn.set(mark.key, entry);
  }
  while (next !== null) {
    const gone: Node = next;
    next = next.nextSibling;
    parent.removeChild(gone);
  }
  return drawn;
}

function create(tag: string): Drawn {
  const element = document.createElementNS(SVG, tag);
  return { element, pen: penFor(element), mark: { moves: false, place: () => undefined }, placed: undefined };
}

function entitle(element: SVGElement, title: string | undefined): void {
  element.replaceChildren();
  if (title === undefined) return;
  const child = document.createElementNS(SVG, 'title');
  child.textContent = title;
  element.append(child);
}

/** Absent where undefined. */
export function attribute(element: Element, name: string, value: string | undefined): void {
  if (value === undefined) element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
