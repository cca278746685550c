import { describe, expect, it } from 'vitest';
import type { Trial } from '../../../src/protocol/messages.ts';
import type { Handle, Picture } from '../../../src/protocol/picture.ts';
import { createMover, type Held } from '../../../webview/drawing/moving.ts';
import { PROJECTIONS } from '../../../webview/drawing/projection.ts';

const handle = (lets: readonly string[] = []): Handle => ({
  path: 'cables.main.enters',
  label: 'housing end',
  kind: 'housing',
  at: [0.01, 0.02, 0],
  lets,
});
const picture = { levers: [] } as unknown as Picture;

/** A mover, and all that leaves it. */
function hand(other: Trial = []) {
  const said: { readonly kind: 'try' | 'write'; readonly trial: Trial }[] = [];
  let trial = other;
  const mover = createMover({
    trial: () => trial,
    onTry: (next) => {
      trial = next;
      said.push({ kind: 'try', trial: next });
    },
    onWrite: (next) => said.push({ kind: 'write', trial: next }),
    changed: () => undefined,
  });
  return { mover, said };
}

const change = (x: number, through?: string) => ({ kind: 'place', path: 'cables.main.enters', to: [x, 0.02, 0], fine: false, through });

describe('mover', () => {
  it('tries each new place, writes the last one once, and then tries it no longer', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.moveTo({ x: 12.04, y: -20 }, false);
    mover.moveTo({ x: 13, y: -20 }, false);
    mover.finish();
    expect(said).toEqual([
      { kind: 'try', trial: [change(0.012)] },
      { kind: 'try', trial: [change(0.013)] },
      { kind: 'write', trial: [change(0.013)] },
      { kind: 'try', trial: [] },
    ]);
    expect(mover.held()).toBeUndefined();
  });

  it('writes nothing where nothing was moved', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 10.01, y: -20 }, false);
    mover.finish();
    expect(said).toEqual([]);
  });

  it('drops what it tried and leaves what else is tried', () => {
    const dial = { kind: 'value', path: 'let.reach', value: 3 } as const;
    const { mover, said } = hand([dial]);
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.drop();
    mover.finish();
    expect(said).toEqual([
      { kind: 'try', trial: [dial, change(0.012)] },
      { kind: 'try', trial: [dial] },
    ]);
  });

  it('writes through a let only after it was chosen', () => {
    const { mover, said } = hand();
    mover.begin(handle(['near', 'far']), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.finish();
    expect(mover.held()?.isOffered).toBe(true);
    mover.preview('far');
    expect(said).toEqual([
      { kind: 'try', trial: [change(0.012, 'near')] },
      { kind: 'try', trial: [change(0.012, 'far')] },
    ]);
    mover.choose('far');
    expect(said.slice(2)).toEqual([
      { kind: 'write', trial: [change(0.012, 'far')] },
      { kind: 'try', trial: [] },
    ]);
  });

  it('asks for a fine figure only where the hand was fine', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12.034, y: -20 }, true);
    expect(said[0]?.trial).toEqual([{ ...change(0.01203), fine: true }]);
  });
});

describe('mover of a pin away from rest', () => {
  const lever = { pivot: [0, 0, 0], axis: [0, 0, 1] };
  const crank = { levers: [lever] } as unknown as Picture;
  /** At 30 mm to the right of the pivot, as drawn. */
  const pin: Handle = { ...handle(), path: 'levers.crank.arms.out', at: { lever: 0, at: [0, 0, 0, 0.03, 0, 0, 0, 0.03, 0] } };
  /** At half an angle of a radian. */
  const start = 0.5;

  /** Holds the pin at a spot and answers each trial with the pose of a lever that turns by `gain` more for each radian of the drawn angle. */
  function chase(gain: number, pictures: number) {
    const { mover, said } = hand();
    const rotationOf = (to: readonly number[]) => start + gain * Math.atan2(to[1]!, to[0]!);
    const wanted = { x: 24, y: -18 };
    mover.begin(pin, crank, PROJECTIONS.front, start);
    mover.moveTo(wanted, false);
    const drawnOf = (to: readonly number[]) => {
      const angle = Math.atan2(to[1]!, to[0]!) + rotationOf(to);
      const radius = 1000 * Math.hypot(to[0]!, to[1]!);
      return { x: radius * Math.cos(angle), y: -radius * Math.sin(angle) };
    };
    for (let i = 0; i < pictures; i++) {
      const { to } = mover.held()!;
      mover.drawnAt(said.at(-1)!.trial, drawnOf(to!), rotationOf(to!));
    }
    const apart = () => {
      const drawn = drawnOf(mover.held()!.to!);
      return Math.hypot(drawn.x - wanted.x, drawn.y - wanted.y);
    };
    return { mover, said, apart, drawnOf, rotationOf };
  }
  const spotOf = (held: Held | undefined) => [held!.spot.x, held!.spot.y];

  it('brings it to the hand where that closes in', () => {
    expect(chase(0.2, 0).apart()).toBeGreaterThan(0.5);
    expect(chase(0.2, 4).apart()).toBeLessThan(0.15);
  });

  it.each([-1, 1.5])('leaves it where the first trial had it where that does not close in, with %s rad to the radian', (gain) => {
    const first = chase(gain, 0);
    const last = chase(gain, 5);
    expect(last.mover.held()!.to).toEqual(first.mover.held()!.to);
    expect(last.apart()).toBeGreaterThan(0.5);
  });

  it('shows the ring where the pin is drawn, not where the hand is', () => {
    const { mover, said, drawnOf, rotationOf } = chase(-1, 5);
    const { to } = mover.held()!;
    const drawn = drawnOf(to!);
    mover.drawnAt(said.at(-1)!.trial, drawn, rotationOf(to!));
    expect(spotOf(mover.held())).toEqual([expect.closeTo(drawn.x, 9), expect.closeTo(drawn.y, 9)]);
  });

  it('heeds no picture of another trial', () => {
    const { mover } = chase(0.2, 0);
    const before = spotOf(mover.held());
    mover.drawnAt([], { x: 0, y: 0 }, 3);
    expect(spotOf(mover.held())).toEqual(before);
  });

  it('writes no step that no picture has borne out', () => {
    const first = chase(0.2, 0).mover.held()!.to;
    const { mover, said } = chase(0.2, 1);
    expect(mover.held()!.to).not.toEqual(first);
    mover.finish();
    expect(said.find(({ kind }) => kind === 'write')!.trial).toMatchObject([{ to: first }]);
  });
});
