/** What of the drawing is seen: fitted until a person looks elsewhere, then where it was put, and found again in a page loaded anew. */
import type { Signal } from '@preact/signals';
import type { PartKey } from '../../src/protocol/report.ts';
import { direction, shown } from '../state.ts';
import { engineSide } from './engineSide.ts';
import { extentOfLevers, extentOfPart, type Box } from './extent.ts';
import type { Rect } from './labels.ts';
import { keepLook, lookOf, middleIn, viewportAt, type Fit } from './looks.ts';
import { liftOver } from './overlay.ts';
import { lookByKey, type Surface } from './pointing.ts';
import type { Stage } from './stage.ts';
import { fitted, kept, resized, type Size, type Viewport } from './viewport.ts';

export interface Seeing {
  readonly surface: Surface;
  zoom(factor: number): void;
  fit(to: Fit): void;
  /** Nothing where the part is not drawn. */
  fitPart(part: PartKey): void;
  /** As this file was seen last in this view. */
  restore(): void;
  /** The window is another one. */
  resize(): void;
}

interface View {
  readonly viewport: Viewport;
  /** Undefined once a person has looked elsewhere. */
  readonly fit: Fit | undefined;
}

export function createSeeing(svg: SVGSVGElement, stage: Stage, size: Signal<Size>): Seeing {
  const views = new Map<string, View>();
  const uri = () => shown.peek()?.source.uri ?? '';
  const viewKey = () => `${direction.peek()} ${uri()}`;

  /** The buttons at the lower right, px of the drawing. Measured when their size or the room changes: a picture comes with each move. */
  let buttons: Rect | undefined;
  const measureButtons = (): Rect | undefined => {
    const element = svg.parentElement?.querySelector('.tools');
    if (!element) return undefined;
    const ground = svg.getBoundingClientRect();
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return { left: left - ground.left, top: top - ground.top, right: right - ground.left, bottom: bottom - ground.top };
  };

  const look = (viewport: Viewport, fit: Fit | undefined) => {
    const extent = stage.scene()?.extent;
    const room = size.peek();
    if (extent === undefined || room.width === 0) return;
    const inBounds = kept(viewport, extent, room);
    views.set(viewKey(), { viewport: inBounds, fit });
    keepLook({ uri: uri(), direction: direction.peek(), seen: fit ?? middleIn(inBounds, room) });
    stage.look(inBounds, room, buttons);
  };

  const fitTo = (box: Box | undefined, fit: Fit | undefined) => {
    if (box !== undefined) look(fitted(box, size.peek(), liftOver(buttons, size.peek())), fit);
  };

  const fit = (to: Fit) => {
    const scene = stage.scene();
    if (scene === undefined) return;
    const { picture, view } = scene.sheet;
    const side = to === 'engine' ? extentOfLevers(picture, view, engineSide(picture)) : undefined;
    if (side === undefined) fitTo(scene.extent, 'all');
    else fitTo(side, 'engine');
  };

  const surface: Surface = {
    viewport: () => stage.viewport(),
    size: () => size.peek(),
    look: (viewport) => look(viewport, undefined),
    fit,
  };

  const restore = () => {
    const view = views.get(viewKey());
    if (view !== undefined) return stage.look(view.viewport, size.peek(), buttons);
    const before = lookOf(uri(), direction.peek());
    if (typeof before === 'object') look(viewportAt(before, size.peek()), undefined);
    else fit(before ?? 'all');
  };

  return {
    surface,
    zoom: (factor) => void lookByKey(factor > 1 ? '+' : '-', surface),
    fit,
    fitPart: (part) => {
      const scene = stage.scene();
      if (scene !== undefined) fitTo(extentOfPart(scene.sheet.picture, scene.sheet.view, part), undefined);
    },
    restore,
    resize: () => {
      const was = size.peek();
      buttons = measureButtons();
      const { width, height } = svg.getBoundingClientRect();
      if (width === 0 || height === 0) return;
      size.value = { width, height };
      const view = views.get(viewKey());
      if (view === undefined) restore();
      else if (view.fit !== undefined) fit(view.fit);
      else look(resized(view.viewport, was, size.peek()), undefined);
    },
  };
}
