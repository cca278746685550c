/** A mark drawn with a pen that only takes notes, without a browser. */
import type { Picture } from '../../src/protocol/picture.ts';
import type { Mark } from '../../webview/drawing/mark.ts';
import { createPose, poseAt } from '../../webview/drawing/pose.ts';
import type { Scene } from '../../webview/drawing/scene.ts';

export interface Noted {
  readonly d: string | undefined;
  readonly circle: readonly [x: number, y: number, radius: number] | undefined;
  readonly stands: boolean;
  /** The figures of its path, in order. */
  readonly figures: readonly number[];
}

/** At a pixel to the millimetre. @param travel of the pedal, a fraction */
export function noted({ place }: Mark, picture: Picture, travel: number): Noted {
  const taken: { d: string | undefined; circle: Noted['circle']; stands: boolean } = { d: undefined, circle: undefined, stands: false };
  const pose = createPose(picture);
  poseAt(pose, picture, travel);
  place(pose, {
    path: (text) => (taken.d = text),
    circle: (x, y, radius) => (taken.circle = [x, y, radius]),
    stands: (yes) => (taken.stands = yes),
  });
  return { ...taken, figures: (taken.d ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [] };
}

export const marksOf = ({ backdrop, symbols }: Scene): readonly Mark[] => [...backdrop, ...symbols.flatMap(({ marks }) => marks)];

/** The mark whose key ends so; it must be there. */
export function markOf(scene: Scene, end: string): Mark {
  const mark = marksOf(scene).find(({ key }) => key.endsWith(end));
  if (mark === undefined)
    throw new Error(
      `No mark ${end}: ${marksOf(scene)
        .map(({ key }) => key)
        .join(', ')}`,
    );
  return mark;
}
