/**
 * By which rotation a pin that is moved away from rest is turned back to its drawn place. Moving it changes the rotation of its own lever at
 * the same travel, so that the pin comes to stand beside the hand: the drawn place is looked for again with the rotation that the picture
 * says, a few times, as long as that brings the pin nearer. Where it does not, the rotation before stays.
 *
 *     place(n+1) = turned back(hand, φ(place(n))), which closes in where |∂φ/∂place| · arm < 1
 */
export interface Homing {
  /** To turn back by, rad. */
  readonly rotation: () => number;
  /**
   * A picture has come of the place that was found last.
   *
   * @param apart how far the pin stands from the hand there, mm
   * @param enough nearer than this it need not come, mm
   * @param seen rotation of its lever there, rad
   * @returns whether to look for the place again
   */
  readonly seen: (apart: number, enough: number, seen: number) => boolean;
  /**
   * The hand has moved or lets go: what has not been shown to bring the pin nearer is forgotten.
   *
   * @returns whether there was such a thing
   */
  readonly restart: () => boolean;
}

/** Steps for one place of the hand. */
const STEPS = 3;
/** A step that leaves more than this of the distance does not close in. */
const CLOSING = 0.6;

export function createHoming(begun: number): Homing {
  let sure = begun;
  let tried: { readonly rotation: number; readonly apart: number } | undefined;
  let steps = 0;
  let isGivenUp = false;
  const back = () => {
    const was = tried !== undefined;
    tried = undefined;
    return was;
  };
  return {
    rotation: () => tried?.rotation ?? sure,
    seen: (apart, enough, seen) => {
      if (tried !== undefined) {
        if (apart > Math.max(CLOSING * tried.apart, enough)) {
          isGivenUp = true;
          return back();
        }
        sure = tried.rotation;
        tried = undefined;
      }
      if (isGivenUp || apart <= enough || steps >= STEPS) return false;
      steps += 1;
      tried = { rotation: seen, apart };
      return true;
    },
    restart: () => {
      steps = 0;
      return back();
    },
  };
}
