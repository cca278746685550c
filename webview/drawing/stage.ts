/**
 * The drawing in the page's SVG. `show` takes a picture; `poseTo` moves what follows the pedal and does nothing else; `look` changes what
 * part of the paper is seen. Parts have a grip each, an unseen broad line that the pointer and the keyboard find.
 */
import type { Picture } from '../../src/protocol/picture.ts';
import type { ReportedPart } from '../../src/protocol/report.ts';
import { describePart } from './describe.ts';
import { createHandles, type Handles } from './handles.ts';
import { LAYERS, type Mark, type Symbol } from './mark.ts';
import { forgetNone, type Rect, type Way } from './labels.ts';
import { drawOverlay } from './overlay.ts';
import { attribute, drawMarks, placeDrawn, SVG, type Drawn } from './paper.ts';
import { createPose, poseAt, poseInMotion, type Motion, type Pose } from './pose.ts';
import type { Spot } from './projection.ts';
import type { Scene } from './scene.ts';
import { keyOfPart } from './sheet.ts';
import { weightIn, type Size, type Viewport } from './viewport.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface Stage {
  /** @param parts in load-path order; what can be chosen by the keyboard comes in this order */
  show(scene: Scene, parts: readonly ReportedPart[]): void;
  /** @param travel of the pedal, a fraction */
  poseTo(travel: number): void;
  /** The levers follow a motion of their own, of this picture, until `poseTo` gives them back to the pedal. @param time s */
  poseIn(motion: Motion, time: number): void;
  /** @param key of a part that is gone, as `keyOfPart` says: it is not seen; undefined for none */
  lose(key: string | undefined): void;
  /** @param buttons where they stand, px; undefined where there are none */
  look(viewport: Viewport, size: Size, buttons: Rect | undefined): void;
  /** @param key of the part that lights up, as `keyOfPart` says; undefined for none */
  light(key: string | undefined): void;
  nameAll(yes: boolean): void;
  /** Where a handle is held by hand, whatever the picture says; undefined where none is. */
  hold(path: string | undefined, spot: Spot | undefined): void;
  scene(): Scene | undefined;
  pose(): Pose | undefined;
  viewport(): Viewport;
  symbolAt(target: EventTarget | null): Symbol | undefined;
  readonly handles: Handles;
  grips(): readonly SVGElement[];
}

