/** A handle in the hand: what is tried while it moves, and what is written when it is let go. Knows no pointer and no key. */
import type { Trial } from '../../src/protocol/messages.ts';
import type { Handle, Picture, Triple } from '../../src/protocol/picture.ts';
import { drawnPlaceAt, handleAsDrawn, placeChange, type PlaceChange, roundedPlace, withChange, withoutPath } from './drag.ts';
import { createHoming, type Homing } from './homing.ts';
import { onPaper, type Projection, type Spot } from './projection.ts';
import { isPinPlace, turnedAbout } from './turning.ts';

export interface Mover {
  /** @param rotation of the handle's lever at this travel, rad */
  begin(handle: Handle, picture: Picture, view: Projection, rotation: number): void;
  /** @param isFine to 0.01 mm instead of 0.1 mm */
  moveTo(spot: Spot, isFine: boolean): void;
  /**
   * A picture has come in which these figures are tried.
   *
   * @param drawn where the handle stands in it at this travel, mm of the paper
   * @param rotation of its lever there, rad
   */
  drawnAt(of: Trial, drawn: Spot, rotation: number): void;
  /** Written at once, or a choice is offered where a `let` stands behind the place. */
  finish(): void;
  /** Written through this `let`. */
  choose(name: string): void;
  /** Tried through this `let`, to see what it does. */
  preview(name: string): void;
  drop(): void;
  /** What is in the hand; undefined where nothing is. */
  held(): Held | undefined;
}

export interface Held {
  readonly handle: Handle;
  /** Drawn place, m, rounded; undefined before it was moved. */
  readonly to: Triple | undefined;
  /**
   * Where that stands on the paper at this travel, mm: in the newest picture of it, and while that is still to come, as far from where it
   * would be on a lever that has not turned as in the last one.
   */
  readonly spot: Spot;
  readonly isOffered: boolean;
}

export interface MoverEnds {
  trial(): Trial;
  onTry(trial: Trial): void;
  onWrite(trial: Trial): void;
  /** Called after each step: something to show has changed. */
  changed(): void;
}

interface Hand {
  readonly handle: Handle;
  readonly picture: Picture;
  readonly view: Projection;
  readonly homing: Homing;
}

export function createMover(ends: MoverEnds): Mover {
  let hand: Hand | undefined;
  let aim: { readonly spot: Spot; readonly isFine: boolean } | undefined;
  let change: PlaceChange | undefined;
  let through: string | undefined;
  let isOffered = false;
  /** From where the handle was expected on the paper to where the last picture has it, mm. */
  let lag: Spot = { x: 0, y: 0 };

  const put = () => {
    hand = undefined;
    aim = undefined;
    change = undefined;
    isOffered = false;
    lag = { x: 0, y: 0 };
    ends.changed();
  };

  /** Where a drawn place stands on the paper, were its lever turned as it is aimed by. */
  const expected = (place: Triple): Spot => {
    const { handle, picture, view, homing } = hand!;
    if (!isPinPlace(handle.at)) return onPaper(view, place);
    const { pivot, axis } = picture.levers[handle.at.lever]!;
    return onPaper(view, turnedAbout(place, pivot, axis, homing.rotation()));
  };

  const tryIt = () => {
    if (change !== undefined) ends.onTry(withChange(ends.trial(), change));
  };

  /** @returns whether the place is another one than before */
  const aimAgain = (): boolean => {
    if (hand === undefined || aim === undefined) return false;
    const { handle, picture, view, homing } = hand;
    const place = roundedPlace(drawnPlaceAt(picture, view, handle, aim.spot, homing.rotation()), handleAsDrawn(handle), aim.isFine);
    const before = change?.to ?? handleAsDrawn(handle);
    if (place.every((figure, i) => figure === before[i])) return false;
    change = placeChange(handle, place, aim.isFine, through);
    return true;
  };

  /** What is being written is not tried besides; said after it, so that the picture does not go back in between. */
  const write = (written: PlaceChange) => {
    put();
    ends.onWrite([written]);
    ends.onTry(withoutPath(ends.trial(), written.path));
  };

  return {
    begin: (handle, picture, view, rotation) => {
      put();
      hand = { handle, picture, view, homing: createHoming(rotation) };
      through = handle.lets[0];
      ends.changed();
    },
    moveTo: (spot, isFine) => {
      if (hand === undefined) return;
      hand.homing.restart();
      aim = { spot, isFine };
      if (!aimAgain()) return;
      tryIt();
      ends.changed();
    },
    drawnAt: (of, drawn, rotation) => {
      if (hand === undefined || change === undefined || !of.some((tried) => isSame(tried, change!))) return;
      const { handle, homing } = hand;
      // Through a `let` a place goes where that leads it, which need not be where the hand is.
      if (isPinPlace(handle.at) && through === undefined && aim !== undefined) {
        const apart = Math.hypot(drawn.x - aim.spot.x, drawn.y - aim.spot.y);
        if (homing.seen(apart, aim.isFine ? FINE_MM : COARSE_MM, rotation) && aimAgain()) tryIt();
      }
      const there = expected(change.to);
      lag = { x: drawn.x - there.x, y: drawn.y - there.y };
      ends.changed();
    },
    finish: () => {
      if (hand === undefined) return;
      if (change === undefined) return put();
      if (hand.homing.restart()) aimAgain();
      if (hand.handle.lets.length > 0) {
        isOffered = true;
        return ends.changed();
      }
      write(change);
    },
    preview: (name) => {
      if (change === undefined || through === name) return;
      through = name;
      change = { ...change, through: name };
      tryIt();
    },
    choose: (name) => {
      if (change === undefined) return;
      write({ ...change, through: name });
    },
    drop: () => {
      const path = change?.path;
      put();
      if (path !== undefined) ends.onTry(withoutPath(ends.trial(), path));
    },
    held: () => {
      if (hand === undefined) return undefined;
      const { x, y } = expected(change?.to ?? handleAsDrawn(hand.handle));
      return { handle: hand.handle, to: change?.to, spot: { x: x + lag.x, y: y + lag.y }, isOffered };
    },
  };
}

/** As near as rounding lets it come, mm. */
const COARSE_MM = 0.1;
const FINE_MM = 0.01;

const isSame = (tried: Trial[number], change: PlaceChange): boolean =>
  tried.kind === 'place' &&
  tried.path === change.path &&
  tried.through === change.through &&
  tried.to.every((figure, i) => figure === change.to[i]);
