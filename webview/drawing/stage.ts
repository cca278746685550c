/**
 * The drawing in the page's SVG. `show` takes a picture; `poseTo` moves what follows the pedal and does nothing else; `look` changes what
 * part of the paper is seen. Parts have a grip each, an unseen broad line that the pointer and the keyboard find.
 */
import type { Handle, Picture } from '../../src/protocol/picture.ts';
import type { PartKey, ReportedPart } from '../../src/protocol/report.ts';
import { describePart } from './describe.ts';
import { handleInSpace, spotOfHandle } from './drag.ts';
import { LAYERS, type Mark, type Symbol } from './mark.ts';
import { drawOverlay } from './overlay.ts';
import { attribute, drawMarks, penFor, SVG, type Drawn } from './paper.ts';
import { createPose, poseAt, type Pose } from './pose.ts';
import type { Spot } from './projection.ts';
import type { Scene } from './scene.ts';
import { keyOfPart } from './sheet.ts';
import { isPinPlace } from './turning.ts';
import { weightIn, type Size, type Viewport } from './viewport.ts';

export interface Stage {
  /** @param parts in load-path order; what can be chosen by the keyboard comes in this order */
  show(scene: Scene, parts: readonly ReportedPart[]): void;
  /** @param travel of the pedal, a fraction */
  poseTo(travel: number): void;
  look(viewport: Viewport, size: Size): void;
  /** @param key of the part that lights up, as `keyOfPart` says; undefined for none */
  light(key: string | undefined): void;
  nameAll(yes: boolean): void;
  /** Which handles the Tab key finds: those of this part, or all. */
  tabThrough(key: string | undefined): void;
  /** Where a handle is held by hand, whatever the picture says; undefined where none is. */
  hold(path: string | undefined, spot: Spot | undefined): void;
  scene(): Scene | undefined;
  pose(): Pose | undefined;
  viewport(): Viewport;
  symbolAt(target: EventTarget | null): Symbol | undefined;
  handleAt(target: EventTarget | null): Handle | undefined;
  /** Puts the focus on a handle; nothing where there is none. */
  focus(path: string): void;
  grips(): readonly SVGElement[];
}

