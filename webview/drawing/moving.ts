/** A handle in the hand: what is tried while it moves, and what is written when it is let go. Knows no pointer and no key. */
import type { Trial } from '../../src/protocol/messages.ts';
import type { Handle, Picture, Triple } from '../../src/protocol/picture.ts';
import { drawnPlaceAt, handleAsDrawn, placeChange, type PlaceChange, roundedPlace, withChange, withoutPath } from './drag.ts';
import { onPaper, type Projection, type Spot } from './projection.ts';
import { isPinPlace, turnedAbout } from './turning.ts';

export interface Mover {
  /** @param rotation of the handle's lever at this travel, rad; it holds for the whole move */
  begin(handle: Handle, picture: Picture, view: Projection, rotation: number): void;
  /** @param isFine to 0.01 mm instead of 0.1 mm */
  moveTo(spot: Spot, isFine: boolean): void;
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
  /** Where that is on the paper at this travel, mm. */
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

export function createMover(ends: MoverEnds): Mover {
  let hand: { handle: Handle; picture: Picture; view: Projection; rotation: number } | undefined;
  let change: PlaceChange | undefined;
  let through: string | undefined;
  let isOffered = false;

  const put = () => {
    hand = undefined;
    change = undefined;
    isOffered = false;
    ends.changed();
  };

  const spotOf = (place: Triple): Spot => {
    const { handle, picture, view, rotation } = hand!;
    if (!isPinPlace(handle.at)) return onPaper(view, place);
    const { pivot, axis } = picture.levers[handle.at.lever]!;
    return onPaper(view, turnedAbout(place, pivot, axis, rotation));
  };

  const tryIt = () => {
    if (change !== undefined) ends.onTry(withChange(ends.trial(), change));
  };

  /** What is being written is not tried besides; said after it, so that the picture does not go back in between. */
  const write = (written: PlaceChange) => {
    put();
    ends.onWrite([written]);
    ends.onTry(withoutPath(ends.trial(), written.path));
  };

  return {
    begin: (handle, picture, view, rotation) => {
      hand = { handle, picture, view, rotation };
      change = undefined;
      through = handle.lets[0];
      isOffered = false;
      ends.changed();
    },
    moveTo: (spot, isFine) => {
      if (hand === undefined) return;
      const { handle, picture, view, rotation } = hand;
      const place = roundedPlace(drawnPlaceAt(picture, view, handle, spot, rotation), handleAsDrawn(handle), isFine);
      const before = change?.to ?? handleAsDrawn(handle);
      if (place.every((figure, i) => figure === before[i])) return;
      change = placeChange(handle, place, isFine, through);
      tryIt();
      ends.changed();
    },
    finish: () => {
      if (hand === undefined) return;
      if (change === undefined) return put();
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
    held: () => hand && { handle: hand.handle, to: change?.to, spot: spotOf(change?.to ?? handleAsDrawn(hand.handle)), isOffered },
  };
}
