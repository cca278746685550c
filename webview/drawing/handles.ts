/** Handles of the drawing: rings about the places that can be moved. The Tab key finds one of them, the arrows lead from it to the others. */
import type { Handle, Picture } from '../../src/protocol/picture.ts';
import type { PartKey } from '../../src/protocol/report.ts';
import { handleInSpace, spotOfHandle } from './drag.ts';
import { attribute, penFor, SVG } from './paper.ts';
import type { Pose } from './pose.ts';
import type { Spot } from './projection.ts';
import { keyOfPart, type Sheet } from './sheet.ts';
import { isPinPlace } from './turning.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface Handles {
  show(picture: Picture): void;
  /** @param scale pixels a millimetre */
  place(sheet: Sheet, pose: Pose, scale: number): void;
  /** Where a handle is held by hand, mm, whatever the picture says; undefined where none is. Seen from the next `place` on. */
  hold(path: string | undefined, spot: Spot | undefined): void;
  /** The Tab key finds one handle: of this part the first, of none the first of all; one that has the focus stays it. */
  tabTo(key: string | undefined): void;
  /** Puts the focus on the handle after this one or before it, round and round. */
  walk(from: Handle, way: 1 | -1): void;
  at(target: EventTarget | null): Handle | undefined;
  /** Puts the focus on a handle; nothing where there is none. */
  focus(path: string): void;
}

interface Entry {
  readonly handle: Handle;
  readonly element: SVGElement;
  readonly pen: ReturnType<typeof penFor>;
}

export function createHandles(group: SVGGElement): Handles {
  let entries: readonly Entry[] = [];
  let picture: Picture | undefined;
  let held: { readonly path: string; readonly spot: Spot } | undefined;
  let tabKey: string | undefined;

  const entryOf = (path: string | null | undefined) => entries.find(({ handle }) => handle.path === path);

  const tell = ({ handle, element }: Entry) => {
    const isHeld = handle.path === held?.path;
    element.classList.toggle('held', isHeld);
    attribute(element, 'aria-pressed', String(isHeld));
  };

  const create = (handle: Handle): Entry => {
    const element = group.appendChild(document.createElementNS(SVG, 'circle'));
    attribute(element, 'class', 'handle');
    attribute(element, 'data-path', handle.path);
    attribute(element, 'role', 'button');
    const entry = { handle, element, pen: penFor(element) };
    tell(entry);
    return entry;
  };

  const makeStop = (stop: Entry | undefined) => {
    for (const entry of entries) attribute(entry.element, 'tabindex', entry === stop ? '0' : '-1');
  };

  const tabTo = (key: string | undefined) => {
    tabKey = key;
    const focused = entries.find(({ element }) => element === document.activeElement);
    const own = picture && key !== undefined ? entries.find(({ handle }) => belongsTo(picture!, handle, key)) : undefined;
    makeStop(focused ?? own ?? entries[0]);
  };

  return {
    show: (next) => {
      picture = next;
      const before = new Map(entries.map((entry) => [entry.handle.path, entry]));
      entries = next.handles.map((handle) => {
        const known = before.get(handle.path);
        before.delete(handle.path);
        const entry = known === undefined ? create(handle) : { ...known, handle };
        if (known?.handle.label !== handle.label) attribute(entry.element, 'aria-label', WORDS.move(handle.label));
        return entry;
      });
      for (const { element } of before.values()) element.remove();
      tabTo(tabKey);
    },
    place: ({ view }, pose, scale) => {
      for (const { handle, pen } of entries) {
        const rotation = isPinPlace(handle.at) ? pose.rotation[handle.at.lever]! : 0;
        const { x, y } = held?.path === handle.path ? held.spot : spotOfHandle(view, handle, rotation);
        pen.circle(x, y, HANDLE_PX / scale);
      }
    },
    hold: (path, spot) => {
      const before = held?.path;
      held = path === undefined || spot === undefined ? undefined : { path, spot };
      if (held?.path !== before) for (const entry of entries) tell(entry);
    },
    tabTo,
    walk: (from, way) => {
      const at = entries.findIndex(({ handle }) => handle.path === from.path);
      const next = entries[(at + way + entries.length) % entries.length];
      makeStop(next);
      next?.element.focus();
    },
    at: (target) => entryOf(target instanceof SVGElement ? target.getAttribute('data-path') : undefined)?.handle,
    focus: (path) => {
      const entry = entryOf(path);
      if (entry === undefined) return;
      makeStop(entry);
      entry.element.focus();
    },
  };
}

const HANDLE_PX = 8;

/** A lever's pivot and pins, a cable's housing ends; and what stands under a lever's pivot, whatever it is called. */
function belongsTo(picture: Picture, handle: Handle, key: string): boolean {
  const place = handleInSpace(handle, 0);
  const isOf = (kind: PartKey['kind'], name: string) => keyOfPart(picture, { kind, name }) === key;
  return (
    picture.levers.some(
      ({ name, pivot }, i) =>
        isOf('lever', name) && ((isPinPlace(handle.at) && handle.at.lever === i) || pivot.every((figure, k) => figure === place[k])),
    ) || picture.cables.some(({ name }) => isOf('cable', name) && handle.path.startsWith(`cables.${name}.`))
  );
}