/** @param svg with the groups that `Drawing` renders */
export function createStage(svg: SVGSVGElement): Stage {
  const group = (name: string) => svg.querySelector<SVGGElement>(`.${name}`)!;
  const [paper, gripGroup, handleGroup, overlay] = [group('paper'), group('grips'), group('handles'), group('overlay')];
  const layers = LAYERS.map((name) => {
    const element = document.createElementNS(SVG, 'g');
    element.setAttribute('class', name);
    paper.append(element);
    return { name, element, drawn: new Map<string, Drawn>() };
  });
  let scene: Scene | undefined;
  let pose: Pose | undefined;
  let viewport: Viewport = { scale: 1, x: 0, y: 0 };
  let size: Size = { width: 1, height: 1 };
  let travel = 0;
  let litKey: string | undefined;
  let tabKey: string | undefined;
  let isNamed = false;
  const ways = new Map<string, number>();
  /** Set while grips and handles wait to be moved after what they belong to. */
  let follow: ReturnType<typeof setTimeout> | undefined;
  let held: { readonly path: string; readonly spot: Spot } | undefined;
  let moving: readonly Drawn[] = [];
  let grips = new Map<string, Drawn>();
  let handles: readonly { readonly handle: Handle; readonly element: SVGElement }[] = [];
  const symbols = new Map<string, Symbol>();
  /** Marks of a part, to light them. */
  const byPart = new Map<string, SVGElement[]>();

  function show(next: Scene, parts: readonly ReportedPart[]): void {
    scene = next;
    const { picture } = next.sheet;
    pose = createPose(picture);
    const marks = [...next.backdrop, ...next.symbols.flatMap(titled)];
    for (const layer of layers) {
      const inLayer = marks.filter((mark) => mark.layer === layer.name);
      layer.drawn = drawMarks(layer.element, inLayer, layer.drawn);
    }
    sortParts(next, picture);
    showGrips(next, picture, parts);
    showHandles(picture.handles);
    moving = layers.flatMap(({ drawn }) => [...drawn.values()]).filter(({ mark }) => mark.moves);
    placeAll();
    light(litKey);
    tabThrough(tabKey);
  }

  function sortParts({ symbols: all }: Scene, picture: Picture): void {
    symbols.clear();
    byPart.clear();
    for (const symbol of all) {
      symbols.set(symbol.key, symbol);
      const key = symbol.part === undefined ? symbol.key : keyOfPart(picture, symbol.part);
      const elements = byPart.get(key) ?? [];
      for (const { key: mark, layer } of symbol.marks) elements.push(layers[LAYERS.indexOf(layer)]!.drawn.get(mark)!.element);
      byPart.set(key, elements);
    }
  }

  function showGrips({ symbols: all }: Scene, picture: Picture, parts: readonly ReportedPart[]): void {
    const rank = new Map(parts.map((part, i) => [keyOfPart(picture, part), i]));
    const reported = new Map(parts.map((part) => [keyOfPart(picture, part), part]));
    const rankOf = (part: PartKey) => rank.get(keyOfPart(picture, part)) ?? parts.length;
    const chosen = all
      .filter(({ part, grip }) => part !== undefined && grip !== undefined)
      .sort((a, b) => rankOf(a.part!) - rankOf(b.part!));
    const focused = document.activeElement;
    const marks = chosen.map(({ key, grip }): Mark => ({ key, layer: 'pins', tag: 'path', look: 'grip', moves: true, place: grip! }));
    grips = drawMarks(gripGroup, marks, grips);
    const first = [...grips.values()].some(({ element }) => element === focused) ? focused : grips.values().next().value?.element;
    for (const { key, part } of chosen) {
      const { element } = grips.get(key)!;
      attribute(element, 'data-key', key);
      attribute(element, 'role', 'button');
      attribute(element, 'tabindex', element === first ? '0' : '-1');
      attribute(element, 'aria-label', describePart(part!, reported.get(keyOfPart(picture, part!))));
    }
  }

  function showHandles(all: readonly Handle[]): void {
    const before = new Map(handles.map(({ handle, element }) => [handle.path, element]));
    handles = all.map((handle) => {
      const element = before.get(handle.path) ?? document.createElementNS(SVG, 'circle');
      before.delete(handle.path);
      attribute(element, 'class', 'handle');
      attribute(element, 'data-path', handle.path);
      attribute(element, 'role', 'button');
      attribute(element, 'aria-label', `Move ${handle.label}`);
      if (element.parentNode === null) handleGroup.append(element);
      return { handle, element };
    });
    for (const element of before.values()) element.remove();
  }

  function placeAll(): void {
    if (scene === undefined || pose === undefined) return;
    pose.pixel = weightIn(size) / viewport.scale;
    poseAt(pose, scene.sheet.picture, travel);
    for (const { drawn } of layers) for (const { mark, pen } of drawn.values()) mark.place(pose, pen);
    placeGrips();
    ways.clear();
    drawOver();
  }

  /** What cannot be seen need not follow each frame. */
  function placeGrips(): void {
    clearTimeout(follow);
    follow = undefined;
    if (pose === undefined) return;
    for (const { mark, pen } of grips.values()) mark.place(pose, pen);
    placeHandles();
  }

  function placeHandles(): void {
    if (scene === undefined || pose === undefined) return;
    const { view } = scene.sheet;
    for (const { handle, element } of handles) {
      const rotation = isPinPlace(handle.at) ? pose.rotation[handle.at.lever]! : 0;
      const { x, y } = held?.path === handle.path ? held.spot : spotOfHandle(view, handle, rotation);
      handlePen(element).circle(x, y, HANDLE_PX / viewport.scale);
    }
  }

  function drawOver(): void {
    if (scene !== undefined && pose !== undefined) drawOverlay(overlay, { scene, pose, travel, viewport, size, isNamed, ways });
  }

  function poseTo(next: number): void {
    travel = next;
    if (scene === undefined || pose === undefined) return;
    poseAt(pose, scene.sheet.picture, travel);
    for (let i = 0; i < moving.length; i++) moving[i]!.mark.place(pose, moving[i]!.pen);
    follow ??= setTimeout(placeGrips, FOLLOW_MS);
    drawOver();
  }

  function look(next: Viewport, room: Size): void {
    const isSame = next.scale === viewport.scale && next.x === viewport.x && next.y === viewport.y;
    if (isSame && room.width === size.width && room.height === size.height) return;
    viewport = next;
    size = room;
    const { scale, x, y } = viewport;
    for (const element of [paper, gripGroup, handleGroup]) element.setAttribute('transform', `matrix(${scale} 0 0 ${scale} ${x} ${y})`);
    svg.style.setProperty('--weight', weightIn(size).toFixed(2));
    const pattern = svg.querySelector('pattern');
    pattern?.setAttribute('patternTransform', `scale(${1 / scale}) rotate(45)`);
    placeAll();
  }

  function light(key: string | undefined): void {
    for (const element of byPart.get(litKey ?? '') ?? []) element.classList.remove('lit');
    litKey = key;
    for (const element of byPart.get(litKey ?? '') ?? []) element.classList.add('lit');
  }

  function tabThrough(key: string | undefined): void {
    tabKey = key;
    const own = handles.filter(({ handle }) => belongsTo(handle, key));
    for (const entry of handles) attribute(entry.element, 'tabindex', own.length === 0 || own.includes(entry) ? '0' : '-1');
  }

  /** A lever's pivot and pins, a cable's housing ends; and what stands under a lever's pivot, whatever it is called. */
  function belongsTo(handle: Handle, key: string | undefined): boolean {
    if (scene === undefined || key === undefined) return false;
    const { picture } = scene.sheet;
    const place = handleInSpace(handle, 0);
    const isOf = (kind: PartKey['kind'], name: string) => keyOfPart(picture, { kind, name }) === key;
    return (
      picture.levers.some(
        ({ name, pivot }, i) =>
          isOf('lever', name) && ((isPinPlace(handle.at) && handle.at.lever === i) || pivot.every((figure, k) => figure === place[k])),
      ) || picture.cables.some(({ name }) => isOf('cable', name) && handle.path.startsWith(`cables.${name}.`))
    );
  }

  const keyUnder = (target: EventTarget | null, name: string) => (target instanceof SVGElement ? target.getAttribute(name) : null);

  return {
    show,
    poseTo,
    look,
    light,
    tabThrough,
    nameAll: (yes) => {
      isNamed = yes;
      drawOver();
    },
    hold: (path, spot) => {
      held = path === undefined || spot === undefined ? undefined : { path, spot };
      for (const { handle, element } of handles) element.classList.toggle('held', handle.path === held?.path);
      placeHandles();
    },
    scene: () => scene,
    pose: () => pose,
    viewport: () => viewport,
    symbolAt: (target) => symbols.get(keyUnder(target, 'data-key') ?? ''),
    handleAt: (target) => {
      const path = keyUnder(target, 'data-path');
      return handles.find(({ handle }) => handle.path === path)?.handle;
    },
    focus: (path) => handles.find(({ handle }) => handle.path === path)?.element.focus(),
    grips: () => [...grips.values()].map(({ element }) => element),
  };
}

/** The first mark of a symbol says what is schematic about it. */
function titled({ part, note, marks }: Symbol): readonly Mark[] {
  if (note === undefined) return marks;
  const title = part === undefined ? note : `${part.name}: ${note}`;
  return marks.map((mark, i) => (i === 0 ? { ...mark, title } : mark));
}

const pens = new WeakMap<SVGElement, ReturnType<typeof penFor>>();

function handlePen(element: SVGElement): ReturnType<typeof penFor> {
  const pen = pens.get(element) ?? penFor(element);
  pens.set(element, pen);
  return pen;
}

const HANDLE_PX = 8;

/** A tenth of a second: a pointer does not find its part much sooner. */
const FOLLOW_MS = 100;