/** @param svg with the groups that `Drawing` renders */
export function createStage(svg: SVGSVGElement): Stage {
  const group = (name: string) => svg.querySelector<SVGGElement>(`.${name}`)!;
  const [paper, gripGroup, overlay] = [group('paper'), group('grips'), group('overlay')];
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
  /** What the levers follow in the place of the pedal. */
  let own: { readonly motion: Motion; readonly time: number } | undefined;
  let lostKey: string | undefined;
  let litKey: string | undefined;
  let isNamed = false;
  const ways = new Map<string, Way>();
  let buttons: Rect | undefined;
  let family = '';
  /** Set while grips and handles wait to be moved after what they belong to. */
  let follow: ReturnType<typeof setTimeout> | undefined;
  let moving: readonly Drawn[] = [];
  let grips = new Map<string, Drawn>();
  const handles = createHandles(group('handles'));
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
    handles.show(picture);
    moving = layers.flatMap(({ drawn }) => [...drawn.values()]).filter(({ mark }) => mark.moves);
    placeAll();
    light(litKey);
    lose(lostKey);
  }

  function sortParts({ symbols: all, backdrop }: Scene, picture: Picture): void {
    symbols.clear();
    byPart.clear();
    for (const symbol of all) {
      symbols.set(symbol.key, symbol);
      const key = symbol.part === undefined ? symbol.key : keyOfPart(picture, symbol.part);
      const elements = byPart.get(key) ?? [];
      for (const { key: mark, layer } of symbol.marks) elements.push(layers[LAYERS.indexOf(layer)]!.drawn.get(mark)!.element);
      byPart.set(key, elements);
    }
    for (const { key: mark, layer, lights = [] } of backdrop) {
      for (const key of lights) {
        const elements = byPart.get(key) ?? [];
        elements.push(layers[LAYERS.indexOf(layer)]!.drawn.get(mark)!.element);
        byPart.set(key, elements);
      }
    }
  }

  function showGrips({ symbols: all }: Scene, picture: Picture, parts: readonly ReportedPart[]): void {
    const reported = new Map(parts.map((part, rank) => [keyOfPart(picture, part), { part, rank }]));
    const chosen = all
      .flatMap(({ key, part, grip }) =>
        part === undefined || grip === undefined ? [] : [{ key, part, grip, told: reported.get(keyOfPart(picture, part)) }],
      )
      .sort((a, b) => (a.told?.rank ?? parts.length) - (b.told?.rank ?? parts.length));
    const focused = document.activeElement;
    const marks = chosen.map(({ key, grip }): Mark => ({ key, layer: 'pins', tag: 'path', look: 'grip', moves: true, place: grip }));
    grips = drawMarks(gripGroup, marks, grips);
    const first = [...grips.values()].some(({ element }) => element === focused) ? focused : grips.values().next().value?.element;
    for (const { key, part, told } of chosen) {
      const { element } = grips.get(key)!;
      attribute(element, 'data-key', key);
      attribute(element, 'role', 'button');
      attribute(element, 'tabindex', element === first ? '0' : '-1');
      attribute(element, 'aria-label', describePart(part, told?.part));
    }
  }

  function placeAll(): void {
    if (scene === undefined || pose === undefined) return;
    pose.pixel = weightIn(size) / viewport.scale;
    pose.isSmall = scene.sheet.ornament * viewport.scale < SMALL_PX;
    svg.classList.toggle('small', pose.isSmall);
    fillPose(scene.sheet.picture, pose);
    for (const { drawn } of layers) for (const each of drawn.values()) placeDrawn(each, pose);
    placeGrips();
    drawOver();
  }

  function fillPose(picture: Picture, filled: Pose): void {
    if (own?.motion.rotations.length === picture.levers.length) poseInMotion(filled, picture, own.motion, own.time);
    else poseAt(filled, picture, travel);
  }

  /** What cannot be seen need not follow each frame. */
  function placeGrips(): void {
    clearTimeout(follow);
    follow = undefined;
    if (pose === undefined) return;
    for (const { mark, pen } of grips.values()) mark.place(pose, pen);
    if (scene !== undefined) handles.place(scene.sheet, pose, viewport.scale);
  }

  function drawOver(): void {
    if (scene !== undefined && pose !== undefined)
      drawOverlay(overlay, { scene, pose, travel: pose.travel, viewport, size, buttons, isNamed, family, ways, litKey });
  }

  function poseTo(next: number): void {
    travel = next;
    own = undefined;
    move();
  }

  function move(): void {
    if (scene === undefined || pose === undefined) return;
    fillPose(scene.sheet.picture, pose);
    for (let i = 0; i < moving.length; i++) moving[i]!.mark.place(pose, moving[i]!.pen);
    follow ??= setTimeout(placeGrips, FOLLOW_MS);
    drawOver();
  }

  function look(next: Viewport, room: Size, under: Rect | undefined): void {
    const isSameRoom = room.width === size.width && room.height === size.height && isSameRect(under, buttons);
    if (isSameRoom && next.scale === viewport.scale && next.x === viewport.x && next.y === viewport.y) return;
    if (!isSameRoom || next.scale !== viewport.scale) ways.clear();
    else forgetNone(ways);
    buttons = under;
    family = getComputedStyle(svg).fontFamily;
    viewport = next;
    size = room;
    const { scale, x, y } = viewport;
    for (const element of [paper, gripGroup, group('handles')])
      element.setAttribute('transform', `matrix(${scale} 0 0 ${scale} ${x} ${y})`);
    svg.style.setProperty('--weight', weightIn(size).toFixed(2));
    const pattern = svg.querySelector('pattern');
    pattern?.setAttribute('patternTransform', `scale(${1 / scale}) rotate(45)`);
    placeAll();
  }

  function lose(key: string | undefined): void {
    for (const element of byPart.get(lostKey ?? '') ?? []) element.classList.remove('lost');
    lostKey = key;
    for (const element of byPart.get(lostKey ?? '') ?? []) element.classList.add('lost');
  }

  function light(key: string | undefined): void {
    for (const element of byPart.get(litKey ?? '') ?? []) element.classList.remove('lit');
    litKey = key;
    for (const element of byPart.get(litKey ?? '') ?? []) element.classList.add('lit');
    drawOver();
  }

  const keyUnder = (target: EventTarget | null, name: string) => (target instanceof SVGElement ? target.getAttribute(name) : null);

  return {
    show,
    poseTo,
    poseIn: (motion, time) => {
      own = { motion, time };
      move();
    },
    lose,
    look,
    light,
    nameAll: (yes) => {
      isNamed = yes;
      forgetNone(ways);
      drawOver();
    },
    hold: (path, spot) => {
      handles.hold(path, spot);
      if (scene !== undefined && pose !== undefined) handles.place(scene.sheet, pose, viewport.scale);
    },
    scene: () => scene,
    pose: () => pose,
    viewport: () => viewport,
    symbolAt: (target) => symbols.get(keyUnder(target, 'data-key') ?? ''),
    handles,
    grips: () => [...grips.values()].map(({ element }) => element),
  };
}

/** The first mark of a symbol says what is schematic about it. */
function titled({ part, note, marks }: Symbol): readonly Mark[] {
  if (note === undefined) return marks;
  const title = part === undefined ? note : WORDS.noteOf(part.name, note);
  return marks.map((mark, i) => (i === 0 ? { ...mark, title } : mark));
}

/** A tenth of a second: a pointer does not find its part much sooner. */
const FOLLOW_MS = 100;

/** Where what stands about a shaft is less than this from the middle of it, px, its lines would run into each other. */
const SMALL_PX = 10;

const isSameRect = (a: Rect | undefined, b: Rect | undefined): boolean =>
  a?.left === b?.left && a?.top === b?.top && a?.right === b?.right && a?.bottom === b?.bottom;
