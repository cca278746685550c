/**
 * Moving a place of the file by hand. The pointer moves in the plane of the paper, at the depth of the place; what turns with a lever is
 * turned back by the lever's rotation, because the file gives places as drawn.
 */
import type { Handle, Picture, Triple } from '../../src/protocol/picture.ts';
import type { Change, Trial } from '../../src/protocol/messages.ts';
import { depthOf, inSpace, onPaper, type Projection, type Spot } from './projection.ts';
import { inSpaceAt, isPinPlace, turnedAbout } from './turning.ts';

/** Where a handle stands in space, m, with its lever turned by `rotation`. */
export const handleInSpace = (handle: Handle, rotation: number): Triple =>
  isPinPlace(handle.at) ? inSpaceAt(handle.at.at, rotation) : handle.at;

/** Where it is drawn, m. */
export const handleAsDrawn = (handle: Handle): Triple => handleInSpace(handle, 0);

/**
 * The drawn place, m, that puts a handle under a spot of the paper at a rotation of its lever.
 *
 * @param rotation rad; of no account for what is fixed
 */
export function drawnPlaceAt(picture: Picture, view: Projection, handle: Handle, spot: Spot, rotation: number): Triple {
  const there = inSpace(view, spot, depthOf(view, handleInSpace(handle, rotation)));
  if (!isPinPlace(handle.at)) return there;
  const { pivot, axis } = picture.levers[handle.at.lever]!;
  return turnedAbout(there, pivot, axis, -rotation);
}

/** 0.1 mm, or 0.01 mm where `isFine`; a figure that was not moved keeps its digits. */
export function roundedPlace(place: Triple, drawn: Triple, isFine: boolean): Triple {
  const perM = isFine ? 100_000 : 10_000;
  const figure = (i: 0 | 1 | 2) => (Math.abs(place[i] - drawn[i]) < UNMOVED ? drawn[i] : Math.round(place[i] * perM) / perM);
  return [figure(0), figure(1), figure(2)];
}

/** m: far below what a hand can move. */
const UNMOVED = 1e-8;

export type PlaceChange = Extract<Change, { readonly kind: 'place' }>;

/** @param through the `let` that is to give way; undefined where the place stands in the file itself */
export const placeChange = (handle: Handle, to: Triple, fine: boolean, through: string | undefined): PlaceChange => ({
  kind: 'place',
  path: handle.path,
  to,
  fine,
  through,
});

/** `change` in the place of what was tried at the same path. */
export const withChange = (trial: Trial, change: Change): Trial => [...withoutPath(trial, change.path), change];

export const withoutPath = (trial: Trial, path: string): Trial => trial.filter((tried) => tried.path !== path);

/** What an arrow key is worth on the paper, mm. */
export function arrowStep(key: string, modifiers: { readonly shiftKey: boolean; readonly altKey: boolean }): Spot | undefined {
  const way = ARROWS[key];
  if (way === undefined) return undefined;
  const step = modifiers.altKey ? 0.01 : modifiers.shiftKey ? 1 : 0.1;
  return { x: way.x * step, y: way.y * step };
}

export const ARROWS: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** In millimetres, as the file writes it: `[120, 40.2]`, with a third figure where the place leaves the plane. */
export function placeText(place: Triple): string {
  const figures = place.map((figure) => (Math.round(figure * 100_000) / 100).toString().replace('-', '−'));
  return `[${(place[2] === 0 ? figures.slice(0, 2) : figures).join(', ')}] mm`;
}

export const spotOfHandle = (view: Projection, handle: Handle, rotation: number): Spot => onPaper(view, handleInSpace(handle, rotation));
